/** client/read/take-away.tsx - taking a thing away: what goes with it is said before, and what other rows still say of it
 *  is taken out of them in the same change. */
import { useSignal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import type { Edit } from "../../schema/change.ts";
import { KINDS, type Kind } from "../../schema/record.ts";
import { all } from "../state/rows.ts";
import { remove } from "../state/write.ts";
import { names, short } from "./row-names.ts";
import { elementWords, ownerWords } from "./slot-place.ts";
import { fieldsEdit, storeEdits } from "./store-fields.ts";
import { fieldsWithout, goesAlong } from "./without-rows.ts";

interface Leaving {
  edits: Edit[];
  /** What goes or changes with it, in words: "2 actions", "a value of the reading “…”". */
  with: string[];
  /** What stands in the way, in words. */
  inTheWay: string[];
}

const COUNTED: { [K in Kind]?: [string, string] } = {
  actions: ["action", "actions"],
  anchors: ["piece of marked words", "pieces of marked words"],
  readings: ["reading", "readings"],
  senses: ["sense", "senses"],
  stations: ["station", "stations"],
  waivers: ["waiver", "waivers"],
  faults: ["fault", "faults"],
};

export function leaving(kind: Kind, id: string): Leaving {
  const gone = new Set([id]);
  const counts = new Map<Kind, number>();
  for (let before = 0; before !== gone.size; ) {
    before = gone.size;
    for (const other of KINDS) {
      for (const row of all(other)) {
        if (gone.has(row.id) || !goesAlong(other, row, gone)) continue;
        gone.add(row.id);
        counts.set(other, (counts.get(other) ?? 0) + 1);
      }
    }
  }
  const edits: Edit[] = [];
  const changed: string[] = [];
  const inTheWay: string[] = [];
  for (const other of KINDS) {
    if (other === "passageTexts" || other === "anchors") continue;
    for (const row of all(other)) {
      if (gone.has(row.id)) continue;
      const fields = fieldsWithout(other, row, gone);
      if (fields === null) inTheWay.push(rowWords(other, row.id));
      else if (Object.keys(fields).length > 0) {
        edits.push(fieldsEdit(other, row.id, fields as never));
        changed.push(rowWords(other, row.id));
      }
    }
  }
  const along = [...counts].flatMap(([other, count]) => {
    const words = COUNTED[other];
    return words ? [count === 1 ? `1 ${words[0]}` : `${count} ${words[1]}`] : [];
  });
  return {
    edits: [...edits, remove(kind, id)],
    with: [
      ...along,
      ...(changed.length > 0
        ? [`what is said of it in ${changed.slice(0, 5).join(", ")}${changed.length > 5 ? " and others" : ""}`]
        : []),
    ],
    inTheWay,
  };
}

const SINGULAR: { [K in Kind]?: string } = {
  actions: "the action",
  readings: "the reading",
  cruxes: "the crux",
  questions: "the question",
  standings: "the instruction",
  terms: "the term",
  senses: "the sense",
  notes: "the note",
  objects: "the object",
  holds: "the hold",
  movements: "the movement",
  threats: "the opponent",
  grounds: "the ground",
  stations: "the station",
};
function rowWords(kind: Kind, id: string): string {
  if (kind === "elements") return elementWords(id);
  if (kind === "actions") return ownerWords(kind, id);
  const name = names.value(kind, id);
  return [SINGULAR[kind] ?? `one of the ${kind}`, name ? `“${short(name, 40)}”` : ""].filter(Boolean).join(" ");
}

/** `what` names it ("the step"); `why` is kept in the history. With `atOnce` a thing nothing goes with is not asked about. */
export function TakeAway({
  kind,
  id,
  what,
  why,
  atOnce = false,
  after,
}: {
  kind: Kind;
  id: string;
  what: string;
  why: string;
  atOnce?: boolean;
  after?: () => void;
}) {
  const asking = useSignal<Leaving | null>(null);
  const box = useRef<HTMLFieldSetElement>(null);
  useLayoutEffect(() => box.current?.querySelector("button")?.focus(), [asking.value]);
  const go = ({ edits }: Leaving) =>
    void storeEdits(edits, why).then((done) => {
      asking.value = null;
      if (done) after?.();
    });
  if (asking.value === null) {
    const ask = () => {
      const now = leaving(kind, id);
      if (atOnce && now.with.length === 0 && now.inTheWay.length === 0) go(now);
      else asking.value = now;
    };
    // Several of these stand on one form, so each says what goes.
    const called = SINGULAR[kind] ?? what;
    return (
      <button
        type="button"
        class="quiet"
        onClick={ask}
        aria-label={called === what ? undefined : `take ${called} away: ${what}`}
      >
        take {called} away
      </button>
    );
  }
  const found = asking.value;
  return (
    <fieldset
      class="notice"
      aria-label={`Take ${what} away`}
      ref={box}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        asking.value = null;
      }}
    >
      <p>
        {found.inTheWay.length > 0
          ? `${capital(what)} cannot go yet: ${found.inTheWay.join(", ")} ${found.inTheWay.length === 1 ? "rests" : "rest"} on it alone. Change or take away that first.`
          : found.with.length > 0
            ? `With ${what} go: ${found.with.join("; ")}. You can undo it afterwards.`
            : `Nothing else goes with ${what}.`}
      </p>
      <div class="row">
        {found.inTheWay.length === 0 && (
          <button type="button" class="chief" onClick={() => go(found)}>
            Take it away
          </button>
        )}
        <button type="button" onClick={() => (asking.value = null)}>
          Keep it
        </button>
      </div>
    </fieldset>
  );
}

const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);
