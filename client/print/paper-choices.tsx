/** client/print/paper-choices.tsx - what a paper is asked for with: its kind, size, way, readings, notes and occasion. */
import { useId } from "preact/hooks";
import {
  brokenStyles,
  choices,
  choose,
  cruxesOf,
  type IssuedKind,
  KIND_WORDS,
  kind,
  parts,
  readings,
  styles,
} from "./asking.ts";

const SIZES = ["A4", "Letter", "A5"] as const;

export function KindChooser() {
  const says = useId();
  return (
    <div class="kind">
      <label class="field">
        <span>Paper</span>
        <select
          value={kind.value}
          aria-describedby={says}
          onChange={(event) => {
            kind.value = event.currentTarget.value as IssuedKind;
          }}
        >
          {KIND_WORDS.map((one) => (
            <option key={one.kind} value={one.kind}>
              {one.kind}
            </option>
          ))}
        </select>
      </label>
      <p class="meta" id={says}>
        {KIND_WORDS.find((one) => one.kind === kind.value)?.says}
      </p>
    </div>
  );
}

export function PaperChoices() {
  const { size, way, notesAt, style, occasion } = choices.value;
  const isBook = kind.value === "appendix";
  return (
    <>
      <label class="field">
        <span>For the occasion</span>
        <input
          value={occasion}
          placeholder="a line under the title"
          maxLength={300}
          onInput={(event) => choose({ occasion: event.currentTarget.value })}
        />
      </label>
      <OneOf
        legend="Ridden"
        name="paper-way"
        options={["mounted", "on foot"] as const}
        value={way}
        change={(to) => choose({ way: to })}
      />
      <OneOf legend="Size" name="paper-size" options={SIZES} value={size} change={(to) => choose({ size: to })} />
      {isBook && (
        <>
          <OneOf
            legend="Notes at the"
            name="paper-notes"
            options={["foot", "end"] as const}
            value={notesAt}
            change={(to) => choose({ notesAt: to })}
          />
          <label class="field">
            <span>Citation style</span>
            <select value={style || styles.value[0]} onChange={(event) => choose({ style: event.currentTarget.value })}>
              {styles.value.map((name) => (
                <option key={name} value={name}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          {brokenStyles.value.map((sentence) => (
            <p key={sentence} class="notice">
              {sentence}
            </p>
          ))}
        </>
      )}
      <Readings />
    </>
  );
}

function OneOf<T extends string>({
  legend,
  name,
  options,
  value,
  change,
}: {
  legend: string;
  name: string;
  options: readonly T[];
  value: T;
  change: (to: T) => void;
}) {
  return (
    <fieldset class="ways">
      <legend class="label">{legend}</legend>
      {options.map((option) => (
        <label key={option}>
          <input type="radio" name={name} checked={value === option} onChange={() => change(option)} /> {option}
        </label>
      ))}
    </fieldset>
  );
}

/** One choice a crux; what was decided is offered first and is chosen to begin with. */
function Readings() {
  const cruxes = cruxesOf(parts.value);
  if (cruxes.length === 0) return null;
  const chosen = cruxes.filter(({ crux }) => readings.value[crux] !== undefined).length;
  return (
    <details class="readings" open={cruxes.length <= 3 || chosen > 0}>
      <summary>
        <span class="label">Readings, for this paper only</span> ·{" "}
        <span class="meta">{chosen === 0 ? "as decided" : `${chosen} chosen here`}</span>
      </summary>
      {cruxes.map((crux) => (
        <label key={crux.crux} class="field">
          <span>{crux.title}</span>
          <select
            value={readings.value[crux.crux] ?? ""}
            onChange={(event) => {
              const { [crux.crux]: _before, ...rest } = readings.value;
              const { value } = event.currentTarget;
              readings.value = value === "" ? rest : { ...rest, [crux.crux]: value };
            }}
          >
            <option value="">
              {crux.taken ? `${crux.taken.title} (${crux.taken.because})` : "not settled: show all"}
            </option>
            {crux.others.map((other) => (
              <option key={other.reading} value={other.reading}>
                {other.title}
                {other.status === "ruled out" && " (ruled out)"}
              </option>
            ))}
          </select>
        </label>
      ))}
    </details>
  );
}
