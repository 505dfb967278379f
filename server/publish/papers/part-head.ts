/** server/publish/papers/part-head.ts - the line under the title of an exercise: where, how, with what, how much of it.
 *  May import: schema types, shared/article, siblings. */
import type { Line } from "../../../schema/paper.ts";
import { withoutArticle } from "../../../shared/article.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { joinedLines, reference, words } from "./spans.ts";

/** "A ff. 3–4v · mounted · with spear · steps 1–7 only"; without the place where that is told elsewhere. */
export function headLine({ places }: PaperContext, { drill, rows, cut }: BuiltPart, withPlace = true): Line {
  const { way, variant, objects } = drill;
  const where = withPlace ? places.line(rows.passages) : [];
  const carried = objects.filter(({ is }) => is !== "reins").map(({ name }) => withoutArticle(name));
  const pieces: Line[] = [
    where,
    [words(variant === null ? way : `${way}, in the version “${variant}”`)],
    carried.length === 0 ? [] : [words(`with ${listed(carried)}`)],
    cut === null ? [] : [words(`${cut} only`)],
  ];
  return joinedLines(pieces, " · ");
}

/** "spear, lance and shield". */
export function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? "";
  return names.length < 2 ? last : `${names.slice(0, -1).join(", ")} and ${last}`;
}

/** All its passages by all their references, for the book. */
export function sourceLine({ places }: PaperContext, { rows }: BuiltPart): Line {
  const where = places.allOf(rows.passages);
  return where === "" ? [] : [reference(where)];
}
