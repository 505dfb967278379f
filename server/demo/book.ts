/** server/demo/book.ts - the invented book that comes with the program, as the edits that create it.
 *  May import: schema types, siblings. The same edits every time: ids are counted, days are written down. */
import type { Edit } from "../../schema/change.ts";
import type { DemoFile } from "./boar-drawing.ts";
import { boarOfStraw } from "./boar-of-straw.ts";
import { changeUponTheWall } from "./change-upon-the-wall.ts";
import { circleAboutTheWell } from "./circle-about-the-well.ts";
import { knotOfTwo } from "./knot-of-two.ts";
import { lastWords } from "./knot-words.ts";
import { secondPart } from "./second-part.ts";
import { setting } from "./setting.ts";
import { spearCarriedAndTurned } from "./spear-carried-and-turned.ts";
import { teaching } from "./teaching.ts";
import { twoSpears } from "./two-spears.ts";

export interface DemoBook {
  work: string;
  /** Ids of the exercises. All are complete but the third, which is only begun. */
  exercises: { circle: string; change: string; turned: string; spears: string; boar: string; knot: string };
  edits: Edit[];
  /** Files that rows name by their hash; they are kept before the edits are written. */
  files: DemoFile[];
}

export function demoBook(): DemoBook {
  const shared = setting();
  const circle = circleAboutTheWell(shared);
  const change = changeUponTheWall(shared, circle);
  const turned = spearCarriedAndTurned(shared, circle);
  const part = secondPart(shared);
  const spears = twoSpears(part, circle);
  const boar = boarOfStraw(part, circle);
  const knot = knotOfTwo(part, circle);
  lastWords(part);
  teaching(part, { circle: circle.id, spears, boar, knot });
  return {
    work: shared.book.work,
    exercises: {
      circle: circle.id,
      change: change.id,
      turned: turned.id,
      spears: spears.id,
      boar: boar.id,
      knot: knot.id,
    },
    edits: shared.book.edits(),
    files: [boar.file],
  };
}
