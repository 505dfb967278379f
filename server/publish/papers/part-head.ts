/** server/publish/papers/part-head.ts - the line under the title of an exercise: where, how, with what, how much of it.
 *  May import: schema types, shared/article, siblings. */
import type { Line } from "../../../schema/paper.ts";
import { withoutArticle } from "../../../shared/article.ts";
import { citationsOfElement } from "../cited.ts";
import { listed } from "./numbers-words.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { joinedLines, reference, words } from "./spans.ts";

export { listed } from "./numbers-words.ts";

/** "A ff. 3–4v · mounted · with spear": of a part that is cut, where its own steps stand; without the place where that is told
 *  elsewhere. */
export function headLine({ places }: PaperContext, { drill, rows, cut }: BuiltPart, withPlace = true): Line {
  const { way, variant, objects } = drill;
  const cited = cut === null ? rows.passages : drill.elements.flatMap(citationsOfElement);
  const where = withPlace ? places.line(cited) : [];
  const carried = objects.filter(({ is }) => is !== "reins").map(({ name }) => withoutArticle(name));
  const pieces: Line[] = [
    where,
    [words(variant === null ? way : `${way}, in the version “${variant}”`)],
    carried.length === 0 ? [] : [words(`with ${listed(carried)}`)],
  ];
  return joinedLines(pieces, " · ");
}

/** All its passages by all their references, for the book. */
export function sourceLine({ places }: PaperContext, { rows }: BuiltPart): Line {
  const where = places.allOf(rows.passages);
  return where === "" ? [] : [reference(where)];
}
