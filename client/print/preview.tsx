/** client/print/preview.tsx - the paper as it stands now, beside the choices. The one before stays until the new one is
 *  there, so that nothing flickers while one chooses. Above it: how many sides it takes, or what is being done. */
import { useSignal } from "@preact/signals";
import type { RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { SidesOfPaper } from "../../schema/issue.ts";
import type { PaperAsk } from "../../schema/paper.ts";
import { ask, type Refused, readText } from "../state/api.ts";
import { follow } from "../state/route.ts";
import { placedRow } from "./asking.ts";
import { paperAddress, sidesAddress } from "./paper-address.ts";
import { leadToWords } from "./words-behind.ts";

/** Milliseconds that choices rest before the paper is asked for, and before its sides are counted, which is more work. */
const REST = 120;
const COUNT_REST = 500;
/** Milliseconds after which one who waits is told so. */
const PATIENCE = 400;

/** `frame` is given the frame that is shown, to print it; `at` is the newest change, `work` that of the exercises. */
export function Preview({
  paper,
  at,
  work,
  title,
  frame,
}: {
  paper: PaperAsk;
  at: number;
  work: string;
  title: string;
  frame: RefObject<HTMLIFrameElement | null>;
}) {
  const address = paperAddress(paper, "html", at);
  const shown = useSignal<string | null>(null);
  const coming = useSignal<string | null>(null);
  const refused = useSignal<Refused | null>(null);
  /** The address whose setting was stopped; how often it was begun anew. */
  const stopped = useSignal<string | null>(null);
  const begun = useSignal(0);
  const slow = useSignal(false);
  const stopping = useRef<AbortController | null>(null);

  useEffect(() => {
    const stop = new AbortController();
    stopping.current = stop;
    slow.value = false;
    stopped.value = null;
    const wait = setTimeout(() => (slow.value = true), PATIENCE);
    const timer = setTimeout(async () => {
      // Asked for first, so that a refusal is told in words; the frame then has the page from what the browser keeps.
      const answer = await readText(address, stop.signal);
      if (stop.signal.aborted) return;
      refused.value = answer.ok ? null : answer.error;
      if (answer.ok) coming.value = address;
    }, REST);
    return () => {
      clearTimeout(wait);
      clearTimeout(timer);
      stop.abort();
    };
  }, [address, begun.value]);

  const loaded = (loadedAddress: string, page: Document | null) => {
    if (coming.value !== loadedAddress) return;
    if (page) leadToWords(page, work);
    shown.value = loadedAddress;
    coming.value = null;
  };
  const stop = () => {
    stopping.current?.abort();
    coming.value = null;
    stopped.value = address;
  };
  const frames = [...new Set([shown.value, coming.value])].filter((one) => one !== null);
  const isThere = shown.value === address;
  return (
    <section class="paper-view" aria-label="How it prints" aria-busy={!isThere && refused.value === null}>
      <p class="paper-state" role="status">
        {refused.value !== null ? (
          shown.value === null ? (
            "There is no paper to show."
          ) : (
            "Below is still the paper before."
          )
        ) : stopped.value === address ? (
          <>
            Stopped. {shown.value !== null && "Below is still the paper before. "}
            <button type="button" class="quiet" onClick={() => (begun.value += 1)}>
              set it after all
            </button>
          </>
        ) : !isThere && (slow.value || shown.value === null) ? (
          <>
            Setting the paper … <progress aria-label="Being set" />{" "}
            <button type="button" class="quiet" onClick={stop}>
              stop
            </button>
          </>
        ) : (
          <Sides paper={paper} address={isThere ? sidesAddress(paper, at) : null} />
        )}
      </p>
      {refused.value && <RefusedPaper refused={refused.value} />}
      {frames.map((one) => (
        <iframe
          key={one}
          ref={one === shown.value ? frame : null}
          class={one === shown.value ? "paper" : "paper coming"}
          title={one === shown.value ? title : "The paper that is being set"}
          aria-hidden={one !== shown.value}
          src={one}
          onLoad={(event) => loaded(one, event.currentTarget.contentDocument)}
        />
      ))}
    </section>
  );
}

/** What stands in the way of the paper; each thing leads to where it can be mended. */
function RefusedPaper({ refused: { sentence, issues = [] } }: { refused: Refused }) {
  const placed = issues.map((issue) => ({
    ...issue,
    passage: issue.at ? placedRow(issue.at.kind, issue.at.id) : null,
  }));
  const worthListing = placed.length > 1 || placed.some(({ passage }) => passage !== null);
  return (
    <div class="notice" role="alert">
      <p>{sentence}</p>
      {worthListing && (
        <ul>
          {placed.map(({ where, sentence: says, passage }) => (
            <li key={`${where} ${says}`}>
              {passage === null ? (
                where
              ) : (
                <a href={`/read/${passage}`} onClick={follow}>
                  {where}
                </a>
              )}
              : {says}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** `address`: where they are counted; null while the paper is not the one that is asked for. What was counted last stands
 *  until then. */
function Sides({ paper: { kind, size }, address }: { paper: PaperAsk; address: string | null }) {
  const counted = useSignal<{ address: string; words: string } | null>(null);
  useEffect(() => {
    if (address === null) return;
    const stop = new AbortController();
    const timer = setTimeout(async () => {
      const answer = await ask<SidesOfPaper>(address, undefined, stop.signal);
      if (answer.ok) counted.value = { address, words: sidesWords(answer.value.sides, kind, size) };
    }, COUNT_REST);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [address]);
  if (counted.value !== null && counted.value.address === (address ?? counted.value.address)) {
    return <>{counted.value.words}</>;
  }
  return <>Counting its sides …</>;
}

/** Papers that are handed out as one leaf. */
const ONE_LEAF: ReadonlySet<PaperAsk["kind"]> = new Set(["ride sheet", "class handout", "caller's sheet"]);

export function sidesWords(sides: number, kind: PaperAsk["kind"], size: PaperAsk["size"]): string {
  const words = sides === 1 ? `One side of ${size} as PDF.` : `${sides} sides of ${size} as PDF.`;
  if (sides <= 2 || !ONE_LEAF.has(kind)) return words;
  const larger = size === "A5" ? ", or choose A4" : "";
  return `${words} More than one leaf: print fewer steps${kind === "class handout" ? " or exercises" : ""}${larger}.`;
}
