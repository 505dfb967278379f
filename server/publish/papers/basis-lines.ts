/** server/publish/papers/basis-lines.ts - what a value or a reading rests on besides its words: premises, pictures, parallels,
 *  trials, the editor.
 *  May import: schema types, server/publish, siblings. */
import type { Line } from "../../../schema/paper.ts";
import type { Basis } from "../../../schema/slot.ts";
import { citationsOfBasis } from "../../../shared/drill/citations.ts";
import { stopped } from "../stopped.ts";
import { trialWords } from "./day-words.ts";
import type { PaperContext } from "./paper-context.ts";
import { quotesLine } from "./quote-lines.ts";
import { words } from "./spans.ts";

/** Null for words: these are cited by their places. Null too for an editor who says nothing more. */
export function basisLine({ book, signs, cite }: PaperContext, basis: Basis): Line | null {
  switch (basis.is) {
    case "words":
      return null;
    case "picture": {
      const region = book.find("regions", basis.region);
      const picture = region && book.find("pictures", region.picture);
      const part = region === undefined || region.label === "" ? "" : `: ${region.label}`;
      const where = picture === undefined || picture.where === "" ? "" : ` (${picture.where})`;
      return [words(`the picture “${picture?.title ?? "no longer there"}”${where}${part}.`)];
    }
    case "premise":
      return [words(stopped(basis.text)), ...(basis.crux === undefined ? [] : signs.span(basis.crux))];
    case "parallel": {
      const { source, where, text } = basis;
      if (source === undefined) {
        return [words(stopped(`a parallel, ${[where, text].filter((part) => part !== "").join(": ")}`))];
      }
      return [words(text === "" ? "A parallel." : `A parallel: ${stopped(text)}`), cite(source, where)];
    }
    case "trial": {
      const trial = book.find("trials", basis.trial);
      return [words(`The trial of ${trial === undefined ? "a day no longer known" : trialWords(trial)}.`)];
    }
    case "editor":
      return basis.note === "" ? null : [words(`The editor: ${stopped(basis.note)}`)];
  }
}

/** All that a reading's evidence names, each on a line of its own; its words first. */
export function evidenceLines(context: PaperContext, evidence: Basis[]): Line[] {
  const cited = citationsOfBasis(context.book, evidence);
  const others = evidence.map((basis) => basisLine(context, basis)).filter((line) => line !== null);
  return [...(cited.length === 0 ? [] : [quotesLine(context.places, cited)]), ...others];
}
