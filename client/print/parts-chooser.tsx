/** client/print/parts-chooser.tsx - which exercises are on the paper, in which order, from which step to which, in which
 *  version of the day. The order is changed by dragging a title, or with "up" and "down". */
import { useSignal } from "@preact/signals";
import type { TargetedEvent } from "preact";
import { useRef } from "preact/hooks";
import type { DrillElement } from "../../schema/drill.ts";
import type { PaperPart } from "../../schema/paper.ts";
import type { ListedGroup } from "../read/contents-order.ts";
import { addPart, movePart, parts, printed, setPart, takePart, takesMany } from "./asking.ts";

/** `exercises`: all of the work. */
export function PartsChooser({ exercises }: { exercises: readonly ListedGroup[] }) {
  const list = useRef<HTMLFieldSetElement>(null);
  const said = useSignal("");
  const dragged = useSignal<string | null>(null);
  const chosen = new Set(parts.value.map(({ exercise }) => exercise));
  const others = exercises.filter(({ key }) => !chosen.has(key));
  const titleOf = (id: string) => {
    const group = exercises.find(({ key }) => key === id);
    return group === undefined ? "an exercise that is gone" : nameOf(group);
  };
  const move = (id: string, to: number, by: "up" | "down" | null) => {
    movePart(id, to);
    const last = parts.value.length - 1;
    const now = Math.min(Math.max(0, to), last);
    said.value = `${titleOf(id)} now stands ${now + 1} of ${last + 1}.`;
    if (by === null) return;
    // Whoever moves it by keyboard goes on with the same button, or with the other one where that leads nowhere now.
    requestAnimationFrame(() => {
      const wanted = now === 0 ? "down" : now === last ? "up" : by;
      list.current?.querySelector<HTMLElement>(`[data-part="${id}"] [data-move="${wanted}"]`)?.focus();
    });
  };
  return (
    <fieldset class="parts" ref={list}>
      <legend class="label">{takesMany.value ? "Exercises, in this order" : "How much of it"}</legend>
      {parts.value.map((part, index) => (
        <PartLine
          key={part.exercise}
          part={part}
          name={titleOf(part.exercise)}
          index={index}
          count={parts.value.length}
          dragged={dragged.value}
          drag={(id) => (dragged.value = id)}
          move={move}
        />
      ))}
      {takesMany.value && others.length > 0 && (
        <label class="field">
          <span>Add</span>
          <select
            value=""
            onChange={(event) => {
              addPart(event.currentTarget.value);
              event.currentTarget.value = "";
            }}
          >
            <option value="">an exercise …</option>
            {others.map((group) => (
              <option key={group.key} value={group.key}>
                {nameOf(group)}
              </option>
            ))}
          </select>
        </label>
      )}
      <p class="spoken" role="status">
        {said.value}
      </p>
    </fieldset>
  );
}

export const nameOf = ({ label, title }: ListedGroup): string =>
  [label, title].filter((part) => part !== "").join(". ");

function PartLine({
  part,
  name,
  index,
  count,
  dragged,
  drag,
  move,
}: {
  part: PaperPart;
  name: string;
  index: number;
  count: number;
  /** The exercise that is being dragged, if one is. */
  dragged: string | null;
  drag: (exercise: string | null) => void;
  move: (exercise: string, to: number, by: "up" | "down" | null) => void;
}) {
  const { exercise } = part;
  const isOver = useSignal(false);
  const [first, last] = [index === 0, index === count - 1];
  const alone = first && last;
  const takes = dragged !== null && dragged !== exercise;
  const drop = {
    onDragOver: (event: TargetedEvent<HTMLElement, DragEvent>) => {
      if (!takes) return;
      event.preventDefault();
      isOver.value = true;
    },
    onDragLeave: () => (isOver.value = false),
    onDrop: (event: TargetedEvent<HTMLElement, DragEvent>) => {
      event.preventDefault();
      isOver.value = false;
      if (dragged !== null) move(dragged, index, null);
      drag(null);
    },
  };
  const draggable = {
    draggable: true,
    title: "Drag it to another place",
    onDragStart: (event: TargetedEvent<HTMLElement, DragEvent>) => {
      event.dataTransfer?.setData("text/plain", name);
      drag(exercise);
    },
    onDragEnd: () => drag(null),
  };
  return (
    <div class={`part-of-paper ${isOver.value && takes ? "takes" : ""}`} data-part={exercise} {...drop}>
      {!takesMany.value && <Cut part={part} />}
      {takesMany.value && (
        <>
          <p class={`said ${alone ? "" : "dragged"}`} {...(alone ? {} : draggable)}>
            {name}
          </p>
          {!alone && (
            <span class="part-order">
              <button
                type="button"
                class="quiet"
                data-move="up"
                disabled={first}
                onClick={() => move(exercise, index - 1, "up")}
              >
                up<span class="spoken">: {name}</span>
              </button>
              <button
                type="button"
                class="quiet"
                data-move="down"
                disabled={last}
                onClick={() => move(exercise, index + 1, "down")}
              >
                down<span class="spoken">: {name}</span>
              </button>
              <button type="button" class="quiet" onClick={() => takePart(exercise)}>
                leave out<span class="spoken">: {name}</span>
              </button>
            </span>
          )}
          <Folded part={part} name={name} />
        </>
      )}
    </div>
  );
}

/** Of several exercises each tells in a line how much of it is on the paper, and opens to be cut. */
function Folded({ part, name }: { part: PaperPart; name: string }) {
  const known = printed.value[part.exercise];
  const numberAt = (id: string | null) => known?.drill.elements.find((element) => element.id === id)?.number ?? null;
  const [from, to] = [numberAt(part.from), numberAt(part.to)];
  const version = known?.variants.find(({ id }) => id === part.variant)?.name;
  const extent =
    from === null && to === null
      ? "the whole"
      : from !== null && to !== null
        ? from === to
          ? `step ${from}`
          : `steps ${from} to ${to}`
        : from === null
          ? `up to step ${to}`
          : `from step ${from} on`;
  return (
    <details class="folded-part">
      <summary>
        {extent}
        {version && `, ${version}`}
        <span class="spoken">: {name}</span>
      </summary>
      <Cut part={part} />
    </details>
  );
}

function Cut({ part }: { part: PaperPart }) {
  const known = printed.value[part.exercise];
  const steps = known?.drill.elements ?? [];
  return (
    <>
      <div class="cut">
        <End
          words="from"
          open="its beginning"
          steps={steps}
          value={part.from}
          change={(from) => setPart({ ...part, from })}
        />
        <End words="to" open="its end" steps={steps} value={part.to} change={(to) => setPart({ ...part, to })} />
      </div>
      {known !== undefined && known.variants.length > 0 && (
        <label class="field">
          <span>Version of the day</span>
          <select
            value={part.variant ?? ""}
            onChange={(event) => setPart({ ...part, variant: event.currentTarget.value || null })}
          >
            <option value="">as the text has it</option>
            {known.variants.map(({ id, name: variant }) => (
              <option key={id} value={id}>
                {variant}
              </option>
            ))}
          </select>
        </label>
      )}
    </>
  );
}

function End({
  words,
  open,
  steps,
  value,
  change,
}: {
  words: string;
  open: string;
  steps: readonly DrillElement[];
  value: string | null;
  change: (element: string | null) => void;
}) {
  return (
    <label>
      <span class="label">{words}</span>{" "}
      <select value={value ?? ""} onChange={(event) => change(event.currentTarget.value || null)}>
        <option value="">{open}</option>
        {steps
          .filter(({ number }) => number !== null)
          .map(({ id, number, title }) => (
            <option key={id} value={id}>
              {number}. {title}
            </option>
          ))}
      </select>
    </label>
  );
}
