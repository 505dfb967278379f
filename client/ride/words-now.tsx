/** client/ride/words-now.tsx - the words behind what is happening now: the passage, with those of the step washed and
 *  those of what is being done, or of a finding, lit. */
import { useSignal } from "@preact/signals";
import type { Citation } from "../../schema/drill.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { follow } from "../state/route.ts";
import { type Place, placesOf, type ReadPassage, readPassages, runsOf } from "./lit-words.ts";
import { lit, stage } from "./moment.ts";

export function WordsNow({ exercise }: { exercise: string }) {
  const withOriginal = useSignal(false);
  const { step, now, finding } = lit.value;
  const [stepPlaces, nowPlaces] = [placesOf(step), placesOf(now)];
  const own = readPassages.value.filter(({ passage }) => passage.exercise === exercise);
  // The passage the step stands in; that of a finding where one was gone to.
  const wanted = finding ? [...nowPlaces, ...stepPlaces] : [...stepPlaces, ...nowPlaces];
  const first = wanted[0]?.passage ?? own[0]?.passage.id;
  const shown = readPassages.value.find(({ passage }) => passage.id === first) ?? own[0];
  const elsewhere = [...now, ...step].filter(
    (citation) => !placesOf([citation]).some((place) => place.passage === first),
  );
  if (shown === undefined) return <p class="empty">No words of this exercise were brought in yet.</p>;
  const hasOriginal = shown.texts.length > 1;
  const texts = withOriginal.value ? shown.texts : shown.texts.slice(0, 1);
  return (
    <div class="passage-now" id="leaf" key={shown.passage.id}>
      <p class="ref row">
        <span>{referenceOf(shown)}</span>
        <a class="meta" href={`/read/${shown.passage.id}`} onClick={follow}>
          open in Read
        </a>
        {hasOriginal && (
          <label class="meta">
            <input
              type="checkbox"
              checked={withOriginal.value}
              onChange={(event) => (withOriginal.value = event.currentTarget.checked)}
            />{" "}
            the original too
          </label>
        )}
      </p>
      {texts.map(({ layer, text }) => (
        <LitText
          key={text.id}
          text={text.text}
          language={layer.language}
          original={layer.is === "original"}
          step={stepPlaces.filter((place) => place.text === text.id)}
          now={nowPlaces.filter((place) => place.text === text.id)}
        />
      ))}
      {stepPlaces.length + nowPlaces.length === 0 && stage.value && (
        <p class="meta">
          {stage.value.is === "untreated"
            ? "These words are not written out into steps yet, so nothing is ridden for them."
            : "No words say this: it is supplied."}
        </p>
      )}
      {stage.value?.mirrored && <p class="meta">Ridden mirrored here: where the words say left, it is ridden right.</p>}
      <Elsewhere citations={elsewhere} />
    </div>
  );
}

function LitText({
  text,
  language,
  original,
  step,
  now,
}: {
  text: string;
  language: string;
  original: boolean;
  step: readonly Place[];
  now: readonly Place[];
}) {
  return (
    <p class={`lit-text ${original ? "original" : ""}`} lang={language || undefined} dir="auto">
      {runsOf(text.length, step, now).map((run) => {
        const words = text.slice(run.from, run.to);
        if (run.now) return <mark key={run.from}>{words}</mark>;
        return run.step ? (
          <span key={run.from} class="of-step">
            {words}
          </span>
        ) : (
          words
        );
      })}
    </p>
  );
}

/** Words that stand in another passage: quoted, with where they stand. Of words within words the longer are enough. */
function Elsewhere({ citations }: { citations: readonly Citation[] }) {
  const layer = citations[0]?.layer;
  const quoted = citations.filter((citation) => citation.layer === layer && citation.quote !== "");
  const longest = quoted.filter(
    (citation, index) =>
      !quoted.some(
        (other, at) =>
          at !== index &&
          other.reference === citation.reference &&
          other.quote.includes(citation.quote) &&
          (other.quote.length > citation.quote.length || at < index),
      ),
  );
  if (longest.length === 0) return null;
  return (
    <p class="elsewhere meta">
      Also behind this:{" "}
      {longest.slice(0, 3).map((citation) => (
        <span key={`${citation.reference} ${citation.quote}`}>
          <span class="said">“{citation.quote}”</span> <span class="ref">{citation.reference}</span>{" "}
        </span>
      ))}
    </p>
  );
}

export function referenceOf({ passage }: ReadPassage): string {
  const [first] = passage.references;
  return first ? formatReference(first) : "a passage without reference";
}
