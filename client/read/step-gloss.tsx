/** client/read/step-gloss.tsx - a step (or an again) as it stands: its parts, each value on the line of its warrant,
 *  and the small plan of hands and shaft after it. Its form opens in the same place. */
import { DRILL_PARTS, type DrillAction, type DrillElement } from "../../schema/drill.ts";
import type { RecordOf } from "../../schema/record.ts";
import type { HandsFigure as HandsFigureData } from "../../shared/hands/figure.ts";
import { drillElements, statesAfter } from "../state/passage.ts";
import { all } from "../state/rows.ts";
import { GlossHead } from "./gloss-head.tsx";
import { HandsFigure } from "./hands-figure.tsx";
import { partName } from "./part-name.ts";
import { StepForm } from "./step-form.tsx";
import { weakestOf } from "./weakest.ts";

export function StepGloss({ element, open }: { element: RecordOf<"elements">; open: boolean }) {
  const printed = drillElements.value.get(element.id);
  const thing = { kind: "elements", id: element.id } as const;
  const state = statesAfter.value.get(element.id);
  if (open) return <StepForm element={element} />;
  return (
    <>
      <GlossHead
        thing={thing}
        sign={printed?.number ? String(printed.number) : "–"}
        title={printed?.title || titleOf(element)}
        by={element.existence.warrant}
      />
      {!printed && <p class="meta">Not part of the drill under the readings adopted now.</p>}
      {printed && (
        <>
          <PartsList printed={printed} />
          {state && (
            <div class="hands-after">
              <HandsFigure figure={state} />
              <p class="meta">{afterwards(state)}</p>
            </div>
          )}
        </>
      )}
      {element.note && <p class="meta">{element.note}</p>}
    </>
  );
}

/** "Afterwards: reins in the left hand ...": which step it is after stands at the head of the gloss. */
function afterwards({ sentence }: HandsFigureData): string {
  return `Afterwards${sentence.slice(sentence.indexOf(": "))}`;
}

function titleOf(element: RecordOf<"elements">): string {
  return element.is === "again" ? "Again" : "Step";
}

function PartsList({ printed }: { printed: DrillElement }) {
  const parts = DRILL_PARTS.flatMap((part) => {
    const actions = printed.actions.filter((action) => action.part === part && !action.inherited);
    return actions.length ? [{ part, actions }] : [];
  });
  return (
    <div>
      {printed.text && <p class="said again-words">{printed.text}</p>}
      {printed.onlyUnder.length > 0 && <p class="meta">Only under {underWords(printed.onlyUnder)}.</p>}
      {parts.length === 0 && !printed.text && (
        <p class="meta">Nothing is said yet of what anyone does. Press the title to fill it in.</p>
      )}
      <dl>
        {parts.map(({ part, actions }) => (
          <>
            <dt key={part}>{partName(part)}</dt>
            <dd>
              {actions.map((action) => (
                <ActionLine key={action.id} action={action} />
              ))}
            </dd>
          </>
        ))}
      </dl>
    </div>
  );
}

/** One act in words: the whole stands on the line of its weakest warrant; what a crux leaves open is doubly ruled. */
function ActionLine({ action }: { action: DrillAction }) {
  return (
    <div>
      <span class={`value w-${weakestOf(action).replaceAll(" ", "-")}`}>{action.text}</span>
      {action.onlyUnder.length > 0 && <span class="meta"> only under {underWords(action.onlyUnder)}</span>}
    </div>
  );
}

export function underWords(conditions: DrillElement["onlyUnder"]): string {
  const readings = all("readings");
  return conditions
    .map((condition) =>
      condition.readings.map((id) => `“${readings.find((reading) => reading.id === id)?.title ?? "?"}”`).join(" or "),
    )
    .join(" and ");
}
