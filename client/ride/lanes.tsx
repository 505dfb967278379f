/** client/ride/lanes.tsx - what each part does, on one axis of time to the right: words on rules. The rule is the warrant
 *  (solid, dashed, dotted); three spaced dots in a gap where the text does not say, a thin flat rule where nothing
 *  happens. On a narrow window the lanes turn to a list at the moment that is shown. */
import { useSignal, useSignalEffect } from "@preact/signals";
import { useRef } from "preact/hooks";
import { clockTime } from "../../shared/ride/clock-time.ts";
import type { Finding, Lane, LaneSpan, Ridden } from "../../shared/ride/ridden.ts";
import { stageMarks } from "./controls.tsx";
import { spansAt, spansNow, stage } from "./moment.ts";
import { goTo, goToStage, seconds } from "./playing.ts";
import { TwoTogether } from "./ride-options.tsx";
import { beside, lasts } from "./riding.ts";

/** Part of the ride that is shown, in seconds. */
interface Stretch {
  from: number;
  to: number;
}

export function Lanes({ ride }: { ride: Ridden }) {
  const near = useSignal(false);
  // Read only when it matters: the lanes need not be drawn anew with every step.
  const now = near.value ? stage.value : null;
  const second = beside.value;
  const whole = Math.max(lasts.value, second?.timed.duration ?? 0);
  const stretch: Stretch = now !== null && now.to > now.from ? { from: now.from, to: now.to } : { from: 0, to: whole };
  const bad = ride.findings.filter(({ waived, verdict }) => waived === null && verdict === "broken");
  return (
    <section class="lanes" aria-label="What each part does, over time">
      {second && <TwoTogether />}
      <div class="lane-head">
        <div class="row">
          <label>
            <input
              type="checkbox"
              checked={near.value}
              onChange={(event) => (near.value = event.currentTarget.checked)}
            />{" "}
            this step alone
          </label>
        </div>
        <div class="axis">
          {stageMarks(ride, 0.015, stretch.from, stretch.to).map(({ key, at, label }) => (
            <button
              key={key}
              type="button"
              style={{ left: `${at * 100}%` }}
              aria-label={`Go to step ${label}`}
              onClick={() => goToStage(key)}
            >
              {label}
            </button>
          ))}
        </div>
      </div>
      <div class="lane-body">
        {ride.lanes.map((lane) => (
          <div key={lane.key}>
            <LaneRow lane={lane} stretch={stretch} bad={bad} />
            {second && differs(lane, laneLike(second, lane)) && (
              <LaneRow lane={laneLike(second, lane)} stretch={stretch} bad={[]} soft />
            )}
          </div>
        ))}
        <Playhead stretch={stretch} />
      </div>
    </section>
  );
}

/** Whether two lanes tell different things, whenever they tell them: what only comes later is seen on the horse's lane. */
function differs(one: Lane, other: Lane): boolean {
  if (one.key === "horse") return true;
  const told = ({ spans }: Lane) => joined(spans).map(({ words, standing, shows }) => `${words} ${standing} ${shows}`);
  return told(one).join("\n") !== told(other).join("\n");
}

function laneLike(second: Ridden, lane: Lane): Lane {
  return second.lanes.find(({ key }) => key === lane.key) ?? { ...lane, spans: [] };
}

function LaneRow({
  lane,
  stretch,
  bad,
  soft = false,
}: {
  lane: Lane;
  stretch: Stretch;
  bad: readonly Finding[];
  soft?: boolean;
}) {
  const length = stretch.to - stretch.from || 1;
  const shown = joined(lane.spans).filter(({ from, to }) => to > stretch.from && from < stretch.to);
  const percent = (at: number) => ((Math.min(Math.max(at, stretch.from), stretch.to) - stretch.from) / length) * 100;
  return (
    <div class={`lane ${soft ? "soft" : ""}`}>
      <span class="lane-name">{soft ? <span class="spoken">{lane.name}, as read beside</span> : lane.name}</span>
      <div class="lane-line">
        {shown.map((span) => (
          <button
            key={`${span.from} ${span.words}`}
            type="button"
            class={`span s-${span.shows.replace(" ", "-")} w-${span.standing.replace(" ", "-")}`}
            style={{ left: `${percent(span.from)}%`, width: `${percent(span.to) - percent(span.from)}%` }}
            title={`${spanWords(span)}, ${clockTime(span.from)} to ${clockTime(span.to)}`}
            aria-label={`${spanWords(span)}, from ${clockTime(span.from)}`}
            tabIndex={-1}
            onClick={() => goTo(span.from)}
          >
            <span>{span.shows === "not said" ? "· · ·" : span.shows === "nothing" ? "" : span.words}</span>
          </button>
        ))}
        {bad
          .filter((finding) => standsIn(finding, lane) && finding.to >= stretch.from && finding.from <= stretch.to)
          .map((finding) => (
            <i
              key={finding.id}
              class={`bad ${finding.severity}`}
              style={{
                left: `${percent(finding.from)}%`,
                width: `${Math.max(0.4, percent(finding.to) - percent(finding.from))}%`,
              }}
            />
          ))}
      </div>
    </div>
  );
}

/** Spans that say the same one after another are one to the eye. */
function joined(spans: readonly LaneSpan[]): LaneSpan[] {
  const list: LaneSpan[] = [];
  for (const span of spans) {
    if (span.to <= span.from) continue;
    const last = list.at(-1);
    const same =
      last !== undefined &&
      last.words === span.words &&
      last.standing === span.standing &&
      last.shows === span.shows &&
      Math.abs(last.to - span.from) < 1e-6;
    if (same) list[list.length - 1] = { ...last, to: span.to };
    else list.push(span);
  }
  return list;
}

/** The lane a finding is drawn over: that of its action, else the horse for what is about a piece or a place. */
function standsIn(finding: Finding, lane: Lane): boolean {
  if (finding.reach === "piece" || finding.reach === "place") return lane.key === "horse";
  if (finding.action === null) return false;
  return lane.spans.some(
    (span) => span.actions.includes(finding.action ?? "") && span.to >= finding.from && span.from <= finding.to,
  );
}

export function spanWords(span: LaneSpan): string {
  if (span.shows === "not said") return "the text does not say";
  return span.shows === "nothing" ? span.words || "nothing" : span.words;
}

function Playhead({ stretch }: { stretch: Stretch }) {
  const line = useRef<HTMLDivElement>(null);
  const shown = useRef(stretch);
  shown.current = stretch;
  const place = () => {
    const { from, to } = shown.current;
    const share = (seconds.value - from) / (to - from || 1);
    if (line.current) line.current.style.transform = `translateX(${(share * 100).toFixed(3)}%)`;
  };
  const move = useRef(place);
  move.current = place;
  useSignalEffect(() => move.current());
  return (
    <div class="playhead-frame" aria-hidden="true">
      <div
        class="playhead"
        ref={(element) => {
          line.current = element;
          place();
        }}
      />
    </div>
  );
}

const LINE_WORDS: Partial<Record<LaneSpan["standing"], string>> = {
  implied: "implied",
  supplied: "supplied",
  "not settled": "not settled",
};

/** The lanes as a list at the moment that is shown, for a narrow window and for those who hear the page. */
export function LanesNow({ ride }: { ride: Ridden }) {
  const spans = spansNow.value;
  const second = beside.value ? spansAt(beside.value) : null;
  return (
    <dl class="lanes-now" aria-label="What each part does now">
      {ride.lanes.map((lane, index) => {
        const span = spans[index] ?? null;
        const other = second?.find((candidate, at) => beside.value?.lanes[at]?.key === lane.key && candidate) ?? null;
        return (
          <div key={lane.key}>
            <dt>{lane.name}</dt>
            <dd>
              <SpanNow span={span} />
              {other && other.words !== span?.words && (
                <span class="soft">
                  {" "}
                  beside: <SpanNow span={other} />
                </span>
              )}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}

function SpanNow({ span }: { span: LaneSpan | null }) {
  if (span === null || span.shows === "not said") {
    return (
      <>
        <em class="not-said">· · ·</em> <span class="meta">the text does not say</span>
      </>
    );
  }
  if (span.shows === "nothing") return <span class="meta">{span.words || "nothing"}</span>;
  return (
    <>
      <span class={`w-${span.standing.replace(" ", "-")}`}>{span.words}</span>
      {LINE_WORDS[span.standing] && <span class="meta"> {LINE_WORDS[span.standing]}</span>}
    </>
  );
}
