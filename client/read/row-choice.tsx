/** client/read/row-choice.tsx - choosing a row as a value (an object, a hold, a movement, an opponent), or naming a new
 *  one on the spot: it is made in the same change as the value it is chosen for. */
import { useSignal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import type { Edit } from "../../schema/change.ts";
import type { Kind, RecordOf } from "../../schema/record.ts";
import { withoutArticle } from "../../shared/article.ts";
import { rankBetween } from "../../shared/rank.ts";
import { work } from "../state/passage.ts";
import { all, ranked } from "../state/rows.ts";
import { create, newId } from "../state/write.ts";

export type ChoosableKind = "objects" | "holds" | "movements" | "threats";
export const A_NEW: Record<ChoosableKind, string> = {
  objects: "a new object…",
  holds: "a new hold…",
  movements: "a new movement…",
  threats: "a new opponent…",
};
const NEW = "new";
const REINS = "the reins";

export function RowChoice({
  kind,
  value,
  label,
  reins = false,
  take,
}: {
  kind: ChoosableKind;
  value: string | undefined;
  label: string;
  /** Whether reins may be meant: offered as an object while the work has none. */
  reins?: boolean;
  take: (id: string, also: Edit[]) => Promise<boolean>;
}) {
  const naming = useSignal(false);
  const input = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => {
    if (naming.value) input.current?.focus();
  }, [naming.value]);
  const make = async (name: string) => {
    if (name === "") return;
    const row = newRow(kind, name);
    if (row === null || (await take(row.id, [create(kind, row)]))) naming.value = false;
  };
  if (naming.value) {
    return (
      <span class="row">
        <input
          ref={input}
          aria-label={`Name of ${A_NEW[kind].replace("…", "")}`}
          placeholder="its name"
          size={14}
          onKeyDown={(event) => {
            if (event.key === "Escape") {
              event.stopPropagation();
              naming.value = false;
            }
            if (event.key !== "Enter") return;
            event.preventDefault();
            void make(event.currentTarget.value.trim());
          }}
        />
        <button type="button" onClick={() => void make(input.current?.value.trim() ?? "")}>
          Name it
        </button>
        <button type="button" class="quiet" onClick={() => (naming.value = false)}>
          not now
        </button>
      </span>
    );
  }
  const offersReins = reins && kind === "objects" && !all("objects").some(({ is }) => is === "reins");
  const rows = kind === "threats" ? all(kind) : ranked(kind);
  return (
    <select
      aria-label={label}
      value={value ?? ""}
      onChange={(event) => {
        const chosen = event.currentTarget.value;
        if (chosen === NEW) {
          naming.value = true;
          event.currentTarget.value = value ?? "";
        } else if (chosen === REINS) {
          void make(REINS);
        } else if (chosen !== "") void take(chosen, []);
      }}
    >
      {value === undefined && <option value="">choose…</option>}
      {rows.map((row) => (
        <option key={row.id} value={row.id}>
          {row.name}
        </option>
      ))}
      {offersReins && <option value={REINS}>{REINS}</option>}
      <option value={NEW}>{A_NEW[kind]}</option>
    </select>
  );
}

/** A row with a name and nothing else said; null when no work is open. */
export function newRow<K extends ChoosableKind>(kind: K, name: string): RecordOf<K> | null {
  const owner = work.value?.id;
  if (owner === undefined) return null;
  const base = { id: newId(), work: owner, name, note: "" };
  const made: { [C in ChoosableKind]: () => RecordOf<C> } = {
    objects: () => ({
      ...base,
      rank: lastRank("objects"),
      is: objectKind(name),
      slots: {},
    }),
    holds: () => ({ ...base, rank: lastRank("holds"), for: ["shaft"], hands: "one", strong: false, slots: {} }),
    movements: () => ({ ...base, rank: lastRank("movements") }),
    threats: () => ({ ...base, slots: {} }),
  };
  return made[kind]();
}

/** The first thing carried is taken for the weapon until its form says otherwise; reins are told by their name. */
function objectKind(name: string): RecordOf<"objects">["is"] {
  if (withoutArticle(name).toLowerCase() === "reins") return "reins";
  return all("objects").every(({ is }) => is === "reins") ? "shaft" : "other";
}

/** A rank after all rows of the kind. */
export function lastRank(kind: Kind): string {
  const last = ranked(kind).at(-1) as { rank: string } | undefined;
  return rankBetween(last?.rank ?? null, null);
}
