/** server/publish/papers/holds-page.ts - the holds that the steps on a paper use: how each is done, a figure, and its faults.
 *  May import: schema types and constants, shared/drill, shared/hands, server/publish, siblings. */
import type { Block, Line, PlainBlock } from "../../../schema/paper.ts";
import { HOLD_SLOTS, type Hold } from "../../../schema/riding.ts";
import { citationsOf } from "../../../shared/drill/citations.ts";
import { applyAct, NO_CONTEXT } from "../../../shared/hands/apply.ts";
import { knownHold } from "../../../shared/hands/apply-hold.ts";
import { handsFigure } from "../../../shared/hands/figure.ts";
import type { KnownAct } from "../../../shared/hands/known-act.ts";
import { startState } from "../../../shared/hands/state.ts";
import { compareRanked } from "../../../shared/rank.ts";
import { holdFigure } from "../figures/hold-figure.ts";
import { capital } from "../stopped.ts";
import { faultItem, faultsOf } from "./faults.ts";
import { slotLines } from "./kit-and-ground.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { heading, joinedLines, paragraph, soft, words } from "./spans.ts";

/** Millimetres on the paper for a decimetre; on A5, which is read nearer. */
const SCALE = 1.05;
const SCALE_ON_A5 = 0.85;

interface UsedHold {
  hold: Hold;
  /** The first part that uses it, and the act that does. */
  part: BuiltPart;
  act: KnownAct;
}

/** By rank, each once, two in a row. Nothing where no hold is used. */
export function holdBlocks(context: PaperContext, level: number): Block[] {
  const used = usedHolds(context);
  if (used.length === 0) return [];
  const told = used.map((one) => oneHold(context, one, level + 1));
  const rows = Array.from({ length: Math.ceil(told.length / 2) }, (_, row): Block => {
    const [left = [], right = []] = told.slice(row * 2, row * 2 + 2);
    return { is: "beside", columns: "alike", left, right };
  });
  return [heading(level, [words("The holds")]), ...rows];
}

/** "one hand; at the balance; low; …". */
export function holdLine(context: PaperContext, { hold, part }: UsedHold): Line {
  const { id, hands, slots } = hold;
  const told = slotLines(context, part, { kind: "holds", id, table: HOLD_SLOTS, slots });
  return joinedLines([[words(hands === "one" ? "one hand" : "both hands")], ...told], "; ");
}

function oneHold(context: PaperContext, one: UsedHold, level: number): PlainBlock[] {
  const { hold, part, act } = one;
  const { id, name, note } = hold;
  const of = [{ kind: "holds" as const, id }];
  const places = context.places.line(citationsOf(context.book, "holds", id));
  const line = holdLine(context, one);
  const faults = faultsOf(context, "holds", id).map((fault) => faultItem(fault, ""));
  return [
    heading(level, [words(capital(name))], { of }),
    paragraph("body", [...line, ...(places.length === 0 ? [] : [words(" · "), ...places])], of),
    ...(note === "" ? [] : [paragraph("small", [soft(note)], of)]),
    ...(faults.length === 0 ? [] : [{ is: "list" as const, ordered: false, items: faults }]),
    figureOf(hold, part, act, context.ask.size === "A5" ? SCALE_ON_A5 : SCALE),
  ];
}

/** The rider from above in this hold, begun from nothing known: only what the hold itself says is drawn as known. */
function figureOf(hold: Hold, { followed, drill }: BuiltPart, act: KnownAct, scale: number): PlainBlock {
  const objects = followed[0]?.after.objects.map(({ object }) => object) ?? [];
  const state = applyAct(startState(objects, drill.way), act, {
    ...NO_CONTEXT,
    hold: (id) => (id === hold.id ? knownHold(hold) : null),
    isReins: (id) => objects.some((object) => object.id === id && object.is === "reins"),
  });
  const { svg, width, alternative } = holdFigure(handsFigure(state), { scale, onFoot: drill.way === "on foot" });
  return {
    is: "figure",
    anchor: null,
    svg,
    width,
    caption: [],
    alternative,
    of: [{ kind: "holds", id: hold.id }],
  };
}

/** By rank, each once. */
export function usedHolds({ parts, book }: PaperContext): UsedHold[] {
  const used = new Map<string, UsedHold>();
  for (const part of parts) {
    const shown = new Set(part.drill.elements.map(({ id }) => id));
    for (const { compiled } of part.followed) {
      if (!shown.has(compiled.drill.id)) continue;
      for (const { known, drill } of compiled.actions) {
        const id = drill.values.find(({ slot }) => slot === "hold")?.value;
        const hold = typeof id === "string" ? book.find("holds", id) : undefined;
        if (hold !== undefined && !used.has(hold.id)) used.set(hold.id, { hold, part, act: known });
      }
    }
  }
  return [...used.values()].sort((a, b) => compareRanked(a.hold, b.hold));
}
