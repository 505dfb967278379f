/** client/read/slot-line.tsx - one value in a form: its label, its editor on the line of its warrant, and what else may
 *  be true of it: the text does not say, it does not apply. Used for the slots of rows and for what readings give. */
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import type { Edit } from "../../schema/change.ts";
import type { Kind } from "../../schema/record.ts";
import type { ReadingValue } from "../../schema/slot.ts";
import type { ValueKind } from "../../schema/values.ts";
import { valueWords } from "../../shared/drill/words.ts";
import { BasisList } from "./basis-list.tsx";
import { focusSlot, slotKey } from "./focus-slot.ts";
import { namesWith } from "./row-names.ts";
import { openShared, type SharedKind } from "./shared-open.ts";
import { entered } from "./support.ts";
import { ValueEditor } from "./value-editors.tsx";
import { WarrantChoice } from "./warrant-choice.tsx";

/** Kinds of value that are shared things with a form of their own. */
const SHARED: { [K in ValueKind]?: SharedKind } = {
  object: "objects",
  hold: "holds",
  movement: "movements",
  threat: "threats",
};

export interface SlotLineProps {
  kind: ValueKind;
  label: string;
  /** Undefined where nobody has said anything yet. */
  held: ReadingValue | undefined;
  /** The row that keeps what is typed, and a name for it there. */
  row: { kind: Kind; id: string };
  name: string;
  marks: readonly string[];
  /** Stores what stands there; null takes the line away. */
  store: (
    value: ReadingValue | null,
    said: string,
    more?: { base?: number | undefined; also?: Edit[] },
  ) => Promise<boolean>;
  /** What is wrong with a value, as a sentence; empty when it may stand there. */
  check?: (value: unknown) => string;
  /** Focus goes to its editor when it appears. */
  wanted?: boolean;
  /** More that may be said of it, under “else”. */
  children?: ComponentChildren;
  /** Whether a reading may leave the whole thing out. */
  absent?: boolean;
}

export function SlotLine(props: SlotLineProps) {
  const { kind, label, held, row, name, marks, store, check, wanted, children, absent } = props;
  const more = useSignal(false);
  const line = useRef<HTMLFieldSetElement>(null);
  useLayoutEffect(() => {
    if (wanted) line.current?.querySelector<HTMLElement>("select, input, textarea")?.focus();
  }, [wanted]);
  const said = held?.is === "said" ? held : undefined;
  const form = SHARED[kind];
  const open = held === undefined || held.is === "said";
  const support = said ? { warrant: said.warrant, basis: said.basis } : entered(marks);
  const refused = useSignal<unknown>(undefined);
  // Asked anew each time: what it was refused for may have been changed meanwhile.
  const problem = refused.value === undefined ? "" : (check?.(refused.value) ?? "");
  // What was pressed goes with the list it stood in; the focus stays in the row.
  const closeMore = () => {
    more.value = false;
    focusSlot(row, name);
  };
  const put = (is: Exclude<ReadingValue["is"], "said">, words: string) => {
    closeMore();
    refused.value = undefined;
    void store({ is }, words);
  };
  return (
    <fieldset
      class="slot"
      ref={line}
      data-slot={slotKey(row, name)}
      aria-label={label}
      onKeyDown={(event) => {
        if (event.key !== "Escape" || !more.value) return;
        event.stopPropagation();
        more.value = false;
      }}
    >
      <span class="slot-label" aria-hidden="true">
        {label}
      </span>
      <div class="slot-body">
        {open ? (
          <span class={`editor ${said ? `by-${said.warrant}` : "unsaid"}`}>
            <ValueEditor
              kind={kind}
              label={label}
              value={said?.value}
              row={row}
              name={name}
              take={async (value, given) => {
                const wrong = (check?.(value) ?? "") !== "";
                refused.value = wrong ? value : undefined;
                if (wrong) return false;
                const words = valueWords(kind, value as never, namesWith(given?.also ?? []));
                return store({ is: "said", value, ...support }, words, given);
              }}
            />
          </span>
        ) : (
          <span class="unsaid-words">
            {held.is === "not said" && (
              <>
                <span class="not-said" aria-hidden="true">
                  ···
                </span>{" "}
                the text does not say
              </>
            )}
            {held.is === "not applicable" && "does not apply"}
            {held.is === "absent" && "is left out altogether"}
          </span>
        )}
        <span class="slot-end">
          {said && (
            <WarrantChoice
              brief
              label={label}
              support={support}
              marks={marks}
              take={(next) => void store({ ...said, ...next }, next.warrant)}
            />
          )}
          <button
            type="button"
            class="quiet else"
            aria-expanded={more.value}
            aria-label={`${label}: else`}
            onClick={() => (more.value = !more.value)}
          >
            else
          </button>
        </span>
        {problem !== "" && (
          <p class="field-problem" role="alert">
            {problem}
          </p>
        )}
        {more.value && (
          <div class="more-of-slot">
            <p class="says">
              {held?.is !== "not said" && (
                <button type="button" class="quiet" onClick={() => put("not said", "the text does not say")}>
                  the text does not say
                </button>
              )}
              {held?.is !== "not applicable" && (
                <button type="button" class="quiet" onClick={() => put("not applicable", "does not apply")}>
                  it does not apply
                </button>
              )}
              {absent && held?.is !== "absent" && (
                <button type="button" class="quiet" onClick={() => put("absent", "left out")}>
                  it is left out altogether
                </button>
              )}
              {held !== undefined && (
                <button
                  type="button"
                  class="quiet"
                  onClick={() => {
                    closeMore();
                    void store(null, "taken away");
                  }}
                >
                  {held.is === "said" ? "take it away" : "say it after all"}
                </button>
              )}
              {said && form && (
                <button type="button" class="quiet" onClick={() => openShared(form, String(said.value))}>
                  its form
                </button>
              )}
              {children}
            </p>
            {said && (
              <>
                <p class="label">rests on</p>
                <BasisList
                  bases={said.basis}
                  row={row}
                  label={label}
                  store={(basis, also) => {
                    const next = restedOn(said, basis);
                    return store(next, next.warrant === said.warrant ? "what it rests on" : next.warrant, { also });
                  }}
                />
              </>
            )}
          </div>
        )}
      </div>
    </fieldset>
  );
}

/** What is stated by nothing any more is only implied. */
export function restedOn<T extends { warrant: "stated" | "implied" | "supplied"; basis: ReadingBasis }>(
  held: T,
  basis: ReadingBasis,
): T {
  const states = basis.some((one) => one.is === "words" || one.is === "picture");
  return { ...held, basis, warrant: held.warrant === "stated" && !states ? "implied" : held.warrant };
}
type ReadingBasis = Extract<ReadingValue, { is: "said" }>["basis"];
