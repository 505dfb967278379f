/** client/read/small-glosses.tsx - the glosses of advice, untreated words, notes and standing instructions; those of
 *  questions and terms have files of their own. */
import type { ComponentChildren } from "preact";
import type { RecordOf } from "../../schema/record.ts";
import { actWords } from "../../shared/drill/act-words.ts";
import { elements } from "../state/passage.ts";
import { one } from "../state/rows.ts";
import { Choice } from "./choice.tsx";
import { LabelledField } from "./draft-field.tsx";
import { MoreOfElement } from "./element-more.tsx";
import { choose, closeForm, type Thing } from "./focus.ts";
import { GlossHead } from "./gloss-head.tsx";
import { GuardEditor, guardWords } from "./guard-editor.tsx";
import { names, short } from "./row-names.ts";
import { openShared, useSharedForm } from "./shared-open.ts";
import { capital } from "./slot-editor.tsx";
import { elementWords } from "./slot-place.ts";
import { useFocusedForm } from "./step-form.tsx";
import { storeFields } from "./store-fields.ts";
import { wordsFor } from "./support.ts";
import { TakeAway } from "./take-away.tsx";
import { actionsOf } from "./verbs.ts";
import { WarrantChoice } from "./warrant-choice.tsx";

export { QuestionGloss } from "./question-gloss.tsx";
export { TermGloss } from "./term-gloss.tsx";

type ElementAs<Is extends RecordOf<"elements">["is"]> = Extract<RecordOf<"elements">, { is: Is }>;

/** A form in the place of a gloss, with its end. */
function GlossForm({ thing, children }: { thing: Thing; children: ComponentChildren }) {
  const form = useFocusedForm(thing);
  return (
    <div class="form" ref={form}>
      {children}
      <p class="says form-end">
        <button type="button" class="quiet" onClick={closeForm}>
          done
        </button>
      </p>
    </div>
  );
}

/** What all elements have besides their own: warrant, conditions, place, note. */
function ElementRest({ element }: { element: RecordOf<"elements"> }) {
  const own = capital(elementWords(element.id));
  return (
    <>
      <WarrantChoice
        label={own}
        support={element.existence}
        marks={wordsFor("elements", element.id)}
        take={(existence) => void storeFields("elements", element.id, { existence }, `${own}: ${existence.warrant}`)}
      />
      <GuardEditor
        guard={element.guard}
        store={(guard, why) => void storeFields("elements", element.id, { guard }, `${own}: ${why}`)}
      />
      <MoreOfElement element={element} own={own} />
    </>
  );
}

export function AdviceGloss({ element, open }: { element: ElementAs<"advice">; open: boolean }) {
  const thing = { kind: "elements", id: element.id } as const;
  const steps = elements.value.filter((other) => other.is === "step" || other.is === "again");
  const ends = steps.map((step) => ({ value: step.id, words: elementWords(step.id) }));
  const whole = element.from === null && element.to === null;
  const over = whole
    ? "throughout"
    : `${element.from ? `from ${elementWords(element.from)}` : "from the beginning"}${element.to ? ` to ${elementWords(element.to)}` : " to the end"}`;
  return (
    <>
      <GlossHead thing={thing} sign="" title="Advice" by={element.existence.warrant} />
      {!open && (
        <>
          <p class="said">{element.demand}</p>
          <p class="meta">
            {over}
            {element.guard.length > 0 && `, ${guardWords(element.guard)}`}
          </p>
          {element.note && <p class="meta">{element.note}</p>}
        </>
      )}
      {open && (
        <GlossForm thing={thing}>
          <LabelledField
            row={thing}
            name="demand"
            label="What is asked"
            many
            value={element.demand}
            check={(text) => (text.trim() === "" ? "Expected what is asked." : "")}
            store={(demand, base) =>
              storeFields("elements", element.id, { demand: demand.trim() }, `Advice: “${short(demand.trim())}”`, base)
            }
          />
          <div class="row">
            <span class="label">over</span>
            <Choice
              label="From which step"
              value={element.from ?? "first"}
              options={[{ value: "first", words: "from the beginning" }, ...ends]}
              take={(from) =>
                void storeFields("elements", element.id, { from: from === "first" ? null : from }, "Advice: from where")
              }
            />
            <Choice
              label="To which step"
              value={element.to ?? "last"}
              options={[{ value: "last", words: "to the end" }, ...ends]}
              take={(to) =>
                void storeFields("elements", element.id, { to: to === "last" ? null : to }, "Advice: to where")
              }
            />
          </div>
          <ElementRest element={element} />
        </GlossForm>
      )}
    </>
  );
}

export function UntreatedGloss({ element, open }: { element: ElementAs<"untreated">; open: boolean }) {
  const thing = { kind: "elements", id: element.id } as const;
  const { estimate } = element;
  const guess =
    estimate === null
      ? "nobody has guessed how many steps"
      : estimate.from === estimate.to
        ? `about ${estimate.from} ${estimate.from === 1 ? "step" : "steps"}`
        : `${estimate.from} to ${estimate.to} steps`;
  const read = (text: string): { from: number; to: number } | null | undefined => {
    if (text.trim() === "") return null;
    const found = text.trim().match(/^(\d+)(?:\s*(?:to|-|–)\s*(\d+))?$/);
    if (found === null) return undefined;
    const ends = [Number(found[1]), Number(found[2] ?? found[1])].sort((a, b) => a - b);
    return { from: ends[0] ?? 0, to: ends[1] ?? 0 };
  };
  return (
    <>
      <GlossHead thing={thing} sign="" title="Not yet treated" by="" />
      {!open && (
        <>
          <p class="meta">{guess}</p>
          {element.note && <p class="meta">{element.note}</p>}
        </>
      )}
      {open && (
        <GlossForm thing={thing}>
          <LabelledField
            row={thing}
            name="estimate"
            label="How many steps it may hold"
            placeholder="3 to 5"
            value={
              estimate === null
                ? ""
                : estimate.from === estimate.to
                  ? `${estimate.from}`
                  : `${estimate.from} to ${estimate.to}`
            }
            check={(text) => (read(text) === undefined ? "Expected a number of steps, as “4” or “3 to 5”." : "")}
            store={(text, base) =>
              storeFields(
                "elements",
                element.id,
                { estimate: read(text) ?? null },
                "Untreated: an estimate of steps",
                base,
              )
            }
          />
          <ElementRest element={element} />
        </GlossForm>
      )}
    </>
  );
}

export function NoteGloss({ id, open }: { id: string; open: boolean }) {
  const note = one("notes", id);
  if (note === null) return null;
  const thing = { kind: "notes", id } as const;
  return (
    <>
      <GlossHead thing={thing} sign="" title="Note" by="" />
      {!open && <p>{note.text}</p>}
      {open && (
        <GlossForm thing={thing}>
          <LabelledField
            row={thing}
            name="text"
            label="The note"
            many
            value={note.text}
            check={(text) => (text.trim() === "" ? "Expected some words, or take the note away." : "")}
            store={(text, base) => storeFields("notes", id, { text: text.trim() }, `Note: ${short(text.trim())}`, base)}
          />
          <p class="says">
            <TakeAway kind="notes" id={id} what="the note" why="A note taken away" after={() => choose(null)} />
          </p>
        </GlossForm>
      )}
    </>
  );
}

/** What is timed before stands before the first step, and no step inherits it. */
function whenItHolds(standing: string): string {
  const acts = actionsOf(standing);
  const before = acts.filter(({ timing }) => timing?.is === "said" && timing.value.is === "before");
  if (before.length === 0) return "holds throughout";
  return before.length === acts.length ? "how an exercise begins" : "holds throughout, and how an exercise begins";
}

export function StandingGloss({ id }: { id: string }) {
  const standing = one("standings", id);
  const thing = { kind: "standings", id } as const;
  useSharedForm(thing, "standings", id);
  if (standing === null) return null;
  return (
    <>
      <GlossHead thing={thing} sign="" title={standing.title} by={standing.existence.warrant} />
      <p class="meta">{standing.is === "instruction" ? whenItHolds(id) : "is never mentioned"}</p>
      {standing.note && <p>{standing.note}</p>}
      {actionsOf(id).map((action) => (
        <p key={action.id}>
          <span class={`value w-${action.existence.warrant}`}>{actWords(action.act, names.value)}</span>
        </p>
      ))}
      <p class="says">
        <button type="button" class="quiet" onClick={() => openShared("standings", id)}>
          change it
        </button>
      </p>
    </>
  );
}
