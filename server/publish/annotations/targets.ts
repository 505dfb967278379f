/** server/publish/annotations/targets.ts - where a mark stands, in selectors of the Web Annotation standard.
 *  May import: schema types, shared, siblings. Offsets come as UTF-16 units and are written as code points. */
import type { Anchor, TextAnchor } from "../../../schema/mark.ts";
import type { RecordOf } from "../../../schema/record.ts";
import type { WorkRows } from "../../../shared/drill/exercise-rows.ts";
import { quoteAt } from "../../../shared/text/quote.ts";
import type { Target, TextPositionSelector, TextQuoteSelector } from "./web-annotation.ts";

export const urnOf = (id: string): string => `urn:uuid:${id}`;

/** The places of a mark in the texts as they are now, and on pictures; where there are none, the words it had. */
export function targetsOf(rows: WorkRows, anchors: readonly Anchor[], codePoints: CodePoints): Target[] {
  const now = anchors.flatMap((anchor) => targetOf(rows, anchor, codePoints) ?? []);
  if (now.length > 0) return now;
  return anchors.flatMap((anchor) => (anchor.is === "text" && anchor.quote !== "" ? [lostTarget(anchor)] : []));
}

function targetOf(rows: WorkRows, anchor: Anchor, codePoints: CodePoints): Target | null {
  if (anchor.is === "region") {
    const region = rows.find("regions", anchor.region);
    const picture = region && rows.find("pictures", region.picture);
    return region && picture ? regionTarget(picture, region) : null;
  }
  const current = anchor.fate === "lost" ? null : rows.currentText(anchor.text);
  if (current === null) return null;
  const { text, layer } = current;
  const { from, to } = wholeCharacters(text.text, anchor);
  const position: TextPositionSelector = {
    type: "TextPositionSelector",
    start: codePoints(text.id, text.text, from),
    end: codePoints(text.id, text.text, to),
  };
  return {
    type: "SpecificResource",
    source: {
      id: urnOf(text.id),
      type: "Text",
      format: "text/plain",
      ...(layer.language !== "" && { language: layer.language }),
      ...(writtenFromTheRight(layer.language) && { textDirection: "rtl" }),
    },
    // Between two words there is nothing to quote.
    selector: from === to ? [position] : [quoteSelector(text.text, from, to), position],
  };
}

function quoteSelector(text: string, from: number, to: number): TextQuoteSelector {
  const { quote, prefix, suffix } = quoteAt(text, from, to);
  return { type: "TextQuoteSelector", exact: quote, prefix, suffix };
}

/** The text it stood in is not read any more: its words are all that is left. */
function lostTarget({ text, quote, prefix, suffix }: TextAnchor): Target {
  return {
    type: "SpecificResource",
    source: { id: urnOf(text), type: "Text", format: "text/plain" },
    selector: [{ type: "TextQuoteSelector", exact: quote, prefix, suffix }],
  };
}

function regionTarget(picture: RecordOf<"pictures">, { corners }: RecordOf<"regions">): Target {
  const source = { id: urnOf(picture.id), type: "Image" } as const;
  const [first = [0, 0], second = first] = corners;
  if (corners.length > 2) {
    const points = corners.map((corner) => corner.join(",")).join(" ");
    const value = `<svg xmlns="http://www.w3.org/2000/svg"><polygon points="${points}"/></svg>`;
    return { type: "SpecificResource", source, selector: { type: "SvgSelector", value } };
  }
  const [x, y] = [Math.min(first[0], second[0]), Math.min(first[1], second[1])];
  const [width, height] = [Math.abs(first[0] - second[0]), Math.abs(first[1] - second[1])];
  const value = `xywh=pixel:${x},${y},${width},${height}`;
  const selector = { type: "FragmentSelector", conformsTo: "http://www.w3.org/TR/media-frags/", value } as const;
  return { type: "SpecificResource", source, selector };
}

/** Scripts that run to the left, by language. */
const writtenFromTheRight = (language: string): boolean => /^(ar|fa|he|syr|ur|ota|arc|yi|ps)(-|$)/.test(language);

/** No end inside one character: code points cannot tell its halves apart. */
function wholeCharacters(text: string, { from, to }: { from: number; to: number }): { from: number; to: number } {
  const down = (at: number) => (splitsPair(text, at) ? at - 1 : at);
  const up = (at: number) => (splitsPair(text, at) ? at + 1 : at);
  return from === to ? { from: down(from), to: down(to) } : { from: down(from), to: up(to) };
}

function splitsPair(text: string, at: number): boolean {
  const [before, after] = [text.charCodeAt(at - 1), text.charCodeAt(at)];
  return before >= 0xd800 && before < 0xdc00 && after >= 0xdc00 && after < 0xe000;
}

/** Code points before an offset of a text. */
export type CodePoints = (id: string, text: string, offset: number) => number;

/** Each text is gone through once, however many marks stand in it. Offsets never split a pair. */
export function codePointCounter(): CodePoints {
  const pairs = new Map<string, number[]>();
  return (id, text, offset) => {
    let known = pairs.get(id);
    if (known === undefined) {
      known = [...text.matchAll(/[\u{10000}-\u{10ffff}]/gu)].map(({ index }) => index);
      pairs.set(id, known);
    }
    return offset - countBelow(known, offset);
  };
}

/** How many of a rising list are less than the limit. */
function countBelow(sorted: readonly number[], limit: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] as number) < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
