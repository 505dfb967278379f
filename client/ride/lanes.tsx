/** client/ride/lanes.tsx - what each part does, on one axis of time to the right: words on rules. The rule is the warrant
 *  (solid, dashed, dotted); three spaced dots in a gap where the text does not say, a thin flat rule where nothing
 *  happens. On a narrow window the lanes turn to a list at the moment that is shown. */
import { useSignal, useSignalEffect } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import { clockTime } from "../../shared/ride/clock-time.ts";
import type { Finding, Lane, LaneSpan, Ridden } from "../../shared/ride/ridden.ts";
import { compared } from "./compared.ts";
import { fittedWords } from "./fitted-words.ts";
import { laneWordsWidth } from "./lane-words-width.ts";
import { besideSpansNow, spansNow, stage, stageIndex } from "./moment.ts";
import { goTo, goToStage, seconds } from "./playing.ts";
import { pointAway, pointed } from "./pointed-span.ts";
import { beside, lasts } from "./riding.ts";
import { numberShare, stepMarks } from "./step-marks.ts";
import { useWidth } from "./use-width.ts";

/** Part of the ride that is shown, in seconds. */
interface Stretch {
  from: number;
  to: number;
}

export function Lanes({ ride }: { ride: Ridden }) {
  const near = useSignal(false);
  const line = useRef<HTMLDivElement>(null);
  const width = useWidth(line);
  // Read only when it matters: the lanes need not be drawn anew with every step.
  const now = near.value ? stage.value : null;
  const second = beside.value;
  const told = compared.value;
  const whole = Math.max(lasts.value, second?.timed.duration ?? 0);
  const stretch: Stretch = now !== null && now.to > now.from ? { from: now.from, to: now.to } : { from: 0, to: whole };
  const bad = ride.findings.filter(({ waived, verdict }) => waived === null && verdict === "broken");
  return (
    <section class="lanes" aria-label="What each part does, over time">
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
        <div class="axis" ref={line}>
          <Axis ride={ride} width={width} stretch={stretch} />
        </div>
      </div>
      <div class="lane-body">
        {ride.lanes.map((lane) => {
          const different = told?.lanes.filter((one) => one.lane === lane.key) ?? [];
          const shown = { stretch, width, lane };
          return (
            <div key={lane.key}>
              <LaneRow {...shown} bad={bad} different={different.flatMap((one) => one.first ?? [])} />
              {second && different.length > 0 && (
                <LaneRow
                  {...shown}
                  lane={laneLike(second, lane)}
                  bad={[]}
                  different={different.flatMap((one) => one.second ?? [])}
                  soft
                />
              )}
            </div>
          );
        })}
        <Playhead stretch={stretch} />
      </div>
      <LaneTold ride={ride} stretch={stretch} />
    </section>
  );
}

/** By itself, since the number of the step that is ridden is always shown. */
function Axis({ ride, width, stretch: { from, to } }: { ride: Ridden; width: number; stretch: Stretch }) {
  return (
    <>
      {stepMarks(ride, numberShare(width), stageIndex.value, from, to).map(
        ({ stage: index, at, number, told, isNow }) => (
          <button
            key={index}
            type="button"
            class={isNow ? "now" : told ? "" : "tick"}
            style={{ left: `${at * 100}%` }}
            aria-label={`Go to step ${number}`}
            aria-current={isNow ? "step" : undefined}
            title={`Step ${number}`}
            onClick={() => goToStage(index)}
          >
            {told && number}
          </button>
        ),
      )}
    </>
  );
}

function laneLike(second: Ridden, lane: Lane): Lane {
  return second.lanes.find(({ key }) => key === lane.key) ?? { ...lane, spans: [] };
}

/** CSS pixels of a stretch that its words leave free. */
const FREE = 9;

function LaneRow({
  lane,
  stretch,
  width,
  bad,
  different,
  soft = false,
}: {
  lane: Lane;
  stretch: Stretch;
  /** CSS pixels from the beginning of the stretch to its end. */
  width: number;
  bad: readonly Finding[];
  /** Where the other reading has something else. */
  different: readonly Stretch[];
  soft?: boolean;
}) {
  const length = stretch.to - stretch.from || 1;
  const shown = joined(lane.spans).filter(({ from, to }) => to > stretch.from && from < stretch.to);
  const share = (at: number) => (Math.min(Math.max(at, stretch.from), stretch.to) - stretch.from) / length;
  const place = (from: number, to: number, least = 0) => ({
    left: `${share(from) * 100}%`,
    width: `${Math.max(least, (share(to) - share(from)) * 100)}%`,
  });
  return (
    <div class={`lane ${soft ? "soft" : ""}`}>
      <span class="lane-name">{soft ? <span class="spoken">{lane.name}, as read beside</span> : lane.name}</span>
      <div class="lane-line">
        {different
          .filter(({ from, to }) => to >= stretch.from && from <= stretch.to)
          .map(({ from, to }) => (
            <i key={from} class="different" style={place(from, to, 0.4)} />
          ))}
        {shown.map((span) => (
          <button
            key={`${span.from} ${span.words}`}
            type="button"
            class={`span s-${span.shows.replace(" ", "-")} w-${span.standing.replace(" ", "-")}`}
            style={place(span.from, span.to)}
            aria-label={`${spanWords(span)}, from ${clockTime(span.from)}`}
            data-from={span.from}
            data-to={span.to}
            tabIndex={-1}
            onClick={() => goTo(span.from)}
            onPointerEnter={() => (pointed.value = { lane: lane.name, span })}
            onPointerLeave={() => pointAway(span)}
            onFocus={() => (pointed.value = { lane: lane.name, span })}
            onBlur={() => pointAway(span)}
          >
            <span>{shortWords(span, (share(span.to) - share(span.from)) * width - FREE)}</span>
          </button>
        ))}
        {bad
          .filter((finding) => standsIn(finding, lane) && finding.to >= stretch.from && finding.from <= stretch.to)
          .map((finding) => (
            <i key={finding.id} class={`bad ${finding.severity}`} style={place(finding.from, finding.to, 0.4)} />
          ))}
      </div>
    </div>
  );
}

function shortWords({ shows, words }: LaneSpan, width: number): string {
  if (shows === "nothing") return "";
  return shows === "not said" ? fittedWords("· · ·", width, laneWordsWidth) : fittedWords(words, width, laneWordsWidth);
}

/** All words of the stretch that is pointed at, in a place of their own below the lanes. */
function LaneTold({ ride, stretch: { from, to } }: { ride: Ridden; stretch: Stretch }) {
  // Tab comes to what is done now, lane by lane; what is pointed at stays shown while it is.
  const reached = useRef<ReadonlySet<HTMLElement>>(new Set());
  const spans = spansNow.value;
  useLayoutEffect(() => {
    const before = reached.current;
    const now = new Set<HTMLElement>();
    for (const line of document.querySelectorAll(".lane-line")) {
      const at = stretchAt(line, seconds.peek());
      if (at !== null) now.add(at);
    }
    // While it plays only what changes is touched: a page lays itself out anew for every element that is.
    for (const one of before) if (!now.has(one)) one.tabIndex = -1;
    for (const one of now) if (!before.has(one)) one.tabIndex = 0;
    reached.current = now;
  }, [spans, ride, from, to]);
  const shown = pointed.value;
  if (shown === null) {
    return (
      <p class="lane-told meta">
        Point at a stretch, or come to it with Tab, for all its words. <kbd>Space</kbd> plays and pauses, <kbd>←</kbd>{" "}
        <kbd>→</kbd> go a step back and on, <kbd>,</kbd> <kbd>.</kbd> a second.
      </p>
    );
  }
  const { lane, span } = shown;
  const basis = LINE_WORDS[span.standing];
  return (
    <p class="lane-told">
      <span class="meta">
        {lane}, {clockTime(span.from)} to {clockTime(span.to)}:
      </span>{" "}
      {spanWords(span)}
      {basis && span.shows !== "not said" && !span.words.includes(basis) && <span class="meta"> ({basis})</span>}
    </p>
  );
}

/** The stretch drawn on a lane's line at a moment, in seconds; null where there is none. Stretches stand in their order. */
function stretchAt(line: Element, at: number): HTMLElement | null {
  const drawn = line.getElementsByTagName("button");
  let [low, high] = [0, drawn.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (Number(drawn[middle]?.dataset.from) <= at) low = middle + 1;
    else high = middle;
  }
  const last = drawn[low - 1];
  return last !== undefined && at < Number(last.dataset.to) ? last : null;
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
  const second = beside.value ? besideSpansNow.value : null;
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
