/** client/read/draft-field.tsx - a field of words that is stored on Enter or on leaving it, and never loses what was
 *  typed: what could not be stored yet is kept, here and when the form is opened again. */
import { signal, useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Kind } from "../../schema/record.ts";
import { versionOf } from "../state/rows.ts";
import { conflict } from "../state/write.ts";

/** What is typed and not stored, with the value and the version of the row it was begun on. */
interface Draft {
  text: string;
  over: string;
  version: number;
}
const drafts = signal<ReadonlyMap<string, Draft>>(new Map());

function keep(key: string, draft: Draft | null): void {
  const next = new Map(drafts.value);
  if (draft === null) next.delete(key);
  else next.set(key, draft);
  drafts.value = next;
}

export interface DraftFieldProps {
  /** The row the words belong to, and which of its words they are. */
  row: { kind: Kind; id: string };
  name: string;
  label: string;
  value: string;
  /** Stores the words; true when they are stored. `base` is given when the value changed while it was typed over. */
  store: (text: string, base?: number) => Promise<boolean>;
  /** What is wrong with the words, as a sentence; empty when they can be stored. */
  check?: (text: string) => string;
  /** Several lines; Enter begins a new one, and leaving stores. */
  many?: boolean;
  /** One line that grows with its words; Enter stores. */
  grows?: boolean;
  placeholder?: string;
  size?: number;
  list?: string;
  type?: "text" | "date";
}

export function DraftField(props: DraftFieldProps) {
  const { row, name, label, value, many = false, grows = false, placeholder, size, list, type = "text" } = props;
  const key = `${row.kind} ${row.id} ${name}`;
  const draft = drafts.value.get(key) ?? null;
  const problem = useSignal("");
  const now = useRef(props);
  now.current = props;

  const commit = async () => {
    const typed = drafts.value.get(key);
    if (typed === undefined) return;
    const { store, check, value: stored } = now.current;
    if (typed.text === stored) {
      keep(key, null);
      problem.value = "";
      return;
    }
    const wrong = check?.(typed.text) ?? "";
    if (wrong !== "") {
      problem.value = wrong;
      return;
    }
    const done = await store(typed.text, stored === typed.over ? undefined : typed.version);
    // In a conflict the words wait in its dialog, and are decided there.
    if (done || conflict.value !== null) {
      if (drafts.value.get(key) === typed) keep(key, null);
      problem.value = "";
    } else problem.value = "Not stored yet; the reason stands below.";
  };
  useEffect(() => () => void commit(), [key]);

  const shared = {
    "aria-label": label,
    "aria-invalid": problem.value !== "",
    value: draft?.text ?? value,
    placeholder,
    onInput: (event: { currentTarget: { value: string } }) => {
      const begun = drafts.value.get(key) ?? { over: value, version: versionOf(row.kind, row.id) };
      keep(key, { ...begun, text: event.currentTarget.value });
    },
    onBlur: () => void commit(),
  };
  const meanwhile = draft !== null && draft.over !== value && draft.text !== value;
  return (
    <>
      {many || grows ? (
        <textarea
          {...shared}
          class={grows ? "grows" : ""}
          rows={grows ? 1 : 2}
          onKeyDown={(event) => {
            if (event.key !== "Enter" || (many && !event.ctrlKey && !event.metaKey)) return;
            event.preventDefault();
            void commit();
          }}
        />
      ) : (
        <input
          {...shared}
          type={type}
          size={size}
          list={list}
          onKeyDown={(event) => {
            if (event.key !== "Enter") return;
            event.preventDefault();
            void commit();
          }}
        />
      )}
      {problem.value !== "" && <span class="field-problem">{problem.value}</span>}
      {meanwhile && <span class="meta">Meanwhile another window wrote here: “{value}”.</span>}
    </>
  );
}

/** A draft field with its label written before it. */
export function LabelledField(props: DraftFieldProps) {
  return (
    <div class="field">
      <span class="label" aria-hidden="true">
        {props.label}
      </span>
      <DraftField {...props} />
    </div>
  );
}
