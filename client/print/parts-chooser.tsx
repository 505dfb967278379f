/** client/print/parts-chooser.tsx - which exercises are on the paper, from which step to which, in which version of the day. */
import type { DrillElement } from "../../schema/drill.ts";
import type { PaperPart } from "../../schema/paper.ts";
import type { ListedGroup } from "../read/contents-order.ts";
import { addPart, movePart, parts, printed, setPart, takePart, takesMany } from "./asking.ts";

/** `exercises`: all of the work. */
export function PartsChooser({ exercises }: { exercises: readonly ListedGroup[] }) {
  const chosen = new Set(parts.value.map(({ exercise }) => exercise));
  const others = exercises.filter(({ key }) => !chosen.has(key));
  return (
    <fieldset class="parts">
      <legend class="label">{takesMany.value ? "Exercises, in this order" : "How much of it"}</legend>
      {parts.value.map((part, index) => (
        <PartLine
          key={part.exercise}
          part={part}
          title={exercises.find(({ key }) => key === part.exercise)}
          first={index === 0}
          last={index === parts.value.length - 1}
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
    </fieldset>
  );
}

export const nameOf = ({ label, title }: ListedGroup): string =>
  [label, title].filter((part) => part !== "").join(". ");

function PartLine({
  part,
  title,
  first,
  last,
}: {
  part: PaperPart;
  title: ListedGroup | undefined;
  first: boolean;
  last: boolean;
}) {
  const known = printed.value[part.exercise];
  const name = title === undefined ? "an exercise that is gone" : nameOf(title);
  const steps = known?.drill.elements ?? [];
  const alone = first && last;
  return (
    <div class="part">
      {takesMany.value && (
        <p class="row">
          <span class="said">{name}</span>
          {!alone && (
            <span class="part-order">
              <button type="button" class="quiet" disabled={first} onClick={() => movePart(part.exercise, -1)}>
                up<span class="spoken">: {name}</span>
              </button>
              <button type="button" class="quiet" disabled={last} onClick={() => movePart(part.exercise, 1)}>
                down<span class="spoken">: {name}</span>
              </button>
              <button type="button" class="quiet" onClick={() => takePart(part.exercise)}>
                leave out<span class="spoken">: {name}</span>
              </button>
            </span>
          )}
        </p>
      )}
      <div class="row cut">
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
    </div>
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
