/** client/frame/conflict-dialog.tsx - what another window wrote first, beside what was written here: field by field theirs
 *  is kept or mine is written. Nothing typed is lost: it waits until it is decided, and can be copied. */
import { effect, signal, useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Edit, FieldConflict } from "../../schema/change.ts";
import type { Kind } from "../../schema/record.ts";
import { namesOf } from "../../shared/drill/names.ts";
import { refreshPassage } from "../state/passage.ts";
import { one, rowsNow, versionOf } from "../state/rows.ts";
import { type Conflict, conflict, refusal, write } from "../state/write.ts";
import { fieldName, fieldWords } from "./field-words.ts";

/** Conflicts that wait, oldest first. A second one must not push out the first. */
const waiting = signal<readonly Conflict[]>([]);
/** Whether the dialog was put aside; a line at the foot then says that something waits. */
const aside = signal(false);

effect(() => {
  const met = conflict.value;
  if (met === null) return;
  if (!waiting.peek().includes(met)) {
    waiting.value = [...waiting.peek(), met];
    aside.value = false;
  }
});

export function ConflictDialog() {
  const dialog = useRef<HTMLDialogElement>(null);
  const [first] = waiting.value;
  const open = first !== undefined && !aside.value;
  useEffect(() => {
    const box = dialog.current;
    if (box === null) return;
    if (open && !box.open) box.showModal();
    if (!open && box.open) box.close();
  }, [open]);
  return (
    <>
      {first && aside.value && (
        <p class="strip" role="status">
          <span>
            {waiting.value.length === 1 ? "A change of yours waits" : `${waiting.value.length} changes of yours wait`}{" "}
            to be decided: somebody wrote there first.
          </span>
          <button type="button" onClick={() => (aside.value = false)}>
            Look at it
          </button>
        </p>
      )}
      <dialog
        ref={dialog}
        class="conflict"
        aria-label="Somebody wrote there first"
        onClose={() => (aside.value = true)}
      >
        {open && <Decide key={waiting.value.length} met={first} />}
      </dialog>
    </>
  );
}

type Side = "theirs" | "mine";
const keyOf = ({ kind, id, field }: FieldConflict) => `${kind} ${id} ${field}`;

function settled(met: Conflict): void {
  waiting.value = waiting.value.filter((other) => other !== met);
  if (conflict.value === met) conflict.value = waiting.value[0] ?? null;
}

function Decide({ met }: { met: Conflict }) {
  const sides = useSignal<ReadonlyMap<string, Side>>(new Map());
  const busy = useSignal(false);
  const sideOf = (field: FieldConflict): Side => sides.value.get(keyOf(field)) ?? "theirs";
  useEffect(() => {
    // What the other window wrote is fetched, so that names are known and versions are fresh.
    void refreshPassage();
  }, []);
  const store = async () => {
    busy.value = true;
    await refreshPassage();
    const edits = decidedEdits(met, sideOf);
    const done = edits.length === 0 || (await write(edits, met.why));
    busy.value = false;
    // Either it is stored, or a newer conflict took its place at the end of the line.
    if (done || (conflict.value !== null && conflict.value !== met)) settled(met);
  };
  const mine = met.fields.filter((field) => sideOf(field) === "mine").length;
  return (
    <>
      <h2>Somebody wrote there first</h2>
      <p class="meta">
        {met.why ? `${met.why}. ` : ""}Nothing of it is stored yet, and nothing is lost. Choose for each what is to
        stand.
      </p>
      {met.fields.map((field) => (
        <OneField
          key={keyOf(field)}
          field={field}
          side={sideOf(field)}
          take={(side) => {
            sides.value = new Map(sides.value).set(keyOf(field), side);
          }}
        />
      ))}
      {refusal.value && (
        <p class="notice" role="alert">
          {refusal.value.sentence}
        </p>
      )}
      <div class="row">
        <button type="button" class="chief" disabled={busy.value} onClick={() => void store()}>
          {mine === 0 ? "Keep theirs" : mine === met.fields.length ? "Write mine" : "Store it so"}
        </button>
        <button type="button" onClick={() => (aside.value = true)}>
          Decide later
        </button>
        <button type="button" class="quiet" onClick={() => void navigator.clipboard?.writeText(mineAsText(met))}>
          copy what I wrote
        </button>
      </div>
    </>
  );
}

const words = ({ kind, field }: FieldConflict, value: unknown) => {
  const names = namesOf(rowsNow.value);
  return fieldWords(kind, field, value, names);
};

/** A row that went while it was being changed, or was changed while it was to go. */
const wholeRow = (field: FieldConflict) => field.field === "";

function mineAsText(met: Conflict): string {
  return met.fields.map((field) => `${fieldName(field.field)}: ${words(field, field.yours)}`).join("\n");
}

function rowName(kind: Kind, id: string): string {
  const name = namesOf(rowsNow.value)(kind, id);
  return name ?? KIND_WORDS[kind] ?? "this";
}
const KIND_WORDS: { [K in Kind]?: string } = {
  elements: "a step",
  actions: "an action",
  readings: "a reading",
  cruxes: "a crux",
  questions: "a question",
  notes: "a note",
  anchors: "the place of a mark",
};

function OneField({ field, side, take }: { field: FieldConflict; side: Side; take: (side: Side) => void }) {
  const group = keyOf(field);
  const gone = wholeRow(field) && field.theirs === null;
  const by = [field.who, field.when && new Date(field.when).toLocaleString()].filter(Boolean).join(", ");
  const options: { side: Side; label: string; text: string }[] = [
    { side: "theirs", label: `Theirs${by ? ` (${by})` : ""}`, text: gone ? "taken away" : words(field, field.theirs) },
    {
      side: "mine",
      label: "Mine",
      text: wholeRow(field) && field.yours === null ? "take it away" : words(field, field.yours),
    },
  ];
  return (
    <fieldset class="bare disputed">
      <legend>
        {rowName(field.kind, field.id)}: {fieldName(field.field)}
      </legend>
      {field.base !== null && !wholeRow(field) && (
        <p class="meta">
          It was: <span class="said">{words(field, field.base)}</span>
        </p>
      )}
      {options.map((option) => (
        <label key={option.side} class={side === option.side ? "on" : ""}>
          <input
            type="radio"
            name={group}
            checked={side === option.side}
            disabled={gone && option.side === "mine"}
            onChange={() => take(option.side)}
          />{" "}
          <b>{option.label}</b> <span class="said">{option.text}</span>
        </label>
      ))}
      {gone && (
        <p class="meta">
          It was taken away meanwhile, so that nothing can be written in it. Copy what you wrote; or undo the removal in
          the history, then write it again.
        </p>
      )}
    </fieldset>
  );
}

/** The edits of the write with what was decided: fields left to the others are dropped, versions are those of now. */
function decidedEdits(met: Conflict, sideOf: (field: FieldConflict) => Side): Edit[] {
  return met.edits.flatMap((edit): Edit[] => {
    if (edit.do === "create") return [edit];
    const disputed = met.fields.filter(({ kind, id }) => kind === edit.kind && id === edit.id);
    const whole = disputed.find(wholeRow);
    if (one(edit.kind, edit.id) === null) return [];
    const base = versionOf(edit.kind, edit.id);
    if (edit.do === "remove") return whole && sideOf(whole) === "theirs" ? [] : [{ ...edit, base }];
    if (whole && sideOf(whole) === "theirs") return [];
    const left = new Set(disputed.filter((field) => sideOf(field) === "theirs").map(({ field }) => field));
    const fields = Object.fromEntries(Object.entries(edit.fields).filter(([name]) => !left.has(name)));
    return Object.keys(fields).length === 0 ? [] : [{ ...edit, base, fields }];
  });
}
