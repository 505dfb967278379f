/** client/read/timing-editor.tsx - when within its step an action happens: a choice, and what it leaves to be named. */
import type { ValueOf } from "../../schema/values.ts";
import { actWords } from "../../shared/drill/act-words.ts";
import { one, ranked } from "../state/rows.ts";
import { Choice, type EditorProps } from "./choice.tsx";
import { DraftField } from "./draft-field.tsx";
import { names, short } from "./row-names.ts";

type Timing = ValueOf<"timing">;

const FORMS: readonly { value: Timing["is"] | "start" | "end"; words: string }[] = [
  { value: "start", words: "at the start" },
  { value: "at", words: "part of the way" },
  { value: "end", words: "at the end" },
  { value: "throughout", words: "throughout" },
  { value: "during", words: "from … to …" },
  { value: "before", words: "before the step" },
  { value: "after", words: "after the step" },
  { value: "when", words: "when …" },
  { value: "until", words: "until …" },
  { value: "with", words: "together with …" },
  { value: "after action", words: "after … is done" },
];

/** An instruction stands outside all steps: what is done before it is done before the exercise. */
function formsFor(action: string): typeof FORMS {
  if (one("actions", action)?.ownerKind !== "standings") return FORMS;
  return FORMS.map((form) => (form.value === "before" ? { ...form, words: "before the exercise begins" } : form));
}

function formOf(timing: Timing): Timing["is"] | "start" | "end" {
  if (timing.is !== "at") return timing.is;
  return timing.over === 0 ? "start" : timing.over === timing.of ? "end" : "at";
}

export function TimingEditor({ value, label, row, name, take }: EditorProps<Timing>) {
  const others = otherActions(row.id);
  const event = value?.is === "when" || value?.is === "until" ? value.event : "he gives the word";
  const action = value?.is === "with" || value?.is === "after action" ? value.action : others[0]?.value;
  const begin = (is: Timing["is"] | "start" | "end"): Timing | null => {
    switch (is) {
      case "start":
        return { is: "at", over: 0, of: 1 };
      case "end":
        return { is: "at", over: 1, of: 1 };
      case "at":
        return { is: "at", over: 1, of: 2 };
      case "during":
        return { is: "during", from: [0, 1], to: [1, 2] };
      case "when":
      case "until":
        return { is, event };
      case "with":
      case "after action":
        return action === undefined ? null : { is, action };
      default:
        return { is };
    }
  };
  return (
    <>
      <Choice
        label={label}
        value={value && formOf(value)}
        options={formsFor(row.id).filter(
          (form) => others.length > 0 || (form.value !== "with" && form.value !== "after action"),
        )}
        take={(is) => {
          const timing = begin(is);
          if (timing) void take(timing);
        }}
      />
      {(value?.is === "when" || value?.is === "until") && (
        <DraftField
          row={row}
          name={name}
          label={`${label}: ${value.is}`}
          value={value.event}
          size={16}
          check={(text) => (text.trim() === "" ? "Expected what happens then." : "")}
          store={(text, base) => take({ is: value.is, event: text.trim() }, { base })}
        />
      )}
      {(value?.is === "with" || value?.is === "after action") && (
        <Choice
          label={`${label}: which action`}
          value={value.action}
          options={others}
          take={(chosen) => void take({ is: value.is, action: chosen })}
        />
      )}
      {((value?.is === "at" && formOf(value) === "at") || value?.is === "during") && (
        <DraftField
          row={row}
          name={name}
          label={`${label}: parts of the way`}
          value={fractionText(value)}
          size={10}
          check={(text) =>
            readFractions(text) === null ? "Expected parts of the way from 0 to 1, as “1/2” or “1/4 to 3/4”." : ""
          }
          store={async (text, base) => {
            const timing = readFractions(text);
            return timing !== null && (await take(timing, { base }));
          }}
        />
      )}
    </>
  );
}

/** The other actions of the same step, in words. */
function otherActions(id: string): { value: string; words: string }[] {
  const own = one("actions", id);
  if (own === null) return [];
  return ranked("actions")
    .filter((action) => action.owner === own.owner && action.id !== id)
    .map((action) => ({ value: action.id, words: short(actWords(action.act, names.value), 40) }));
}

function fractionText(timing: Timing): string {
  if (timing.is === "at") return `${timing.over}/${timing.of}`;
  return timing.is === "during" ? `${timing.from.join("/")} to ${timing.to.join("/")}` : "";
}

function readFractions(text: string): Timing | null {
  const found = text.trim().match(/^(\d+)(?:\/(\d+))?(?:\s*(?:to|-|–)\s*(\d+)(?:\/(\d+))?)?$/);
  if (found === null) return null;
  const from: [number, number] = [Number(found[1]), Number(found[2] ?? 1)];
  if (from[1] === 0 || from[0] > from[1]) return null;
  if (found[3] === undefined) return { is: "at", over: from[0], of: from[1] };
  const to: [number, number] = [Number(found[3]), Number(found[4] ?? 1)];
  if (to[1] === 0 || to[0] > to[1] || from[0] * to[1] >= to[0] * from[1]) return null;
  return { is: "during", from, to };
}
