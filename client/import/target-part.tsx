/** client/import/target-part.tsx - what the text becomes: which part of it, in which work, called what, in which exercises. */
import type { Work } from "../../schema/work.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { contents } from "../state/passage.ts";
import { change, chosen, exerciseTitle, type Target, target, text } from "./import-state.ts";

export function TargetPart({ works }: { works: readonly Work[] }) {
  const { work, layerIs, exercises } = target.value;
  const meeting = work === "" ? null : metIn(work);
  return (
    <div class="target">
      <fieldset>
        <legend>
          <h2>Which part</h2>
        </legend>
        <div class="row">
          <Field name="from" label="from" hint={endReference("first")} />
          <Field name="to" label="to" hint={endReference("last")} />
        </div>
        <p class="meta">
          Empty takes all of it. A first place alone takes what lies in it: 7 is the whole of chapter 7.
        </p>
      </fieldset>
      <fieldset>
        <legend>
          <h2>Where it goes</h2>
        </legend>
        <label class="field">
          <span>Work</span>
          <select value={work} onChange={(event) => change({ work: event.currentTarget.value })}>
            <option value="">a new work</option>
            {works.map(({ id, title }) => (
              <option key={id} value={id}>
                alongside: {title}
              </option>
            ))}
          </select>
        </label>
        {work === "" ? (
          <>
            <Field name="title" label="Title of the work" required />
            <Field name="author" label="Author" />
          </>
        ) : (
          meeting && <p class="meta">{meeting}</p>
        )}
      </fieldset>
      <fieldset>
        <legend>
          <h2>What it is</h2>
        </legend>
        <div class="row">
          {(["translation", "original"] as const).map((is) => (
            <label key={is}>
              <input type="radio" name="layer" checked={layerIs === is} onChange={() => change({ layerIs: is })} /> {is}
            </label>
          ))}
        </div>
        <Field name="layerTitle" label="Called" required />
        <Field name="by" label={layerIs === "original" ? "Edited by" : "Translated by"} />
        <div class="row">
          <Field name="language" label="Language" hint="en, la, grc, ar" />
          <Field name="urn" label="CTS URN" hint="none" />
        </div>
      </fieldset>
      <fieldset>
        <legend>
          <h2>Exercises</h2>
        </legend>
        {(
          [
            ["by division", "one for each division of the book"],
            ["one", "one for all of it"],
            ["none", "none yet; I shall make them as I read"],
          ] as const
        ).map(([value, words]) => (
          <label key={value} class="line">
            <input
              type="radio"
              name="exercises"
              checked={exercises === value}
              onChange={() => change({ exercises: value })}
            />{" "}
            {words}
          </label>
        ))}
        {exercises === "one" && <ExerciseTitle />}
      </fieldset>
    </div>
  );
}

function ExerciseTitle() {
  return (
    <label class="field">
      <span>Title of the exercise</span>
      <input
        value={exerciseTitle.value}
        required
        onInput={(event) => change({ exerciseTitle: event.currentTarget.value })}
      />
    </label>
  );
}

type Worded = Exclude<keyof Target, "exercises" | "layerIs" | "exerciseTitle">;

function Field({ name, label, hint, required }: { name: Worded; label: string; hint?: string; required?: boolean }) {
  return (
    <label class="field">
      <span>{label}</span>
      <input
        value={target.value[name]}
        placeholder={hint}
        required={required}
        onInput={(event) => change({ [name]: event.currentTarget.value })}
      />
    </label>
  );
}

function endReference(end: "first" | "last"): string {
  const passages = text.value?.passages ?? [];
  const [reference] = (end === "first" ? passages[0] : passages.at(-1))?.references ?? [];
  return reference === undefined ? "" : formatReference(reference);
}

/** How many of the chosen passages the work has already, by section or folio. */
function metIn(work: string): string | null {
  const range = chosen.value;
  const rows = contents.value?.works.find((one) => one.rows.works?.[0]?.value.id === work)?.rows;
  if (!range?.ok || rows === undefined) return null;
  const there = new Set(
    rows.passages?.flatMap(({ value }) =>
      value.references.map((reference) => `${reference.kind} ${formatReference(reference)}`),
    ),
  );
  const met = range.passages.filter(({ references }) =>
    references.some(
      (reference) => reference.kind !== "page" && there.has(`${reference.kind} ${formatReference(reference)}`),
    ),
  ).length;
  const others = range.passages.length - met;
  const rest = others === 0 ? "" : `; ${others} meet none and will be new passages at their place`;
  return `${met} of ${range.passages.length} passages stand beside one of the same section or leaf${rest}.`;
}
