/** server/publish/papers/readings-in-one-line.ts - each sign of a sheet with one line on it: how it is read here, and how else.
 *  May import: schema types, siblings. The arguments are the appendix's. */
import type { Drill, DrillCrux } from "../../../schema/drill.ts";
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import type { PaperContext } from "./paper-context.ts";
import { cruxAnchor } from "./paper-signs.ts";
import { joinedLines, lined, soft, strong, words } from "./spans.ts";

const BECAUSE = {
  adopted: "adopted",
  "left free": "left to the rider",
  chosen: "chosen for this sheet",
  exception: "read so here only",
} as const;

/** Nothing when no reading is open or chosen. `drill`: only those that bear on this one; a sign that stood at an earlier one is
 *  explained again, and links lead to the first. */
export function readingsInOneLine({ signs, parts }: PaperContext, drill: Drill | null = null): PlainBlock[] {
  const dead = new Set(
    parts.filter((part) => drill === null || part.drill === drill).flatMap((part) => [...part.rides().dead()]),
  );
  const items = signs.list.flatMap(({ sign, at }) => {
    const [first] = at;
    const here = at.find((place) => drill === null || place.drill === drill);
    if (here === undefined || first === undefined) return [];
    const { crux } = here;
    const of = [
      { kind: "cruxes" as const, id: crux.crux },
      ...[crux.taken, ...crux.others].flatMap((reading) =>
        reading === null ? [] : [{ kind: "readings" as const, id: reading.reading }],
      ),
    ];
    const anchor = here.drill === first.drill ? cruxAnchor(sign) : null;
    return [{ anchor, head: [strong(`†${sign}`)], lines: [lineOn(crux, dead)], of }];
  });
  return items.length === 0 ? [] : [{ is: "entries", as: "apparatus", items }];
}

function lineOn({ taken, others, title }: DrillCrux, dead: ReadonlySet<string>): Line {
  const standing = others.flatMap(({ status, reading, title: other }, index): Line[] => {
    if (status === "ruled out") return [];
    if (taken !== null) return [[words(`“${other}”`)]];
    const barred = dead.has(reading) ? [words(" (cannot be done under these rules)")] : [];
    return [[strong(`${index + 1} `), words(`“${other}”`), ...barred]];
  });
  if (taken === null) {
    return [soft(`${title}: `), lined("not settled", "not settled"), words(": "), ...joinedLines(standing, " or ")];
  }
  const condition = taken.condition === "" ? "" : ` ${taken.condition}`;
  return [
    soft(`${title}: `),
    words(`“${taken.title}” (${BECAUSE[taken.because]}${condition})`),
    ...(standing.length === 0 ? [] : [words("; also "), ...joinedLines(standing, " or ")]),
  ];
}
