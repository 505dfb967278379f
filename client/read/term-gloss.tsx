/** client/read/term-gloss.tsx - a word followed through the work: its senses, and which of them it has here. */
import { useSignal } from "@preact/signals";
import type { RecordOf } from "../../schema/record.ts";
import { rankBetween } from "../../shared/rank.ts";
import { marksByText, texts } from "../state/passage.ts";
import { follow } from "../state/route.ts";
import { one, ranked } from "../state/rows.ts";
import { create, newId } from "../state/write.ts";
import { Choice } from "./choice.tsx";
import { DraftField, LabelledField } from "./draft-field.tsx";
import { choose, closeForm, type Thing } from "./focus.ts";
import { GlossHead } from "./gloss-head.tsx";
import { short } from "./row-names.ts";
import { useFocusedForm } from "./step-form.tsx";
import { fieldsEdit, storeEdits, storeFields } from "./store-fields.ts";
import { TakeAway } from "./take-away.tsx";

/** `thing` is the term where its sense here is open, else the sense it has here. */
export function TermGloss({ thing, open }: { thing: Thing; open: boolean }) {
  const sense = thing.kind === "senses" ? one("senses", thing.id) : null;
  const term = one("terms", sense?.term ?? thing.id);
  if (term === null) return null;
  const title = (
    <>
      <i class="said">{term.word}</i>
      {sense && `: ${sense.title}`}
    </>
  );
  return (
    <>
      <GlossHead thing={thing} sign="" title={title} by={sense ? "term" : "its sense here is open"} />
      {!open && (sense?.gloss || term.note) && <p class="meta">{sense?.gloss || term.note}</p>}
      <p class="tools">
        <a href={`/decide/term/${term.id}`} onClick={follow}>
          all its places
        </a>
      </p>
      {open && <TermForm thing={thing} term={term} sense={sense} />}
    </>
  );
}

function TermForm({ thing, term, sense }: { thing: Thing; term: RecordOf<"terms">; sense: RecordOf<"senses"> | null }) {
  const form = useFocusedForm(thing);
  const row = { kind: "terms", id: term.id } as const;
  const own = `Term “${short(term.word, 30)}”`;
  const senses = ranked("senses").filter((other) => other.term === term.id);
  const title = useSignal("");
  /** The marks of this thing in the open passage change to the other sense; elsewhere it keeps the one it has. */
  const readHere = async (to: Thing, why: string, also = [] as Parameters<typeof storeEdits>[0]) => {
    const here = new Set(
      texts.value.flatMap(({ text }) =>
        (marksByText.value.get(text.id) ?? [])
          .filter(({ mark }) => mark.of === thing.kind && mark.target === thing.id && mark.as === "words")
          .map(({ mark }) => mark.id),
      ),
    );
    const edits = [...here].map((mark) => fieldsEdit("marks", mark, { of: to.kind, target: to.id }));
    if (await storeEdits([...also, ...edits], `${own}: ${why}`)) choose(to, true);
  };
  const addSense = async (name: string) => {
    const made: RecordOf<"senses"> = {
      id: newId(),
      term: term.id,
      rank: rankBetween(senses.at(-1)?.rank ?? null, null),
      title: name,
      gloss: "",
    };
    const edit = create("senses", made);
    const why = `the sense “${short(name, 40)}”`;
    // The first sense that is named is the one these words have; a later one is chosen on purpose.
    if (sense === null) await readHere({ kind: "senses", id: made.id }, `${why}, read here`, [edit]);
    else await storeEdits([edit], `${own}: ${why}`);
    title.value = "";
  };
  return (
    <div class="form" ref={form}>
      <LabelledField
        row={row}
        name="word"
        label="The word"
        value={term.word}
        check={(text) => (text.trim() === "" ? "Expected the word." : "")}
        store={(word, base) =>
          storeFields("terms", term.id, { word: word.trim() }, `Term “${short(word.trim(), 30)}”`, base)
        }
      />
      <div class="field">
        <span class="label" aria-hidden="true">
          Its sense here
        </span>
        <Choice
          label="Its sense here"
          value={sense?.id ?? "open"}
          options={[
            { value: "open", words: "open" },
            ...senses.map((other) => ({ value: other.id, words: other.title })),
          ]}
          take={(chosen) =>
            void readHere(
              chosen === "open" ? { kind: "terms", id: term.id } : { kind: "senses", id: chosen },
              chosen === "open" ? "its sense here is open" : `here “${one("senses", chosen)?.title ?? ""}”`,
            )
          }
        />
      </div>
      <section class="part">
        <h4>Senses</h4>
        {senses.map((other) => (
          <div key={other.id} class="answer">
            <DraftField
              row={{ kind: "senses", id: other.id }}
              name="title"
              label="Sense"
              value={other.title}
              check={(text) => (text.trim() === "" ? "Expected the sense." : "")}
              store={(text, base) =>
                storeFields(
                  "senses",
                  other.id,
                  { title: text.trim() },
                  `${own}: the sense “${short(text.trim(), 40)}”`,
                  base,
                )
              }
            />
            <DraftField
              row={{ kind: "senses", id: other.id }}
              name="gloss"
              label={`What “${other.title}” means`}
              placeholder="what it means"
              many
              value={other.gloss}
              store={(gloss, base) =>
                storeFields("senses", other.id, { gloss }, `${own}: “${short(other.title, 30)}” told`, base)
              }
            />
            <TakeAway
              kind="senses"
              id={other.id}
              what={`the sense “${short(other.title, 30)}”`}
              why={`${own}: a sense taken away`}
            />
          </div>
        ))}
        <form
          class="row"
          onSubmit={(event) => {
            event.preventDefault();
            if (title.value.trim() !== "") void addSense(title.value.trim());
          }}
        >
          <input
            aria-label="Another sense"
            placeholder="a sense, in a few words"
            size={20}
            value={title.value}
            onInput={(event) => (title.value = event.currentTarget.value)}
          />
          <button type="submit">Add</button>
        </form>
      </section>
      <LabelledField
        row={row}
        name="note"
        label="Note on the word"
        many
        value={term.note}
        store={(note, base) => storeFields("terms", term.id, { note }, `${own}: a note`, base)}
      />
      <div class="says form-end">
        <TakeAway kind="terms" id={term.id} what="the term" why={`${own}: taken away`} after={() => choose(null)} />
        <button type="button" class="quiet" onClick={closeForm}>
          done
        </button>
      </div>
    </div>
  );
}
