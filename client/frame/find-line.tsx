/** client/frame/find-line.tsx - one line of what was found: its name, its words with those sought lit, where they stand. */
import type { ComponentChildren } from "preact";
import type { Found, FoundGroup, FoundSpan } from "../../schema/find.ts";

export const GROUP_WORDS: Readonly<Record<FoundGroup["group"], string>> = {
  passages: "Words of the texts",
  exercises: "Exercises",
  steps: "Steps",
  cruxes: "Cruxes",
  questions: "Questions",
  terms: "Terms",
  notes: "Notes",
  "shared things": "Objects, holds, grounds",
};

/** `work` is left out where there is only one. */
export function FoundLine({ found, manyWorks }: { found: Found; manyWorks: boolean }) {
  const { kind, title, titleHits, words, reference, exercise, work } = found;
  const isPassage = kind === "passages";
  const layer = isPassage ? words?.part : "";
  const where = [layer, kind === "exercises" ? "" : exercise, manyWorks ? work : ""].filter(Boolean).join(" · ");
  return (
    <>
      <span class="find-head">
        {isPassage ? (
          <span class="ref">
            <Lit text={title} hits={titleHits} />
          </span>
        ) : (
          title && (
            <span class="find-title">
              <Lit text={title} hits={titleHits} />
            </span>
          )
        )}
        {!isPassage && reference && <span class="ref">{reference}</span>}
        {where && <span class="meta">{where}</span>}
      </span>
      {words && (
        <span class="find-words">
          {words.part && !isPassage && <span class="meta">{words.part} </span>}
          <bdi class={isPassage ? "said" : ""} lang={words.language || undefined}>
            {words.cutBefore && "… "}
            <Lit text={words.quote} hits={words.hits} />
            {words.cutAfter && " …"}
          </bdi>
        </span>
      )}
    </>
  );
}

function Lit({ text, hits }: { text: string; hits: readonly FoundSpan[] }) {
  const pieces: ComponentChildren[] = [];
  let done = 0;
  for (const { from, to } of hits) {
    pieces.push(text.slice(done, from), <mark key={from}>{text.slice(from, to)}</mark>);
    done = to;
  }
  return (
    <>
      {pieces}
      {text.slice(done)}
    </>
  );
}
