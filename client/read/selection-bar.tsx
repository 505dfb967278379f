/** client/read/selection-bar.tsx - the things to do with selected words, by mouse and by letter. */
import { signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { CRUX_KINDS } from "../../schema/crux.ts";
import { drillElements, elements, exercise } from "../state/passage.ts";
import { all, ranked } from "../state/rows.ts";
import { selected, type Thing, type Words } from "./focus.ts";
import {
  addWords,
  askQuestion,
  leaveUntreated,
  makeAdvice,
  makeAgain,
  makeNote,
  makeStep,
  openCrux,
  quoteOf,
  tagTerm,
} from "./marking.ts";
import { startExercise } from "./start-exercise.ts";

type Ask = "add" | "crux" | "question" | "term" | "note" | "again" | "exercise";
/** The small form that is open in the bar; null shows the list of verbs. */
const asking = signal<Ask | null>(null);
/** What to go on with once the passage has an exercise. */
let afterExercise: ((words: Words) => void) | null = null;

interface Command {
  key: string;
  /** The word on the bar; the key is underlined in it. */
  word: string;
  needsExercise: boolean;
  run(words: Words): void;
}

const asks = (what: Ask) => () => {
  asking.value = what;
};
export const COMMANDS: readonly Command[] = [
  { key: "s", word: "step", needsExercise: true, run: (words) => done(makeStep(words)) },
  { key: "a", word: "add to…", needsExercise: false, run: asks("add") },
  { key: "g", word: "again", needsExercise: true, run: asks("again") },
  { key: "c", word: "crux", needsExercise: false, run: asks("crux") },
  { key: "q", word: "question", needsExercise: false, run: asks("question") },
  { key: "t", word: "term", needsExercise: false, run: asks("term") },
  { key: "v", word: "advice", needsExercise: true, run: (words) => done(makeAdvice(words)) },
  { key: "n", word: "note", needsExercise: false, run: asks("note") },
  { key: "u", word: "untreated", needsExercise: true, run: (words) => done(leaveUntreated(words)) },
];

/** Runs the command of a letter; false when the letter has none. */
export function runLetter(key: string, words: Words): boolean {
  const command = COMMANDS.find((candidate) => candidate.key === key);
  if (command === undefined) return false;
  runCommand(command, words);
  return true;
}

function runCommand(command: Command, words: Words): void {
  selected.value = words;
  if (command.needsExercise && exercise.value === null) {
    afterExercise = (then) => command.run(then);
    asking.value = "exercise";
  } else command.run(words);
}

function done(work: Promise<unknown>): void {
  void work.then(() => {
    asking.value = null;
    selected.value = null;
  });
}

export function SelectionBar() {
  const words = selected.value;
  const bar = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (words === null) asking.value = null;
  }, [words]);
  useEffect(() => {
    if (asking.value) bar.current?.querySelector<HTMLElement>("input, textarea, select, li button")?.focus();
  }, [asking.value]);
  if (words === null) return null;
  const close = (event: KeyboardEvent) => {
    if (event.key !== "Escape") return;
    event.preventDefault();
    event.stopPropagation();
    if (asking.value) asking.value = null;
    else selected.value = null;
  };
  return (
    <div
      class="selection-bar"
      ref={bar}
      role="toolbar"
      aria-label="What these words are"
      style={{ left: words.x, top: words.y }}
      onKeyDown={close}
    >
      {asking.value === null
        ? COMMANDS.map((command) => (
            <button
              key={command.key}
              type="button"
              onClick={() => runCommand(command, words)}
              aria-keyshortcuts={command.key}
            >
              <Keyed word={command.word} letter={command.key} />
            </button>
          ))
        : FORMS[asking.value](words)}
    </div>
  );
}

function Keyed({ word, letter }: { word: string; letter: string }) {
  const at = word.indexOf(letter);
  if (at === -1) return <>{word}</>;
  return (
    <>
      {word.slice(0, at)}
      <kbd>{letter}</kbd>
      {word.slice(at + 1)}
    </>
  );
}

const FORMS: Record<Ask, (words: Words) => ComponentChildren> = {
  add: (words) => (
    <Choose label="Add these words to" choices={addable()} take={(thing) => done(addWords(words, thing))} />
  ),
  again: (words) => <Choose label="Done again:" choices={repeatable()} take={(of) => done(makeAgain(words, of))} />,
  crux: (words) => (
    <Fill
      take={(data) => done(openCrux(words, data.kind as (typeof CRUX_KINDS)[number], data.title ?? ""))}
      verb="Open the crux"
    >
      <select name="kind" aria-label="Kind of crux">
        {CRUX_KINDS.map((is) => (
          <option key={is}>{is}</option>
        ))}
      </select>
      <input
        name="title"
        required
        value={quoteOf(words).slice(0, 200) || "words missing here"}
        aria-label="What is in doubt"
      />
    </Fill>
  ),
  question: (words) => (
    <Fill take={(data) => done(askQuestion(words, data.text ?? "", data.to ?? "", data.crux || null))} verb="Ask">
      <input name="text" required placeholder="What do you need to know?" aria-label="Question" size={34} />
      <input name="to" placeholder="Of whom?" aria-label="Addressed to" size={14} list="addressees" />
      <datalist id="addressees">
        {[...new Set(["the translator", ...all("questions").map((question) => question.to)])].map((to) => (
          <option key={to} value={to} />
        ))}
      </datalist>
      <select name="crux" aria-label="About which crux">
        <option value="">about no crux</option>
        {all("cruxes").map((crux) => (
          <option key={crux.id} value={crux.id}>
            † {crux.title}
          </option>
        ))}
      </select>
    </Fill>
  ),
  term: (words) => (
    <>
      <Choose label="A sense of" choices={senses()} take={(choice) => done(tagTerm(words, choice))} />
      <Fill take={(data) => done(tagTerm(words, { word: data.word ?? "" }))} verb="Follow a new term">
        <input name="word" required value={quoteOf(words)} aria-label="The word to follow" />
      </Fill>
    </>
  ),
  note: (words) => (
    <Fill take={(data) => done(makeNote(words, data.text ?? ""))} verb="Note it">
      <input name="text" required placeholder="Your remark" aria-label="Note" size={40} />
    </Fill>
  ),
  exercise: (words) => (
    <Fill
      take={(data) => {
        void startExercise(data.title ?? "", data.only === "on").then((made) => {
          asking.value = null;
          const go = afterExercise;
          afterExercise = null;
          if (made) go?.(words);
        });
      }}
      verb="Start the exercise"
    >
      <span class="label">This passage stands in no exercise yet. It begins one called</span>
      <input
        name="title"
        required
        placeholder="Of the circle about the well"
        aria-label="Title of the exercise"
        size={28}
      />
      <label>
        <input type="checkbox" name="only" /> <span>this passage only</span>
      </label>
    </Fill>
  ),
};

function Fill({
  take,
  verb,
  children,
}: {
  take: (data: Record<string, string>) => void;
  verb: string;
  children: ComponentChildren;
}) {
  return (
    <form
      class="row"
      onSubmit={(event) => {
        event.preventDefault();
        take(Object.fromEntries(new FormData(event.currentTarget)) as Record<string, string>);
      }}
    >
      {children}
      <button type="submit" class="chief">
        {verb}
      </button>
    </form>
  );
}

function Choose<T>({
  label,
  choices,
  take,
}: {
  label: string;
  choices: { name: string; value: T }[];
  take: (value: T) => void;
}) {
  if (choices.length === 0) return <span class="label">{label} …: there is none yet.</span>;
  return (
    <div>
      <span class="label">{label}</span>
      <ul class="choices">
        {choices.map((choice) => (
          <li key={choice.name}>
            <button type="button" onClick={() => take(choice.value)}>
              {choice.name}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

function addable(): { name: string; value: Thing }[] {
  const steps = elements.value.map((element) => {
    const printed = drillElements.value.get(element.id);
    const name = printed?.number ? `${printed.number} ${printed.title || "step"}` : element.is;
    return { name, value: { kind: "elements", id: element.id } as Thing };
  });
  const cruxes = all("cruxes").map((crux) => ({
    name: `† ${crux.title}`,
    value: { kind: "cruxes", id: crux.id } as Thing,
  }));
  const questions = all("questions").map((question) => ({
    name: `? ${question.text}`,
    value: { kind: "questions", id: question.id } as Thing,
  }));
  return [...steps, ...cruxes, ...questions];
}

function repeatable(): { name: string; value: Parameters<typeof makeAgain>[1] }[] {
  const exercises = ranked("exercises").map((other) => ({
    name: `the exercise ${other.label} ${other.title}`,
    value: { is: "exercise", exercise: other.id } as const,
  }));
  const steps = elements.value.flatMap((element) => {
    const number = drillElements.value.get(element.id)?.number;
    return number
      ? [{ name: `step ${number}`, value: { is: "elements", from: element.id, to: element.id } as const }]
      : [];
  });
  const movements = ranked("movements").map((movement) => ({
    name: `the movement ${movement.name}`,
    value: { is: "movement", movement: movement.id } as const,
  }));
  return [...steps, ...movements, ...exercises];
}

function senses(): { name: string; value: { sense: string } | { term: string } }[] {
  return all("terms").flatMap((term) => [
    ...ranked("senses")
      .filter((sense) => sense.term === term.id)
      .map((sense) => ({ name: `${term.word}: ${sense.title}`, value: { sense: sense.id } as const })),
    { name: `${term.word}: sense open here`, value: { term: term.id } as const },
  ]);
}
