/** server/publish/papers/paper-signs.ts - the sign of each crux on a paper, and where it is explained.
 *  May import: schema types, server/publish, siblings. */
import type { Drill } from "../../../schema/drill.ts";
import type { Span } from "../../../schema/paper.ts";
import { type SignedCrux, signCruxes } from "../crux-signs.ts";

export interface PaperSigns {
  list: readonly SignedCrux[];
  /** The sign as it stands in a line; nothing for a crux that is not on the paper. */
  span: (crux: string) => Span[];
  /** The title of a reading of any crux on the paper. */
  readingTitle: (reading: string) => string;
  /** Its number among the readings of a crux that is not settled, from 1, where a paper names readings in one line. */
  readingNumber: (reading: string) => number | null;
}

/** "†a 2": a reading of a crux that is not settled, as the papers name it that have the readings in one line. The sign as words,
 *  with no link. Null for a crux that has no sign. */
export function numberedReading(signs: PaperSigns, crux: string, reading: string): string | null {
  const [span] = signs.span(crux);
  const number = signs.readingNumber(reading);
  return span?.is !== "sign" || number === null ? null : `${span.sign} ${number}`;
}

/** The anchor that the sign leads to. */
export const cruxAnchor = (sign: string): string => `crux-${sign}`;

/** Signs are counted over the whole paper, in the order the cruxes first bear on something. */
export function signPaper(drills: readonly Drill[]): PaperSigns {
  const signs = signCruxes(...drills);
  const numbers = new Map(
    signs.list.flatMap(({ at: [first] }) =>
      first === undefined ? [] : first.crux.others.map(({ reading }, index) => [reading, index + 1] as const),
    ),
  );
  return {
    list: signs.list,
    readingNumber: (reading) => numbers.get(reading) ?? null,
    span: (crux) => {
      const sign = signs.signOf(crux);
      return sign === null ? [] : [{ is: "sign", sign: `†${sign}`, crux, to: `#${cruxAnchor(sign)}` }];
    },
    readingTitle: (reading) => signs.readingTitle(reading) ?? "a reading no longer there",
  };
}
