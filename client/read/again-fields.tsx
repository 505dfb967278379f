/** client/read/again-fields.tsx - what is done again, in which manner, and what is different then. */
import { useSignal } from "@preact/signals";
import type { RecordOf } from "../../schema/record.ts";
import { actWords } from "../../shared/drill/act-words.ts";
import { compareRanked } from "../../shared/rank.ts";
import { contents, elements, work } from "../state/passage.ts";
import { all, ranked } from "../state/rows.ts";
import { Choice } from "./choice.tsx";
import { names, short } from "./row-names.ts";
import { elementWords } from "./slot-place.ts";
import { storeFields } from "./store-fields.ts";
import { actionsOf } from "./verbs.ts";

type Again = Extract<RecordOf<"elements">, { is: "again" }>;
type Of = Again["of"];
type Except = Again["except"][number];

const keyOf = (of: Of) =>
  of.is === "exercise" ? `exercise ${of.exercise}` : of.is === "movement" ? `movement ${of.movement}` : "elements";

/** All exercises of the work; the rows of this window hold those of the open one only. */
function exercisesOfWork(): RecordOf<"exercises">[] {
  const own = contents.value?.works.find((other) => other.rows.works?.[0]?.value.id === work.value?.id);
  return (own?.rows.exercises ?? []).map((row) => row.value).sort(compareRanked);
}

export function AgainFields({ element, own }: { element: Again; own: string }) {
  const { id, of } = element;
  const store = (fields: Partial<Pick<Again, "of" | "manner" | "except">>, why: string) =>
    void storeFields("elements", id, fields, `${own}: ${why}`);
  const steps = elements.value.filter((other) => other.id !== id && (other.is === "step" || other.is === "again"));
  const options = [
    ...(steps.length > 0 ? [{ value: "elements", words: "steps of this exercise" }] : []),
    ...ranked("movements").map((one) => ({ value: `movement ${one.id}`, words: `the movement ${one.name}` })),
    ...exercisesOfWork().map((one) => ({
      value: `exercise ${one.id}`,
      words: `the exercise ${[one.label, one.title].filter(Boolean).join(" ")}`,
    })),
  ];
  const begin = (key: string): Of | null => {
    const [is, name = ""] = key.split(" ");
    if (is === "movement") return { is, movement: name };
    if (is === "exercise") return { is, exercise: name };
    const first = steps[0]?.id;
    return first ? { is: "elements", from: first, to: first } : null;
  };
  const ends = steps.map((step) => ({ value: step.id, words: elementWords(step.id) }));
  return (
    <section class="part">
      <div class="slot">
        <span class="slot-label" aria-hidden="true">
          of
        </span>
        <div class="slot-body">
          <Choice
            label="What is done again"
            value={keyOf(of)}
            options={options}
            take={(key) => {
              const next = begin(key);
              if (next) store({ of: next }, "what is done again");
            }}
          />
          {of.is === "elements" && (
            <span class="row">
              <Choice
                label="First step"
                value={of.from}
                options={ends}
                take={(from) => store({ of: { ...of, from } }, "from another step")}
              />
              <span class="label">to</span>
              <Choice
                label="Last step"
                value={of.to}
                options={ends}
                take={(to) => store({ of: { ...of, to } }, "to another step")}
              />
            </span>
          )}
        </div>
      </div>
      <div class="slot">
        <span class="slot-label" aria-hidden="true">
          manner
        </span>
        <div class="slot-body">
          <Choice
            label="In which manner"
            value={element.manner}
            options={(["as it is", "mirrored", "on the other rein"] as const).map((value) => ({ value, words: value }))}
            take={(manner) => store({ manner }, manner)}
          />
        </div>
      </div>
      <Exceptions element={element} store={(except, why) => store({ except }, why)} />
    </section>
  );
}

/** Actions of what is repeated, so far as they are known in this window. */
function repeatedActions(of: Of): RecordOf<"actions">[] {
  if (of.is === "movement") return actionsOf(of.movement);
  const list =
    of.is === "exercise" ? ranked("elements").filter((other) => other.exercise === of.exercise) : elements.value;
  const from = of.is === "elements" ? list.findIndex((other) => other.id === of.from) : 0;
  const to = of.is === "elements" ? list.findIndex((other) => other.id === of.to) : list.length - 1;
  return list.slice(Math.max(0, from), to + 1).flatMap((other) => actionsOf(other.id));
}

function Exceptions({ element, store }: { element: Again; store: (except: Except[], why: string) => void }) {
  const words = useSignal("");
  const there = repeatedActions(element.of);
  const own = actionsOf(element.id);
  const actionWords = (id: string) => {
    const action = all("actions").find((other) => other.id === id);
    if (action === undefined) return "an action that is no longer there";
    const step = action.ownerKind === "elements" ? `${elementWords(action.owner)}: ` : "";
    return step + short(actWords(action.act, names.value), 50);
  };
  const phrase = (except: Except) => {
    if (except.is === "words") return except.words;
    if (except.is === "without") return `without “${actionWords(except.action)}”`;
    return `“${actionWords(except.by)}” instead of “${actionWords(except.action)}”`;
  };
  const add = (except: Except) => store([...element.except, except], `except ${short(phrase(except), 60)}`);
  return (
    <div class="conditions">
      {element.except.map((except, index) => (
        <p key={index}>
          <span class="label">except</span> {phrase(except)}{" "}
          <button
            type="button"
            class="quiet"
            aria-label={`take the exception away: number ${index + 1}`}
            onClick={() =>
              store(
                element.except.filter((_, other) => other !== index),
                "an exception taken away",
              )
            }
          >
            take the exception away
          </button>
        </p>
      ))}
      <select
        aria-label="Except"
        value=""
        onChange={(event) => {
          const [is, action = "", by = ""] = event.currentTarget.value.split(" ");
          event.currentTarget.value = "";
          if (is === "without") add({ is, action });
          if (is === "instead") add({ is, action, by });
        }}
      >
        <option value="">except…</option>
        <optgroup label="without">
          {there.map((action) => (
            <option key={action.id} value={`without ${action.id}`}>
              {actionWords(action.id)}
            </option>
          ))}
        </optgroup>
        {own.map((by) => (
          <optgroup key={by.id} label={`“${short(actWords(by.act, names.value), 40)}” instead of`}>
            {there.map((action) => (
              <option key={action.id} value={`instead ${action.id} ${by.id}`}>
                {actionWords(action.id)}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
      <span class="row">
        <input
          aria-label="Except, in words"
          placeholder="or say the exception in words"
          size={24}
          value={words.value}
          onInput={(event) => (words.value = event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== "Enter" || words.value.trim() === "") return;
            event.preventDefault();
            add({ is: "words", words: words.value.trim() });
            words.value = "";
          }}
        />
        {words.value.trim() !== "" && (
          <button
            type="button"
            onClick={() => {
              add({ is: "words", words: words.value.trim() });
              words.value = "";
            }}
          >
            Add
          </button>
        )}
      </span>
    </div>
  );
}
