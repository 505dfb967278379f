/** client/read/contents-list.tsx - the left column: works, exercises, the passages of the open one, how far each is worked.
 *  Folded groups are not drawn, so that a book of many hundred passages stays quick. */
import { signal } from "@preact/signals";
import { foldForSearch } from "../../shared/text/fold.ts";
import { contents, contentsRefusal, passageId } from "../state/passage.ts";
import { follow } from "../state/route.ts";
import { type ListedGroup, type ListedPassage, type ListedWork, listedWorks } from "./contents-order.ts";

/** Groups a person opened or closed by hand; the group of the open passage is open unless it was closed. */
const foldedByHand = signal<ReadonlyMap<string, boolean>>(new Map());
const filter = signal("");
/** On a narrow screen the list is one line until it is asked for. */
const unfolded = signal(false);

/** As many matching passages as are listed at once. */
const MOST_FOUND = 120;

export function ContentsList() {
  const list = listedWorks.value;
  const words = foldForSearch(filter.value.trim());
  const many = list.some(({ groups }) => groups.reduce((sum, { passages }) => sum + passages.length, 0) > 12);
  return (
    <nav class={`contents ${unfolded.value ? "unfolded" : ""}`} aria-label="Contents" onKeyDown={moveByArrows}>
      <button
        type="button"
        class="contents-line"
        aria-expanded={unfolded.value}
        onClick={() => (unfolded.value = !unfolded.value)}
      >
        {openLine(list)}
      </button>
      <div class="contents-body">
        {contentsRefusal.value && (
          <p class="notice" role="alert">
            {contentsRefusal.value.sentence}
          </p>
        )}
        {many && (
          <label class="field contents-filter">
            <span>Only those with</span>
            <input
              type="search"
              value={filter.value}
              placeholder="words or a reference"
              onInput={(event) => (filter.value = event.currentTarget.value)}
            />
          </label>
        )}
        {list.map((entry) => (
          <WorkPart key={entry.work.id} entry={entry} words={words} />
        ))}
        {contents.value && list.length === 0 && <p class="empty">There is no text here yet.</p>}
        <a class="button bring-in" href="/import" onClick={follow} data-stop>
          Bring in a text
        </a>
      </div>
    </nav>
  );
}

function openLine(list: readonly ListedWork[]): string {
  for (const { groups } of list) {
    for (const { passages, label, title } of groups) {
      const here = passages.find(({ id }) => id === passageId.value);
      if (here) return `${here.reference} · ${label === "" ? "" : `${label} `}${title}`;
    }
  }
  return "Contents";
}

function WorkPart({ entry, words }: { entry: ListedWork; words: string }) {
  const { work, texts, groups } = entry;
  const found = words === "" ? groups : filtered(groups, words);
  return (
    <section>
      <h2>{work.title}</h2>
      <p class="meta">
        {texts}
        {work.invented && " · invented"}
      </p>
      {words !== "" && found.length === 0 && <p class="meta">Nothing here has these words.</p>}
      <ol>
        {found.map((group) => (
          <GroupPart key={group.key} group={group} searching={words !== ""} />
        ))}
      </ol>
    </section>
  );
}

/** Groups whose title matches keep all their passages; of the others only the matching ones are left. */
function filtered(groups: readonly ListedGroup[], words: string): ListedGroup[] {
  let left = MOST_FOUND;
  return groups.flatMap((group) => {
    const matching = group.folded.includes(words)
      ? group.passages
      : group.passages.filter(({ folded }) => folded.includes(words));
    const passages = matching.slice(0, Math.max(0, left));
    left -= passages.length;
    return passages.length > 0 || group.folded.includes(words) ? [{ ...group, passages }] : [];
  });
}

function GroupPart({ group, searching }: { group: ListedGroup; searching: boolean }) {
  const holdsOpen = group.passages.some(({ id }) => id === passageId.value);
  const open = searching || (foldedByHand.value.get(group.key) ?? holdsOpen);
  const percent = `${Math.round(group.worked * 100)}%`;
  return (
    <li class={group.untreated ? "un" : ""}>
      <button
        type="button"
        class={`exercise ${holdsOpen ? "here" : ""}`}
        aria-expanded={open}
        data-stop
        onClick={() => setOpen(group.key, !open)}
        onKeyDown={(event) => {
          if (event.key === "ArrowRight") setOpen(group.key, true);
          if (event.key === "ArrowLeft") setOpen(group.key, false);
        }}
      >
        {group.label && <b>{group.label}</b>} {group.title}
        {!group.isExercise && <span class="meta"> in no exercise yet</span>}
        <span class="worked" style={{ "--share": percent }} role="img" aria-label={`${percent} worked`} />
      </button>
      {open && (
        <ol>
          {group.passages.map((passage) => (
            <PassageLink key={passage.id} passage={passage} />
          ))}
        </ol>
      )}
      {open && group.passages.length === 0 && <p class="meta">No passage belongs to it yet.</p>}
    </li>
  );
}

function setOpen(key: string, open: boolean): void {
  foldedByHand.value = new Map(foldedByHand.value).set(key, open);
}

function PassageLink({ passage }: { passage: ListedPassage }) {
  const { id, reference, progress } = passage;
  const things = openThings(passage);
  return (
    <li class={progress.untreated ? "un" : ""}>
      <a
        href={`/read/${id}`}
        aria-current={id === passageId.value ? "page" : undefined}
        data-stop
        onClick={(event) => {
          follow(event);
          unfolded.value = false;
        }}
      >
        {reference}
        {progress.opening && <span class="opening">{progress.opening}</span>}
        {things && <span class="open-things">{things}</span>}
      </a>
    </li>
  );
}

/** "1 crux open, 2 questions, untreated"; empty when there is nothing to say. */
function openThings({ progress }: ListedPassage): string {
  const counted = (count: number, one: string, more: string) =>
    count === 0 ? [] : [`${count} ${count === 1 ? one : more}`];
  return [
    ...counted(progress.openCruxes, "crux open", "cruxes open"),
    ...counted(progress.openQuestions, "question", "questions"),
    ...counted(progress.lostMarks, "mark lost its words", "marks lost their words"),
    ...(progress.untreated ? ["untreated"] : []),
  ].join(", ");
}

/** Up and down go through what can be chosen; Home and End to the first and the last. */
function moveByArrows(event: KeyboardEvent & { currentTarget: HTMLElement }): void {
  if (!["ArrowDown", "ArrowUp", "Home", "End"].includes(event.key)) return;
  if (event.target instanceof HTMLInputElement && event.key !== "ArrowDown") return;
  const stops = [...event.currentTarget.querySelectorAll<HTMLElement>("[data-stop]")].filter(
    (stop) => stop.offsetParent,
  );
  const at = stops.indexOf(document.activeElement as HTMLElement);
  const next = { ArrowDown: at + 1, ArrowUp: Math.max(0, at - 1), Home: 0, End: stops.length - 1 }[event.key] ?? 0;
  event.preventDefault();
  stops[Math.min(next, stops.length - 1)]?.focus();
}
