/** client/read/mark-decorations.ts - the marks of one passage text as the editor's decorations.
 *  The document itself never holds them; they are made from rows and move with typing until rows come anew. */
import type { Node as DocNode } from "prosemirror-model";
import { Decoration, DecorationSet } from "prosemirror-view";
import { segments } from "../../shared/text/overlaps.ts";
import { offsetToPosition, type Projection, projectionOf } from "../../shared/text/projection.ts";
import type { PlacedMark } from "../state/passage.ts";
import { one } from "../state/rows.ts";
import { choose, type Thing } from "./focus.ts";
import { lineStyle, lookOf, type MarkLook, roomFor } from "./mark-look.ts";

/** Words of an act belong to what does it, words for or against a reading to its crux. */
function thingOf({ mark }: PlacedMark): Thing {
  if (mark.of === "actions") {
    const action = one("actions", mark.target);
    if (action?.ownerKind === "elements" || action?.ownerKind === "standings")
      return { kind: action.ownerKind, id: action.owner };
  }
  if (mark.of === "readings") return { kind: "cruxes", id: one("readings", mark.target)?.crux ?? "" };
  return { kind: mark.of, id: mark.target };
}
/** Drawn only while the thing they belong to is forward, so that the page stays calm. */
const isDetail = ({ mark }: PlacedMark) => mark.of === "actions" || mark.of === "readings";
const keyOf = (thing: Thing) => `${thing.kind}:${thing.id}`;

/** Decorations for marks whose anchors lie in `doc`; those of `forward` are drawn heavier. */
export function decorate(doc: DocNode, marks: readonly PlacedMark[], forward: Thing | null): DecorationSet {
  const projection = projectionOf(doc);
  const length = projection.text.length;
  const forwardKey = forward ? keyOf(forward) : "";
  const placeable = marks.filter(({ anchor }) => anchor.fate !== "lost" && anchor.to <= length);
  const shown = placeable.filter((placed) => !isDetail(placed) || keyOf(thingOf(placed)) === forwardKey);
  const lineOf = (placed: PlacedMark) => `${isDetail(placed) ? placed.mark.target : ""} ${keyOf(thingOf(placed))}`;
  const { segments: runs, lanes } = segments(
    shown.map((placed) => ({ id: lineOf(placed), from: placed.anchor.from, to: placed.anchor.to })),
  );
  const looks = new Map<string, MarkLook>();
  for (const placed of shown) looks.set(lineOf(placed), lookOf(placed));
  const lanesUsed = Math.max(
    0,
    ...[...lanes.entries()].map(([key, lane]) => (looks.get(key)?.line === "none" ? 0 : lane + 1)),
  );
  const room = roomFor(lanesUsed);

  const widths = new Map<string, number>();
  for (const placed of shown) {
    const { from, to } = placed.anchor;
    widths.set(lineOf(placed), (widths.get(lineOf(placed)) ?? 0) + to - from);
  }
  const byWidth = (a: string, b: string) => (widths.get(a) ?? 0) - (widths.get(b) ?? 0);

  const made = runs.flatMap((run) => {
    if (run.from === run.to) return [];
    const parts = run.ids.flatMap((id) => {
      const look = looks.get(id);
      return look ? [{ look, lane: lanes.get(id) ?? 0, forward: id === ` ${forwardKey}` }] : [];
    });
    const classes = [
      "m",
      ...parts.map((part) => part.look.className),
      parts.some((part) => part.forward) ? "forward" : "",
    ];
    return [
      Decoration.inline(
        offsetToPosition(projection, run.from, "after"),
        offsetToPosition(projection, run.to, "before"),
        {
          class: classes.filter(Boolean).join(" "),
          style: lineStyle(parts, room),
          // Shortest first: a click on a crux within a step means the crux.
          "data-things": [...new Set([...run.ids].sort(byWidth).map((line) => line.split(" ")[1]))].join(" "),
        },
      ),
    ];
  });
  return DecorationSet.create(doc, [
    ...made,
    ...heads(
      projection,
      shown.filter((placed) => !isDetail(placed)),
      looks,
    ),
    ...untreatedBlocks(projection, shown),
  ]);
}

/** One head at the first place of each thing: a step's number, a crux's dagger, a query in the margin. */
function heads(
  projection: Projection,
  shown: readonly PlacedMark[],
  looks: ReadonlyMap<string, MarkLook>,
): Decoration[] {
  const first = new Map<string, { thing: Thing; from: number }>();
  for (const placed of shown) {
    const thing = thingOf(placed);
    const seen = first.get(keyOf(thing));
    if (!seen || placed.anchor.from < seen.from) first.set(keyOf(thing), { thing, from: placed.anchor.from });
  }
  return [...first.entries()].flatMap(([key, { thing, from }]) => {
    const head = looks.get(` ${key}`)?.head;
    if (!head) return [];
    const draw = () => {
      const button = document.createElement("button");
      button.className = `head ${head.className}`;
      button.type = "button";
      button.textContent = head.text;
      button.title = head.label;
      button.setAttribute("aria-label", head.label);
      button.contentEditable = "false";
      button.addEventListener("mousedown", (event) => event.preventDefault());
      button.addEventListener("click", () => choose(thing));
      return button;
    };
    return [
      Decoration.widget(offsetToPosition(projection, from, "after"), draw, {
        key: `${key} ${head.text}`,
        side: -1,
        ignoreSelection: true,
      }),
    ];
  });
}

/** A block that is wholly untreated has the double rule at its left. */
function untreatedBlocks(projection: Projection, shown: readonly PlacedMark[]): Decoration[] {
  const ranges = shown.filter((placed) => lookOf(placed).className === "untreated").map(({ anchor }) => anchor);
  return projection.blocks
    .filter((block) => ranges.some((range) => range.from <= block.offset && range.to >= block.offset + block.length))
    .map((block) =>
      Decoration.node(block.position - 1, block.position - 1 + block.node.nodeSize, { class: "untreated-block" }),
    );
}
