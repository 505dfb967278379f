/** client/read/element-more.tsx - the rest of what can be said of an element: why it comes in this place, whose it is, a
 *  note, what its being there rests on; moving it and taking it away. */
import type { RecordOf } from "../../schema/record.ts";
import { compareRanked, rankBetween } from "../../shared/rank.ts";
import { elements } from "../state/passage.ts";
import { BasisList } from "./basis-list.tsx";
import { LabelledField } from "./draft-field.tsx";
import { choose } from "./focus.ts";
import { restedOn } from "./slot-line.tsx";
import { elementWords } from "./slot-place.ts";
import { storeFields } from "./store-fields.ts";
import { entered, wordsFor } from "./support.ts";
import { TakeAway } from "./take-away.tsx";
import { WarrantChoice } from "./warrant-choice.tsx";

export function MoreOfElement({ element, own }: { element: RecordOf<"elements">; own: string }) {
  const { id } = element;
  const row = { kind: "elements", id } as const;
  const marks = wordsFor("elements", id);
  return (
    <>
      <details class="fold">
        <summary>more of it</summary>
        <div class="field">
          <span class="label">That it comes in this place</span>
          {element.order === null ? (
            <button
              type="button"
              class="quiet"
              onClick={() => void storeFields("elements", id, { order: entered(marks) }, `${own}: why it comes here`)}
            >
              nobody has asked; say why
            </button>
          ) : (
            <WarrantChoice
              label="its place"
              support={element.order}
              marks={marks}
              take={(order) => void storeFields("elements", id, { order }, `${own}: its place is ${order.warrant}`)}
            />
          )}
        </div>
        <LabelledField
          row={row}
          name="role"
          label="Which rider, where there are several"
          value={element.role}
          store={(role, base) =>
            storeFields("elements", id, { role: role.trim() }, `${own}: of ${role.trim() || "the one rider"}`, base)
          }
        />
        <LabelledField
          row={row}
          name="note"
          label="Note"
          many
          value={element.note}
          store={(note, base) => storeFields("elements", id, { note }, `${own}: a note`, base)}
        />
        <p class="label">That it is there rests on</p>
        <BasisList
          bases={element.existence.basis}
          row={row}
          label={own}
          store={(basis, also, why) =>
            storeFields("elements", id, { existence: restedOn(element.existence, basis) }, why, undefined, also)
          }
        />
        {element.copyOf && (
          <p class="meta">The same instruction as {elementWords(element.copyOf)}, in another place.</p>
        )}
      </details>
      <MoveElement element={element} own={own} />
    </>
  );
}

function MoveElement({ element, own }: { element: RecordOf<"elements">; own: string }) {
  const list = elements.value.toSorted(compareRanked);
  const at = list.findIndex((other) => other.id === element.id);
  const move = (by: -1 | 1) => {
    const [first, second] = by === -1 ? [list[at - 2], list[at - 1]] : [list[at + 1], list[at + 2]];
    const rank = rankBetween(first?.rank ?? null, second?.rank ?? null);
    void storeFields("elements", element.id, { rank }, `${own}: moved ${by === -1 ? "up" : "down"}`);
  };
  const what = { step: "the step", again: "the again", advice: "the advice", untreated: "the untreated part" }[
    element.is
  ];
  return (
    <div class="says form-end">
      <button type="button" class="quiet" disabled={at <= 0} onClick={() => move(-1)}>
        move up
      </button>
      <button type="button" class="quiet" disabled={at === -1 || at === list.length - 1} onClick={() => move(1)}>
        move down
      </button>
      <TakeAway kind="elements" id={element.id} what={what} why={`${own}: taken away`} after={() => choose(null)} />
    </div>
  );
}
