/** client/decide/term-page.tsx - a term: what it can mean, every place where it stands with the words around it, the sense chosen at each,
 *  and what the cruxes at its words leave. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { RecordOf } from "../../schema/record.ts";
import { actWords } from "../../shared/drill/act-words.ts";
import type { WordsInContext } from "../../shared/text/words-in-context.ts";
import { Choice } from "../read/choice.tsx";
import { names, short } from "../read/row-names.ts";
import { storeFields } from "../read/store-fields.ts";
import { exerciseRefusal, openWork } from "../state/exercise.ts";
import { contents } from "../state/passage.ts";
import { follow } from "../state/route.ts";
import { one, ranked } from "../state/rows.ts";
import { failure, keepCounting, laid } from "./answers.ts";
import { CountHead } from "./count-head.tsx";
import { CruxEntry } from "./crux-entry.tsx";
import { Exceptions } from "./exceptions.tsx";
import { openInRead } from "./goto.ts";
import { placesOfTerm, sensesOf, type TermPlace, thingsAt } from "./term-places.ts";
import { wishNothing } from "./wish.ts";

export function TermPage({ id }: { id: string | null }) {
  const looked = useSignal(false);
  const works = (contents.value?.works ?? []).flatMap(({ rows }) => rows.works?.[0]?.value.id ?? []).join(" ");
  useEffect(() => {
    if (works === "") return;
    wishNothing();
    void openWorkOf(id, works.split(" ")).then(() => (looked.value = true));
    return keepCounting();
  }, [id, works]);
  const term = one("terms", id);
  if (term === null) {
    return (
      <main class="room" id="main">
        <h1>A word followed</h1>
        {exerciseRefusal.value && (
          <p class="notice" role="alert">
            {exerciseRefusal.value.sentence}
          </p>
        )}
        {looked.value && !exerciseRefusal.value && (
          <p class="empty">
            No word is followed under this address; it may have been taken away. Choose one of those in{" "}
            <a href="/decide" onClick={follow}>
              Decide
            </a>
            .
          </p>
        )}
      </main>
    );
  }
  return <Term term={term} />;
}

/** The address does not say of which work the term is: the first that has it. */
async function openWorkOf(term: string | null, works: readonly string[]): Promise<void> {
  for (const work of works) {
    if (one("terms", term)?.work === work || one("terms", term) === null) await openWork(work);
    if (one("terms", term) !== null) return;
  }
}

function Term({ term }: { term: RecordOf<"terms"> }) {
  const places = placesOfTerm(term.id);
  const at = thingsAt("cruxes", places);
  const cruxes = laid.value?.cruxes.filter(({ id }) => at.includes(id)) ?? [];
  return (
    <main class="decide term-page" id="main">
      <header class="decide-head">
        <h1>
          <i class="said" lang={term.language || undefined}>
            {term.word}
          </i>
        </h1>
        {term.note && <p class="meta">{term.note}</p>}
        <p class="meta">
          {places.length === 1 ? "One place" : `${places.length} places`} in “{one("works", term.work)?.title}”.{" "}
          <a href={`/decide/work/${term.work}`} onClick={follow}>
            all cruxes of the work
          </a>
        </p>
      </header>
      <section class="senses" aria-label="What it can mean">
        <h2>What it can mean</h2>
        <Senses term={term.id} places={places} />
      </section>
      <section class="places" aria-label="Where it stands">
        <h2>Where it stands</h2>
        {places.length === 0 && (
          <p class="empty">It is tied to no words. In Read, select the words and say that they are a term.</p>
        )}
        <ol>
          {places.map((place) => (
            <Place key={place.mark.id} term={term} place={place} />
          ))}
        </ol>
      </section>
      <section class="choosing" aria-label="What choosing does">
        <h2>What choosing does</h2>
        {failure.value && (
          <p class="notice" role="alert">
            {failure.value}
          </p>
        )}
        {cruxes.length > 0 && <CountHead />}
        <p class="meta">
          A sense says what the word means at a place, and no count changes with it. What is ridden there hangs on the
          cruxes at its words.
        </p>
        {laid.value && cruxes.length === 0 && (
          <p class="empty">
            No crux stands at its words. Where the word leaves open what is ridden, make its words a crux in Read.
          </p>
        )}
        {cruxes.map((crux) => (
          <div key={crux.id}>
            <CruxEntry crux={crux.id} />
            <Exceptions crux={crux.id} elements={thingsAt("elements", places)} />
          </div>
        ))}
      </section>
    </main>
  );
}

function Senses({ term, places }: { term: string; places: readonly TermPlace[] }) {
  const open = places.filter(({ sense }) => sense === null).length;
  const senses = sensesOf(term);
  return (
    <dl>
      {senses.map(({ id, title, gloss }) => (
        <div key={id}>
          <dt>{title}</dt>
          <dd>
            {gloss} <span class="meta">{counted(places.filter(({ sense }) => sense?.id === id).length)}. </span>
            <StandsFor sense={id} />
          </dd>
        </div>
      ))}
      {(open > 0 || senses.length === 0) && (
        <div>
          <dt class="soft">open</dt>
          <dd class="meta">{counted(open)}: which sense it has there is not chosen.</dd>
        </div>
      )}
    </dl>
  );
}

const counted = (places: number): string =>
  places === 1 ? "at one place" : `at ${places === 0 ? "no" : places} places`;

function StandsFor({ sense }: { sense: string }) {
  const acts = ranked("actions").filter((action) => action.ownerKind === "senses" && action.owner === sense);
  if (acts.length === 0) return null;
  return <span class="meta">It stands for: {acts.map(({ act }) => actWords(act, names.value)).join("; ")}.</span>;
}

function Place({ term, place }: { term: RecordOf<"terms">; place: TermPlace }) {
  const { mark, passage, reference, sense, words, lost } = place;
  const own = `Term “${short(term.word, 30)}”`;
  const exercise = one("exercises", passage.exercise);
  const take = (chosen: string) => {
    const to = sensesOf(term.id).find(({ id }) => id === chosen);
    void storeFields(
      "marks",
      mark.id,
      to ? { of: "senses", target: to.id } : { of: "terms", target: term.id },
      to ? `${own}: at ${reference} “${short(to.title, 40)}”` : `${own}: its sense at ${reference} is open`,
    );
  };
  return (
    <li class="term-place">
      <p class="where">
        <button
          type="button"
          class="quiet ref"
          aria-label={`open ${reference || "the passage"} in Read`}
          onClick={() =>
            void openInRead(sense ? { kind: "senses", id: sense.id } : { kind: "terms", id: term.id }, passage.id)
          }
        >
          {reference || "a passage without reference"}
        </button>
        {exercise && <span class="meta">{exercise.title}</span>}
      </p>
      <div class="words">
        {words.map(({ anchor, layer, context }) => (
          <p key={anchor.id} class={`said in-context ${layer.is}`} lang={layer.language || undefined} dir="auto">
            <InContext context={context} />
          </p>
        ))}
        {lost && <p class="meta">Its words are no longer in the text.</p>}
      </div>
      <Choice
        label={`Its sense at ${reference}`}
        value={sense?.id ?? "open"}
        options={[
          { value: "open", words: "left open" },
          ...sensesOf(term.id).map(({ id, title }) => ({ value: id, words: title })),
        ]}
        take={take}
      />
    </li>
  );
}

/** The words, lit, between what stands before and after them on one line. */
function InContext({ context: { quote, hits, cutBefore, cutAfter } }: { context: WordsInContext }) {
  const [hit = { from: 0, to: 0 }] = hits;
  const line = (words: string) => words.replace(/\s/g, " ");
  return (
    <>
      <span class="left">{`${cutBefore ? "… " : ""}${line(quote.slice(0, hit.from))}`}</span>
      <mark>{line(quote.slice(hit.from, hit.to))}</mark>
      <span class="right">{`${line(quote.slice(hit.to))}${cutAfter ? " …" : ""}`}</span>
    </>
  );
}
