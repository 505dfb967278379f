/** client/decide/quoted.tsx - words of the text where they are talked about: reference, then the words of each text. */
import type { Citation } from "../../schema/drill.ts";
import { shortenQuote } from "../../shared/cite/citation-line.ts";

/** Longest quotation here, in characters. */
const LONGEST = 110;

/** The first place, its words in every text; null where there are none. */
export function Quoted({ citations, brief = false }: { citations: readonly Citation[]; brief?: boolean }) {
  const [first] = citations;
  if (first === undefined) return null;
  const here = citations.filter(({ reference, quote }) => reference === first.reference && quote !== "");
  const byLayer = new Map(
    here.map((citation) => [citation.layer, here.filter(({ layer }) => layer === citation.layer)]),
  );
  const texts = [...byLayer.values()].slice(0, brief ? 1 : 2);
  return (
    <>
      {first.reference && <span class="ref">{first.reference} </span>}
      {texts.map((list, index) => (
        <span key={list[0]?.layer} class={index === 0 ? "said" : "said soft"} lang={list[0]?.language || undefined}>
          <bdi>“{list.map(({ quote }) => shortenQuote(quote, LONGEST)).join(" … ")}”</bdi>{" "}
        </span>
      ))}
      {first.state === "lost" && <span class="meta">(no longer in the text) </span>}
    </>
  );
}
