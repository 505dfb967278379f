/** client/read/value-editors.tsx - one editor for each kind of value, from a table that is exhaustive by type.
 *  A choice is stored as it is made; words are stored on Enter or on leaving them. */
import type { VNode } from "preact";
import { VERBS } from "../../schema/act.ts";
import { domainOf, VALUES, type ValueKind, type ValueOf, Viewpoint } from "../../schema/values.ts";
import { clockWords, valueWords } from "../../shared/drill/words.ts";
import { one, ranked } from "../state/rows.ts";
import { Choice, type EditorProps } from "./choice.tsx";
import { DraftField } from "./draft-field.tsx";
import {
  MEASURE_HINTS,
  type MeasureKind,
  measureText,
  outlineText,
  readCount,
  readMeasure,
  readOutline,
} from "./measure-text.ts";
import { type ChoosableKind, RowChoice } from "./row-choice.tsx";
import { names } from "./row-names.ts";
import { TimingEditor } from "./timing-editor.tsx";

export function ValueEditor({ kind, ...props }: { kind: ValueKind } & EditorProps<unknown>) {
  const Editor = EDITORS[kind] as (given: EditorProps<unknown>) => VNode;
  return <Editor {...props} />;
}

/** Kinds whose values are words of a list, said as the drill says them. */
function chosen<K extends ValueKind>(kind: K) {
  const options = (domainOf(kind) ?? []).map((value) => ({
    value,
    words: valueWords(kind, value as ValueOf<K>, () => null),
  }));
  return ({ value, label, take }: EditorProps<ValueOf<K>>) => (
    <Choice
      label={label}
      value={value as string | undefined}
      options={options}
      take={(word) => void take(word as ValueOf<K>)}
    />
  );
}

const rowOf =
  (kind: ChoosableKind) =>
  ({ value, label, row, take }: EditorProps<string>) => (
    <RowChoice
      kind={kind}
      value={value}
      label={label}
      reins={reinsMayBeMeant(row)}
      take={(id, also) => take(id, { also })}
    />
  );

/** A hand may keep, take or let go of the reins; what is done with a weapon is not done with them. */
function reinsMayBeMeant({ kind, id }: EditorProps<string>["row"]): boolean {
  const action = kind === "actions" ? one("actions", id) : null;
  return action !== null && VERBS[action.act.verb].part === "hand";
}

/** Kinds that are typed: how they are read and written. */
function typed<T>(read: (text: string) => T | string, written: (value: T) => string, placeholder: string, size = 12) {
  return ({ value, label, row, name, take }: EditorProps<T>) => (
    <DraftField
      row={row}
      name={name}
      label={label}
      size={size}
      placeholder={placeholder}
      value={value === undefined ? "" : written(value)}
      check={(text) => {
        const found = read(text);
        return typeof found === "string" ? found : "";
      }}
      store={async (text, base) => {
        const found = read(text);
        return typeof found !== "string" && (await take(found, { base }));
      }}
    />
  );
}

const measured = (kind: MeasureKind) =>
  typed(
    (text) => readMeasure(kind, text),
    (value) => measureText(kind, value),
    MEASURE_HINTS[kind],
  );

function WordsEditor({ value, label, row, name, take }: EditorProps<string>) {
  return (
    <DraftField
      row={row}
      name={name}
      label={label}
      value={value ?? ""}
      grows
      placeholder="in words"
      check={(text) => (text.trim() === "" ? "Expected some words. To say nothing here, take the line away." : "")}
      store={(text, base) => take(text.trim(), { base })}
    />
  );
}

const plainWords = (text: string) => ({ value: text, words: text });
const SIDES = VALUES.turn.shape.to.options.map((to) => ({ value: to, words: to }));
const VIEWPOINTS: readonly { value: ValueOf<"turn">["viewpoint"]; words: string }[] = Viewpoint.options.map(
  (value) => ({
    value,
    words: {
      rider: "the rider’s",
      "from above": "from above",
      onlookers: "the onlookers’",
      "text does not say": "whose is not said",
    }[value],
  }),
);

/** A side is the rider's own unless another eye is named. */
function SideEditor({ value, label, take }: EditorProps<ValueOf<"turn">>) {
  return (
    <>
      <Choice
        label={label}
        value={value?.to}
        options={SIDES}
        take={(to) => void take({ to: to as ValueOf<"turn">["to"], viewpoint: value?.viewpoint ?? "rider" })}
      />
      {value && (
        <Choice
          label={`${label}: seen by`}
          value={value.viewpoint}
          options={VIEWPOINTS}
          take={(viewpoint) => void take({ ...value, viewpoint })}
        />
      )}
    </>
  );
}

const SPINS: readonly { value: string; words: string; spin: ValueOf<"spin"> }[] = [
  ...(["point forward and down", "point backward and up"] as const).map((sense) => ({
    value: sense,
    words: sense,
    spin: { plane: "fore and aft", sense } as const,
  })),
  ...(["point over to the left", "point over to the right"] as const).map((sense) => ({
    value: sense,
    words: sense,
    spin: { plane: "across", sense } as const,
  })),
  ...(["clockwise", "counter-clockwise"] as const).map((sense) => ({
    value: sense,
    words: `level, ${sense}`,
    spin: { plane: "level", sense, viewpoint: "from above" } as const,
  })),
];

function SpinEditor({ value, label, take }: EditorProps<ValueOf<"spin">>) {
  return (
    <>
      <Choice
        label={label}
        value={value?.sense}
        options={SPINS}
        take={(sense) => {
          const found = SPINS.find((spin) => spin.value === sense);
          if (found) void take(found.spin);
        }}
      />
      {value?.plane === "level" && (
        <Choice
          label={`${label}: seen by`}
          value={value.viewpoint}
          options={VIEWPOINTS}
          take={(viewpoint) => void take({ ...value, viewpoint })}
        />
      )}
    </>
  );
}

const STATION_LIST = "stations-known";
const HOURS = [12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11].map((hour) => ({ value: `${hour}`, words: clockWords(hour) }));
const BEARINGS = [...HOURS, { value: "toward", words: "toward …" }, { value: "away from", words: "away from …" }];

/** What is named may be a station of the ground; else it is kept as words. */
function BearingEditor({ value, label, row, name, take }: EditorProps<ValueOf<"bearing">>) {
  const pick = (is: string) => {
    if (is !== "toward" && is !== "away from") return void take({ is: "clock", hour: Number(is) });
    const what = value && value.is !== "clock" ? value : { what: "the onlookers" };
    void take({ ...what, is });
  };
  return (
    <>
      <Choice
        label={label}
        value={value === undefined ? undefined : value.is === "clock" ? `${value.hour}` : value.is}
        options={BEARINGS}
        take={pick}
      />
      {value && value.is !== "clock" && (
        <DraftField
          row={row}
          name={name}
          label={`${label}: what`}
          list={STATION_LIST}
          size={12}
          value={value.what}
          check={needed}
          store={(text, base) => {
            const station = stationNamed(text);
            return take({ is: value.is, what: text.trim(), ...(station ? { station: station.id } : {}) }, { base });
          }}
        />
      )}
    </>
  );
}

const needed = (text: string) => (text.trim() === "" ? "Expected some words." : "");

function PlaceEditor({ value, label, row, name, take }: EditorProps<ValueOf<"place">>) {
  const now = value === undefined ? "" : valueWords("place", value, names.value);
  return (
    <DraftField
      row={row}
      name={name}
      label={label}
      list={STATION_LIST}
      size={16}
      placeholder="a station, or words"
      value={now}
      check={needed}
      store={(text, base) => {
        const station = stationNamed(text);
        return take(station ? { is: "station", station: station.id } : { is: "words", words: text.trim() }, { base });
      }}
    />
  );
}

function stationNamed(text: string) {
  const wanted = text.trim().toLowerCase();
  return ranked("stations").find((station) => station.name.toLowerCase() === wanted);
}

/** Names offered while a place is typed; stands once on the page. */
export function StationNames() {
  return (
    <datalist id={STATION_LIST}>
      {ranked("stations").map((station) => (
        <option key={station.id} value={station.name} />
      ))}
    </datalist>
  );
}

const SUPPORTS = VALUES.contact.shape.with.options.map(plainWords);
const DEGREES = [
  { value: "near", words: "near it" },
  { value: "touches", words: "touching it" },
  { value: "bears", words: "resting on it" },
] as const;

function ContactEditor({ value, label, row, name, take }: EditorProps<ValueOf<"contact">>) {
  return (
    <>
      {value && (
        <Choice
          label={`${label}: how near`}
          value={value.degree}
          options={DEGREES}
          take={(degree) => void take({ ...value, degree })}
        />
      )}
      <Choice
        label={label}
        value={value?.with}
        options={SUPPORTS}
        take={(support) => void take({ degree: "touches", ...value, with: support as ValueOf<"contact">["with"] })}
      />
      {value && (
        <>
          <Choice
            label={`${label}: side`}
            value={value.side ?? "none"}
            options={[{ value: "none", words: "side not said" }, plainWords("left"), plainWords("right")]}
            take={(side) => {
              const { side: _was, ...others } = value;
              void take(side === "left" || side === "right" ? { ...others, side } : others);
            }}
          />
          {(value.with === "other" || value.words !== undefined) && (
            <DraftField
              row={row}
              name={`${name} words`}
              label={`${label}: in words`}
              value={value.words ?? ""}
              size={14}
              store={(words, base) => {
                const { words: _was, ...others } = value;
                return take(words.trim() === "" ? others : { ...others, words: words.trim() }, { base });
              }}
            />
          )}
        </>
      )}
    </>
  );
}

const EDITORS: { [K in ValueKind]: (props: EditorProps<ValueOf<K>>) => VNode } = {
  hand: chosen("hand"),
  side: SideEditor,
  object: rowOf("objects"),
  hold: rowOf("holds"),
  movement: rowOf("movements"),
  threat: rowOf("threats"),
  zone: chosen("zone"),
  palm: chosen("palm"),
  bearing: BearingEditor,
  level: chosen("level"),
  facing: chosen("facing"),
  contact: ContactEditor,
  frame: chosen("frame"),
  reinZone: chosen("reinZone"),
  reinsOn: chosen("reinsOn"),
  gait: chosen("gait"),
  pace: chosen("pace"),
  lead: chosen("lead"),
  figure: chosen("figure"),
  amount: chosen("amount"),
  manner: chosen("manner"),
  turn: SideEditor,
  spin: SpinEditor,
  length: measured("length"),
  angle: measured("angle"),
  mass: measured("mass"),
  count: typed(readCount, (value) => valueWords("count", value, () => null), "twice, 3, until …"),
  place: PlaceEditor,
  outline: typed(readOutline, outlineText, "0 20; 5 20", 16),
  mount: chosen("mount"),
  bend: chosen("bend"),
  purpose: chosen("purpose"),
  timing: TimingEditor,
  part: chosen("part"),
  words: WordsEditor,
};
