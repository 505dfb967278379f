/** client/read/place-form.tsx - where the open passage stands: its exercise (label, title, note), and the book with its
 *  texts (titles, who made them, language, CTS URN). */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Kind, RecordOf } from "../../schema/record.ts";
import { parseCtsUrn } from "../../shared/cite/cts-urn.ts";
import { exercisesOfWork } from "../state/outline.ts";
import { exercise, loadContents, texts, work } from "../state/passage.ts";
import { DraftField } from "./draft-field.tsx";
import { putInExercise, startExercise } from "./start-exercise.ts";
import { type Fields, storeFields } from "./store-fields.ts";

/** A field of words of one row: stored on Enter or on leaving it. */
function Words<K extends Kind>(props: {
  kind: K;
  id: string;
  name: keyof RecordOf<K> & string;
  label: string;
  value: string;
  needed?: boolean;
  check?: (text: string) => string;
  size?: number;
}) {
  const { kind, id, name, label, value, needed = false, check, size } = props;
  const told = (text: string) =>
    needed && text.trim() === "" ? `${label} cannot be empty.` : (check?.(text.trim()) ?? "");
  return (
    <div class="field">
      <span class="label">{label}</span>
      <DraftField
        row={{ kind, id }}
        name={name}
        label={label}
        value={value}
        check={told}
        {...(size === undefined ? {} : { size })}
        store={async (text, base) => {
          const done = await storeFields(
            kind,
            id,
            { [name]: text.trim() } as Fields<K>,
            `${label}: ${text.trim()}`,
            base,
          );
          if (done) void loadContents();
          return done;
        }}
      />
    </div>
  );
}

const urnProblem = (text: string): string => {
  if (text === "") return "";
  const read = parseCtsUrn(text);
  return read.ok ? "" : read.sentence;
};

export function PlaceForm({ close }: { close: () => void }) {
  const title = useSignal("");
  const onlyThis = useSignal(true);
  const form = useRef<HTMLElement>(null);
  useEffect(() => {
    form.current?.scrollIntoView({ block: "nearest" });
    form.current?.querySelector("select")?.focus({ preventScroll: true });
  }, []);
  const own = exercise.value;
  const book = work.value;
  return (
    <section
      ref={form}
      class="desk place-form"
      aria-label="Where this passage stands"
      onKeyDown={(event) => {
        if (event.key === "Escape") close();
      }}
    >
      <div class="row">
        <h2>Where this passage stands</h2>
        <button type="button" class="quiet" onClick={close}>
          put away
        </button>
      </div>
      <label class="field">
        <span>Its exercise</span>
        <select
          value={own?.id ?? ""}
          onChange={(event) => {
            const { value, selectedOptions } = event.currentTarget;
            void putInExercise(value || null, selectedOptions[0]?.textContent ?? "none");
          }}
        >
          <option value="">no exercise yet</option>
          {exercisesOfWork().map(({ value }) => (
            <option key={value.id} value={value.id}>
              {[value.label, value.title].filter(Boolean).join(". ")}
            </option>
          ))}
        </select>
      </label>
      {own && (
        <div class="row">
          <Words kind="exercises" id={own.id} name="label" label="Counted in the book as" value={own.label} size={6} />
          <Words
            kind="exercises"
            id={own.id}
            name="title"
            label="Title of the exercise"
            value={own.title}
            needed
            size={36}
          />
        </div>
      )}
      {own && (
        <Words kind="exercises" id={own.id} name="note" label="Note on the exercise" value={own.note} size={48} />
      )}
      <form
        class="row"
        onSubmit={(event) => {
          event.preventDefault();
          void startExercise(title.value, onlyThis.value).then((done) => {
            if (done) title.value = "";
          });
        }}
      >
        <label class="field">
          <span>A new exercise begins here, called</span>
          <input
            required
            size={30}
            value={title.value}
            onInput={(event) => (title.value = event.currentTarget.value)}
          />
        </label>
        <label>
          <input
            type="checkbox"
            checked={onlyThis.value}
            onInput={(event) => (onlyThis.value = event.currentTarget.checked)}
          />{" "}
          <span>this passage only</span>
        </label>
        <button type="submit">Start it</button>
      </form>
      {book && (
        <details>
          <summary>The book and its texts</summary>
          <div class="row">
            <Words
              kind="works"
              id={book.id}
              name="title"
              label="Title of the work"
              value={book.title}
              needed
              size={36}
            />
            <Words kind="works" id={book.id} name="author" label="Author" value={book.author} size={24} />
          </div>
          {texts.value.map(({ layer }) => (
            <div class="row" key={layer.id}>
              <Words
                kind="layers"
                id={layer.id}
                name="title"
                label={layer.is === "original" ? "Original" : "Translation"}
                value={layer.title}
                needed
                size={24}
              />
              <Words kind="layers" id={layer.id} name="by" label="By" value={layer.by} size={20} />
              <Words kind="layers" id={layer.id} name="language" label="Language" value={layer.language} size={5} />
              <Words
                kind="layers"
                id={layer.id}
                name="urn"
                label="CTS URN, ending in a colon"
                value={layer.urn}
                size={40}
                check={urnProblem}
              />
            </div>
          ))}
        </details>
      )}
    </section>
  );
}
