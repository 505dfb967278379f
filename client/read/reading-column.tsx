/** client/read/reading-column.tsx - one reading on the desk: title, argument, holder, evidence, what it gives to each value
 *  of the crux, what is there under it alone, what it requires and excludes, and its status. */
import type { RecordOf } from "../../schema/record.ts";
import type { ReadingValue, SlotAddress } from "../../schema/slot.ts";
import { actWords } from "../../shared/drill/act-words.ts";
import { all, ranked } from "../state/rows.ts";
import { BasisList } from "./basis-list.tsx";
import { DraftField } from "./draft-field.tsx";
import { choose } from "./focus.ts";
import { ReadingConditions } from "./guard-editor.tsx";
import { ReadingStatus } from "./reading-status.tsx";
import { names, short } from "./row-names.ts";
import { sameHand } from "./same-hand.ts";
import { SlotLine } from "./slot-line.tsx";
import { addressKey, elementWords, kindAt, placeWords, sameAddress } from "./slot-place.ts";
import { storeFields } from "./store-fields.ts";
import { wordsFor } from "./support.ts";
import { TakeAway } from "./take-away.tsx";

type Reading = RecordOf<"readings">;

/** An exact decimal, as the store keeps it; empty where nobody says. */
function confidenceProblem(text: string): string {
  const degree = text.trim();
  if (degree === "" || /^(1(\.0+)?|0\.\d*[1-9]\d*)$/.test(degree)) return "";
  return /^0(\.0*)?$/.test(degree)
    ? "Expected more than 0: a reading that cannot be right is ruled out instead."
    : "Expected a decimal up to 1, with a point: 0.6.";
}

export function ReadingColumn({
  crux,
  reading,
  slots,
}: {
  crux: RecordOf<"cruxes">;
  reading: Reading;
  slots: readonly SlotAddress[];
}) {
  const { id } = reading;
  const row = { kind: "readings", id } as const;
  const own = `Reading “${short(reading.title, 40)}”`;
  return (
    <section class={`reading ${reading.status.is.replaceAll(" ", "-")}`} aria-label={own}>
      <DraftField
        row={row}
        name="title"
        label="Title of the reading"
        value={reading.title}
        check={(text) => (text.trim() === "" ? "Expected what is read." : "")}
        store={(title, base) =>
          storeFields("readings", id, { title: title.trim() }, `${own}: called “${title.trim()}”`, base)
        }
      />
      <ReadingStatus crux={crux} reading={reading} />
      <DraftField
        row={row}
        name="argument"
        label={`Argument for “${reading.title}”`}
        placeholder="the argument for it"
        many
        value={reading.argument}
        store={(argument, base) => storeFields("readings", id, { argument }, `${own}: its argument`, base)}
      />
      <div class="slot">
        <span class="slot-label" aria-hidden="true">
          held by
        </span>
        <div class="slot-body">
          <DraftField
            row={row}
            name="holder"
            label="Held by"
            placeholder="who holds it"
            size={14}
            list="holders"
            value={reading.holder}
            store={(holder, base) =>
              storeFields("readings", id, { holder: holder.trim() }, `${own}: held by ${holder.trim()}`, base)
            }
          />
          <Holders />
        </div>
      </div>
      <div class="slot">
        <span class="slot-label" aria-hidden="true">
          how sure
        </span>
        <div class="slot-body">
          <DraftField
            row={row}
            name="confidence"
            label="How sure, more than 0 and up to 1"
            placeholder="0.6, or empty"
            size={10}
            value={reading.confidence ?? ""}
            check={confidenceProblem}
            store={(degree, base) =>
              storeFields(
                "readings",
                id,
                { confidence: degree.trim() || null },
                degree.trim() ? `${own}: ${degree.trim()} sure` : `${own}: how sure is not said`,
                base,
              )
            }
          />
        </div>
      </div>
      {slots.map((at) => (
        <Given key={addressKey(at)} reading={reading} at={at} own={own} />
      ))}
      <OnlyUnderIt reading={reading} />
      <h3>Evidence</h3>
      <BasisList
        bases={reading.evidence}
        row={row}
        label={own}
        sides
        store={(evidence, also, why) => storeFields("readings", id, { evidence }, why, undefined, also)}
      />
      <details class="fold" open={reading.requires.length + reading.excludes.length > 0}>
        <summary>other cruxes</summary>
        <ReadingConditions
          list={reading.requires}
          lead="needs"
          add="it needs the reading…"
          without={crux.id}
          store={(requires, why) => void storeFields("readings", id, { requires }, `${own} ${why}`)}
        />
        <ReadingConditions
          list={reading.excludes}
          lead="cannot stand with"
          add="it cannot stand with…"
          without={crux.id}
          store={(excludes, why) => void storeFields("readings", id, { excludes }, `${own} ${why}`)}
        />
      </details>
      <p class="says">
        <TakeAway kind="readings" id={id} what={`“${short(reading.title, 30)}”`} why={`${own}: taken away`} />
      </p>
    </section>
  );
}

function Holders() {
  const known = new Set(["the translator", "the editor", ...all("readings").map((reading) => reading.holder)]);
  known.delete("");
  return (
    <datalist id="holders">
      {[...known].map((holder) => (
        <option key={holder} value={holder} />
      ))}
    </datalist>
  );
}

/** What the reading gives to one value the crux holds; what it does not name is not said under it. */
function Given({ reading, at, own }: { reading: Reading; at: SlotAddress; own: string }) {
  const kind = kindAt(at);
  if (kind === null) return null;
  const held = reading.values.find((given) => sameAddress(given.at, at))?.value;
  const others = reading.values.filter((given) => !sameAddress(given.at, at));
  const store = (
    value: ReadingValue | null,
    said: string,
    base?: number,
    also = [] as Parameters<typeof storeFields>[5],
  ) =>
    storeFields(
      "readings",
      reading.id,
      { values: value === null ? others : [...others, { at, value }] },
      `${own}: ${placeWords(at)} ${short(said, 60)}`,
      base,
      also,
    );
  return (
    <SlotLine
      kind={kind}
      label={placeWords(at)}
      held={held}
      row={{ kind: "readings", id: reading.id }}
      name={addressKey(at)}
      marks={wordsFor(at.kind, at.id)}
      check={(value) => sameHand(at, value)}
      absent={at.kind === "actions"}
      store={(value, said, more) => store(value, said, more?.base, more?.also)}
    />
  );
}

/** Steps and actions that are there under this reading and not under all. */
function OnlyUnderIt({ reading }: { reading: Reading }) {
  const guarded = (guard: RecordOf<"elements">["guard"]) =>
    guard.some((condition) => condition.is === "reading" && condition.readings.includes(reading.id));
  const steps = ranked("elements").filter((element) => guarded(element.guard));
  const order = ranked("elements").map((element) => element.id);
  const actions = ranked("actions")
    .filter((action) => guarded(action.guard))
    .sort((a, b) => order.indexOf(a.owner) - order.indexOf(b.owner));
  if (steps.length + actions.length === 0) return null;
  return (
    <div class="conditions">
      <p class="label">Only under it</p>
      {steps.map((element) => (
        <p key={element.id}>
          <button type="button" class="quiet" onClick={() => choose({ kind: "elements", id: element.id })}>
            {elementWords(element.id)}
          </button>
        </p>
      ))}
      {actions.map((action) => (
        <p key={action.id}>
          <button
            type="button"
            class="quiet"
            disabled={action.ownerKind !== "elements"}
            onClick={() => choose({ kind: "elements", id: action.owner })}
          >
            {action.ownerKind === "elements" ? `${elementWords(action.owner)}: ` : ""}
            {actWords(action.act, names.value)}
          </button>
        </p>
      ))}
    </div>
  );
}
