/** client/frame/find-box.tsx - the field in the bar: words, steps, questions, or something to do. What is found stands below
 *  while typing; arrows choose, Enter goes there. Ctrl-K and "/" come here from anywhere that is not being typed in. */
import { useComputed, useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Found, FoundGroup } from "../../schema/find.ts";
import { unlocked } from "../read/focus.ts";
import { goToFound } from "../read/found-place.ts";
import { contents } from "../state/passage.ts";
import { answered, askFor, asking, findRefusal, MANY, stopAsking } from "./find-asking.ts";
import { type Doing, doingsFor, type Room } from "./find-doings.ts";
import { FoundLine, GROUP_WORDS } from "./find-line.tsx";

/** One line that can be chosen. */
type Choice =
  | { is: "doing"; doing: Doing }
  | { is: "found"; found: Found }
  | { is: "more"; group: FoundGroup["group"]; left: number };

interface Section {
  title: string;
  choices: Choice[];
}

export function FindBox({ rooms }: { rooms: readonly Room[] }) {
  const field = useRef<HTMLInputElement>(null);
  const list = useRef<HTMLDivElement>(null);
  const before = useRef<Element | null>(null);
  const typed = useSignal("");
  const open = useSignal(false);
  /** Number of the chosen line; null until arrows are used: then the first that was found. */
  const at = useSignal<number | null>(null);
  /** Enter was pressed before the answer came. */
  const hasty = useSignal(false);
  const cannot = useSignal("");

  const sections: Section[] = [];
  const doings = doingsFor(typed.value, rooms);
  if (doings.length > 0) {
    sections.push({ title: "Something to do", choices: doings.map((doing) => ({ is: "doing", doing })) });
  }
  const known = typed.value.trim() === "" ? null : answered.value;
  for (const { group, total, found } of known?.answer.groups ?? []) {
    const choices: Choice[] = found.map((one) => ({ is: "found", found: one }));
    if (total > found.length && found.length < MANY) choices.push({ is: "more", group, left: total - found.length });
    sections.push({ title: `${GROUP_WORDS[group]}, ${total}`, choices });
  }
  const choices = sections.flatMap((section) => section.choices);
  const firstFound = choices.findIndex(({ is }) => is === "found");
  // What is to be done is there before what is found: it is not chosen unasked while words may still be found.
  const unasked = firstFound === -1 && !asking.value ? 0 : firstFound;
  const chosen = Math.min(at.value ?? unasked, choices.length - 1);
  const manyWorks = useComputed(() => (contents.value?.works.length ?? 0) > 1).value;

  useEffect(() => {
    const come = (event: KeyboardEvent) => {
      const byLetter = event.key === "/" && !event.ctrlKey && !event.metaKey && !event.altKey;
      const byKey = event.key.toLowerCase() === "k" && (event.ctrlKey || event.metaKey) && !event.shiftKey;
      if (!(byKey || (byLetter && !isTypedIn(event.target))) || document.querySelector("dialog[open]")) return;
      event.preventDefault();
      event.stopPropagation();
      before.current = document.activeElement;
      field.current?.focus();
      field.current?.select();
    };
    // Before the locked text, which takes every letter for a command.
    window.addEventListener("keydown", come, true);
    return () => window.removeEventListener("keydown", come, true);
  }, []);

  useEffect(() => {
    list.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: "nearest" });
  }, [chosen, typed.value]);

  const close = () => {
    open.value = false;
    at.value = null;
    hasty.value = false;
    cannot.value = "";
    stopAsking();
  };
  const take = (choice: Choice | undefined) => {
    if (choice === undefined) return;
    if (choice.is === "more") {
      at.value = choices.indexOf(choice);
      askFor(typed.value, MANY);
      return;
    }
    if (choice.is === "doing" && unlocked.value !== null) {
      cannot.value = "A text is being amended here. Store what you typed, or lock the text again; then go on.";
      return;
    }
    cannot.value = choice.is === "found" ? (goToFound(choice.found) ?? "") : "";
    if (cannot.value !== "") return;
    field.current?.blur();
    close();
    if (choice.is === "doing") choice.doing.run();
  };
  useEffect(() => {
    if (!hasty.value || asking.value) return;
    hasty.value = false;
    take(choices[chosen]);
  });

  const keys = (event: KeyboardEvent) => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step !== undefined && choices.length > 0) {
      event.preventDefault();
      // The first arrow only opens the list again.
      if (open.value) at.value = (Math.max(chosen, step === 1 ? -1 : 0) + step + choices.length) % choices.length;
      open.value = true;
    } else if (event.key === "Enter" && !event.isComposing) {
      event.preventDefault();
      if (asking.value && at.value === null) hasty.value = true;
      else take(choices[chosen]);
    } else if (event.key === "Escape") {
      event.preventDefault();
      event.stopPropagation();
      if (open.value) close();
      else if (before.current instanceof HTMLElement && before.current !== document.body) before.current.focus();
      else field.current?.blur();
    }
  };
  const shown = open.value && typed.value.trim() !== "";
  return (
    <search
      class="find"
      onFocusOut={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) close();
      }}
    >
      <input
        ref={field}
        type="search"
        // biome-ignore lint/a11y/noRedundantRoles: without a list of its own a search field is none.
        role="combobox"
        list={undefined}
        aria-label="Find words, steps, questions, or something to do"
        aria-expanded={shown}
        aria-controls="find-list"
        aria-autocomplete="list"
        aria-activedescendant={shown && chosen >= 0 ? `find-${chosen}` : undefined}
        aria-keyshortcuts="Control+K /"
        placeholder="Find words, steps, questions, or something to do"
        autocomplete="off"
        spellcheck={false}
        maxLength={300}
        value={typed.value}
        onInput={(event) => {
          typed.value = event.currentTarget.value;
          open.value = true;
          at.value = null;
          hasty.value = false;
          cannot.value = "";
          askFor(typed.value);
        }}
        onFocus={() => {
          // What was written meanwhile is found as well.
          if (typed.value.trim() !== "") askFor(typed.value);
          open.value = true;
        }}
        onKeyDown={keys}
      />
      <div class="find-panel" hidden={!shown}>
        <p class="find-news" role="status">
          {newsOf(cannot.value, typed.value, choices.length)}
        </p>
        {/* The focus stays in the field, which names the chosen line. */}
        <div role="listbox" id="find-list" aria-label="Found" ref={list}>
          {sections.map((section) => {
            const start = choices.indexOf(section.choices[0] as Choice);
            return (
              // biome-ignore lint/a11y/useSemanticElements: a group of lines of a list box, not of fields.
              <div key={section.title} role="group" aria-label={section.title}>
                <p class="find-group" aria-hidden="true">
                  {section.title}
                </p>
                {section.choices.map((choice, index) => (
                  // biome-ignore lint/a11y/useFocusableInteractive: see above.
                  // biome-ignore lint/a11y/useKeyWithClickEvents: keys are taken by the field.
                  <div
                    key={index}
                    id={`find-${start + index}`}
                    role="option"
                    class={`find-line ${choice.is}`}
                    aria-selected={start + index === chosen}
                    onMouseDown={(event) => event.preventDefault()}
                    onClick={() => take(choice)}
                  >
                    <Line choice={choice} manyWorks={manyWorks} />
                  </div>
                ))}
              </div>
            );
          })}
        </div>
      </div>
    </search>
  );
}

function Line({ choice, manyWorks }: { choice: Choice; manyWorks: boolean }) {
  if (choice.is === "found") return <FoundLine found={choice.found} manyWorks={manyWorks} />;
  return <span>{choice.is === "doing" ? choice.doing.say : `Show ${choice.left} more`}</span>;
}

/** What there is to say besides the lines themselves. */
function newsOf(cannot: string, typed: string, lines: number): string {
  if (cannot !== "") return cannot;
  if (findRefusal.value) return findRefusal.value.sentence;
  if (asking.value) return lines === 0 ? "Looking…" : "";
  const nothing = answered.value !== null && answered.value.answer.groups.length === 0;
  if (nothing) return `Nothing in the works says “${typed.trim()}”.`;
  return lines === 0 && answered.value === null ? "Type a letter or a number to look for." : "";
}

/** Whether letters pressed there are words of somebody. The locked text only reads them as commands. */
function isTypedIn(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target.closest("input, textarea, select")) return true;
  const editor = target.closest("[contenteditable]");
  return editor !== null && editor.getAttribute("aria-readonly") !== "true";
}
