/** client/decide/reading-row.tsx - one reading: its title, its share as a number and a thin line, and in words what the count or a
 *  person says of it. A press picks it provisionally. */
import { signal } from "@preact/signals";
import type { RecordOf } from "../../schema/record.ts";
import type { AnsweredReading } from "../../shared/ride/puzzle/index.ts";
import { one } from "../state/rows.ts";
import { answered, askWhy, isAsked, noMoreWhy } from "./answers.ts";
import { shareWords } from "./count-words.ts";
import { WhyNotPart } from "./why-not.tsx";
import { isPicked, pick } from "./wish.ts";

/** The reading that had the focus last keeps its crux's place in the order of Tab. */
export const lastFocused = signal<string | null>(null);

interface Props {
  crux: RecordOf<"cruxes">;
  reading: RecordOf<"readings">;
  /** Null where it is not counted. */
  share: AnsweredReading | null;
  /** Ways that hold and in which the crux arises. */
  whole: bigint;
  /** Whether Tab comes to it. */
  stop: boolean;
}

export function ReadingRow({ crux, reading, share, whole, stop }: Props) {
  const { id } = reading;
  const picked = isPicked(crux.id, id);
  const target = { crux: crux.id, reading: id };
  const verdict = verdictOf(reading, share);
  const width = share === null || share.share === null ? 0 : share.share * 100;
  const stands = standingWords(crux, reading);
  return (
    <li
      class={`reading-row ${verdict.replaceAll(" ", "-")} ${picked ? "picked" : ""} ${reading.status.is === "adopted" ? "adopted" : ""}`}
    >
      <button
        type="button"
        class="pick"
        aria-pressed={picked}
        tabIndex={stop ? 0 : -1}
        disabled={share === null}
        onFocus={() => (lastFocused.value = id)}
        onClick={() => pick(target)}
      >
        <span class="names">
          <span class="title">{reading.title}</span>
          <span class="by">
            {[reading.holder, stands && <b key="stands">{stands}</b>, picked && <b key="picked">picked</b>]
              .filter(Boolean)
              .flatMap((part, index) => (index > 0 ? [" · ", part] : [part]))}
          </span>
        </span>
        <span class="verdict">{verdict === "possible" ? "" : verdict}</span>
        <span class="share-words">{share && verdict !== "ruled out" ? shareWords(share, whole) : ""}</span>
        <span class="bar-line" aria-hidden="true">
          <span class="bar-fill" style={{ width: `${width}%` }} />
        </span>
      </button>
      {verdict === "dead" && (
        <button
          type="button"
          class="quiet why"
          aria-expanded={isAsked(target)}
          onClick={() => (isAsked(target) ? noMoreWhy() : askWhy(target))}
        >
          why?<span class="spoken"> is “{reading.title}” dead</span>
        </button>
      )}
      <Beside reading={id} share={share} />
      {isAsked(target) && <WhyNotPart />}
    </li>
  );
}

/** What the count says, unless a person ruled it out. */
function verdictOf(reading: RecordOf<"readings">, share: AnsweredReading | null): string {
  if (reading.status.is === "ruled out") return "ruled out";
  if (share === null) return "";
  return share.verdict === "ruled out" ? "not taken" : share.verdict;
}

function standingWords(crux: RecordOf<"cruxes">, { id, status }: RecordOf<"readings">): string {
  if (status.is === "adopted") return status.condition.trim() === "" ? "adopted" : `adopted ${status.condition.trim()}`;
  return crux.leftFree?.default === id ? "left free; computed with this" : "";
}

/** What it cannot stand with, and which reading does the same. */
function Beside({ reading, share }: { reading: string; share: AnsweredReading | null }) {
  const pairs = answered.value?.excludedPairs ?? [];
  const others = pairs.flatMap(({ first, second }) => {
    if (first.reading === reading) return [second];
    return second.reading === reading ? [first] : [];
  });
  const same = share?.sameAs;
  if (others.length === 0 && !same) return null;
  return (
    <p class="meta beside-reading">
      {same && <>Does the same to the ride as “{titleOf(same)}”; the two count as one. </>}
      {others.length > 0 && (
        <>
          Possible by itself, but never together with{" "}
          {others.map((other, index) => (
            <span key={other.reading}>
              {index > 0 && (index === others.length - 1 ? " or " : ", ")}“{titleOf(other.reading)}”{" "}
              <a href={`#entry-${other.crux}`}>†&nbsp;{one("cruxes", other.crux)?.title}</a>
            </span>
          ))}
          .
        </>
      )}
    </p>
  );
}

const titleOf = (id: string): string => one("readings", id)?.title ?? "a reading no longer there";
