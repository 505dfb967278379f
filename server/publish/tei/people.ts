/** server/publish/tei/people.ts - who made, reads, asks and is asked: each person once, with what they did.
 *  May import: schema types, shared/drill, siblings. */
import type { WorkRows } from "../../../shared/drill/exercise-rows.ts";

export interface Person {
  /** xml:id. */
  name: string;
  called: string;
  did: readonly string[];
}

export interface People {
  list: readonly Person[];
  /** The xml:id of a person as a row names them; null for nobody and for a siglum. */
  named: (called: string) => string | null;
  /** The witness whose siglum stands where a holder's name would; null for a person. */
  witness: (holder: string) => string | null;
}

export function peopleOf(rows: WorkRows): People {
  const sigla = new Map(rows.all("witnesses").map(({ siglum, id }) => [siglum.trim(), id]));
  const found = new Map<string, Set<string>>();
  const add = (called: string, did: string): void => {
    const name = called.trim();
    if (name === "" || sigla.has(name)) return;
    const known = found.get(name) ?? new Set();
    found.set(name, known.add(did));
  };
  for (const { is, by } of rows.layers) add(by, is === "translation" ? "rendered the text" : "edited the original");
  for (const { holder } of rows.all("readings")) add(holder, "holds readings");
  for (const { to } of rows.all("questions")) add(to, "is asked");
  for (const sitting of rows.all("sittings")) for (const who of sitting.who) add(who, "took part in sittings");
  const list = [...found]
    .sort(([first], [second]) => (first < second ? -1 : 1))
    .map(([called, did], index) => ({ name: `person-${index + 1}`, called, did: [...did] }));
  const names = new Map(list.map(({ called, name }) => [called, name]));
  return {
    list,
    named: (called) => names.get(called.trim()) ?? null,
    witness: (holder) => sigla.get(holder.trim()) ?? null,
  };
}
