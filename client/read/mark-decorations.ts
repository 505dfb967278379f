/** client/read/mark-decorations.ts - the marks of one passage text as the editor's decorations.
 *  The document itself never holds them; they are made from rows and move with typing until rows come anew. */
import type { Node as DocNode } from "prosemirror-model";
import { Decoration, DecorationSet } from "prosemirror-view";
import { segments } from "../../shared/text/overlaps.ts";
import { offsetToPosition, type Projection, projectionOf } from "../../shared/text/projection.ts";
import type { PlacedMark } from "../state/passage.ts";
import { choose, type Thing } from "./focus.ts";
import { lineStyle, lookOf, type MarkLook, roomFor } from "./mark-look.ts";

const thingOf = ({ mark }: PlacedMark): Thing => ({ kind: mark.of, id: mark.target });
const keyOf = (thing: Thing) => `${thing.kind}:${thing.id}`;

/** Decorations for marks whose anchors lie in `doc`; those of `forward` are drawn heavier. */
export function decorate(doc: DocNode, marks: readonly PlacedMark[], forward: Thing | null): DecorationSet {
  const projection = projectionOf(doc);
  const length = projection.text.length;
  const shown = marks.filter(({ anchor }) => anchor.fate !== "lost" && anchor.to <= length);
  const { segments: runs, lanes } = segments(
    shown.map((placed) => ({ id: keyOf(thingOf(placed)), from: placed.anchor.from, to: placed.anchor.to })),
  );
  const looks = new Map<string, MarkLook>();
  for (const placed of shown) looks.set(keyOf(thingOf(placed)), lookOf(placed));
  const lanesUsed = Math.max(
    0,
    ...[...lanes.entries()].map(([key, lane]) => (looks.get(key)?.line === "none" ? 0 : lane + 1)),
  );
  const room = roomFor(lanesUsed);
  const forwardKey = forward ? keyOf(forward) : "";

  const made = runs.flatMap((run) => {
    if (run.from === run.to) return [];
    const parts = run.ids.flatMap((id) => {
      const look = looks.get(id);
      return look ? [{ look, lane: lanes.get(id) ?? 0, forward: id === forwardKey }] : [];
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
          "data-things": run.ids.join(" "),
        },
      ),
    ];
  });
  return DecorationSet.create(doc, [
    ...made,
    ...heads(projection, shown, looks),
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
    const head = looks.get(key)?.head;
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
