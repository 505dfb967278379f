/** client/read/action-list.tsx - the actions of a step (or of whatever else has some), part by part, and adding one: the
 *  heading it is added under already says whose hand it is. */
import { useSignal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import { VERBS, type Verb } from "../../schema/act.ts";
import type { DrillPart } from "../../schema/drill.ts";
import type { RecordOf } from "../../schema/record.ts";
import type { Slot } from "../../schema/slot.ts";
import { actWords } from "../../shared/drill/act-words.ts";
import { neededSlots } from "../../shared/drill/slot-labels.ts";
import { rankBetween } from "../../shared/rank.ts";
import { create, newId } from "../state/write.ts";
import { ActionBlock } from "./action-block.tsx";
import { beginAct } from "./begin-act.ts";
import { partName, thePart } from "./part-name.ts";
import { names, short } from "./row-names.ts";
import { wantedSlot } from "./slot-editor.tsx";
import { storeEdits } from "./store-fields.ts";
import { entered, wordsFor } from "./support.ts";
import { actionsOf, byColumn, OFFERED, VERB_WORDS } from "./verbs.ts";

type Owner = Pick<RecordOf<"actions">, "ownerKind" | "owner">;

/** `before` are the owners of what was done before, nearest first: the object last used is taken from there. */
export function ActionList({ owner, what, before }: { owner: Owner; what: string; before: readonly string[] }) {
  const actions = actionsOf(owner.owner);
  const adding = useSignal<DrillPart | null>(null);
  const add = async (part: DrillPart, verb: Verb) => {
    const marks = wordsFor(owner.ownerKind, owner.owner);
    const act = beginAct(verb, part, { marks, owner: owner.owner, before });
    const action: RecordOf<"actions"> = {
      id: newId(),
      ...owner,
      rank: rankBetween(actions.at(-1)?.rank ?? null, null),
      guard: [],
      act,
      existence: entered(marks),
      note: "",
    };
    const slots = act.slots as Record<string, Slot<unknown> | undefined>;
    // What it cannot do without is asked first, then what it is done to.
    const asked = [...neededSlots(verb, () => undefined), ...("object" in VERBS[verb].slots ? ["object"] : [])];
    const first = asked.find((slot) => slots[slot] === undefined) ?? Object.keys(VERBS[verb].slots)[0];
    if (first) wantedSlot.value = `actions ${action.id} ${first}`;
    const done = verb === "other" ? VERB_WORDS.other : short(actWords(act, names.value), 80);
    if (await storeEdits([create("actions", action)], `${what}, ${thePart(part)}: ${done}`)) adding.value = null;
  };
  return (
    <>
      {byColumn(actions).map(({ part, actions: own }) => (
        <section key={part} class="part">
          <header class="part-head">
            <h4>{partName(part)}</h4>
            <button
              type="button"
              class="quiet"
              aria-expanded={adding.value === part}
              onClick={() => (adding.value = adding.value === part ? null : part)}
            >
              + {thePart(part)}…
            </button>
          </header>
          {adding.value === part && (
            <VerbList part={part} take={(verb) => void add(part, verb)} close={() => (adding.value = null)} />
          )}
          {own.map((action) => (
            <ActionBlock key={action.id} action={action} />
          ))}
        </section>
      ))}
    </>
  );
}

function VerbList({ part, take, close }: { part: DrillPart; take: (verb: Verb) => void; close: () => void }) {
  const box = useRef<HTMLFieldSetElement>(null);
  useLayoutEffect(() => box.current?.querySelector("button")?.focus(), []);
  return (
    <fieldset
      class="verbs"
      aria-label={`What ${thePart(part)} does`}
      ref={box}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        close();
      }}
    >
      {OFFERED[part].map((verb) => (
        <button key={verb} type="button" class="quiet" onClick={() => take(verb)}>
          {VERB_WORDS[verb]}
        </button>
      ))}
    </fieldset>
  );
}
