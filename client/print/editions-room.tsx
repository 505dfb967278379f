/** client/print/editions-room.tsx - what was issued: who holds it, whether it still says what holds, and its corrections. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { EditionLine } from "../../schema/issue.ts";
import { contents, loadContents } from "../state/passage.ts";
import { follow } from "../state/route.ts";
import { today } from "../state/session.ts";
import { Corrections, compared } from "./corrections.tsx";
import { editions, editionsRefused, isSamePaper, loadEditions, stillHolding, writeEdition } from "./edition-rows.ts";
import { changedWords, dayWords, listed, opened } from "./edition-words.ts";
import { namesIn } from "./issue-form.tsx";
import { Reports } from "./reports.tsx";

export function EditionsRoom({ work }: { work: string }) {
  const at = contents.value?.at ?? 0;
  useEffect(() => {
    void loadContents();
    return () => {
      editions.value = null;
    };
  }, []);
  useEffect(() => {
    void loadEditions(work);
  }, [work, at]);
  const title = contents.value?.works.find(({ rows }) => rows.works?.[0]?.value.id === work)?.rows.works?.[0]?.value
    .title;
  const list = editions.value;
  const wrong = list?.filter(({ differences }) => differences !== null && differences > 0) ?? [];
  return (
    <main class="room editions" id="main">
      <header class="room-head">
        <h1>Editions</h1>
        {title && <p class="said">{title}</p>}
        <p>
          <a href="/print" onClick={follow}>
            Back to papers
          </a>
        </p>
      </header>
      {editionsRefused.value && (
        <p class="notice" role="alert">
          {editionsRefused.value.sentence}
        </p>
      )}
      {list === null && editionsRefused.value === null && (
        <p class="meta" role="status">
          Holding each edition against what its paper would say now …
        </p>
      )}
      {list?.length === 0 && (
        <p class="empty">
          Nothing has been issued yet. In{" "}
          <a href="/print" onClick={follow}>
            Print
          </a>
          , “Issue as an edition” freezes the paper that is shown, numbers it, and remembers whom it went to.
        </p>
      )}
      {list && wrong.length > 0 && <Wrong wrong={wrong} all={list} />}
      {list?.map((line) => (
        <EditionPart key={line.edition.id} line={line} work={work} others={list} />
      ))}
    </main>
  );
}

/** Who holds something that is no longer right, first of all. */
function Wrong({ wrong, all }: { wrong: readonly EditionLine[]; all: readonly EditionLine[] }) {
  const held = wrong.flatMap((line) => {
    const holders = stillHolding(line, all);
    return holders.length === 0 ? [] : { line, holders };
  });
  return (
    <section class="wrong">
      <h2>No longer right</h2>
      {held.length === 0 && <p>No edition that went to somebody is wrong.</p>}
      <ul>
        {held.map(({ line, holders }) => (
          <li key={line.edition.id}>
            {opened(listed(holders))} {holders.length === 1 ? "holds" : "hold"}{" "}
            <a href={`#edition-${line.edition.number}`}>edition {line.edition.number}</a>,{" "}
            <span class="said">{line.edition.title}</span>. {changedWords(line)} <PutRight line={line} all={all} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The next thing to do for those who hold a wrong edition: print the slip that is there, else make one. */
function PutRight({ line, all }: { line: EditionLine; all: readonly EditionLine[] }) {
  const right = new Set(all.filter(({ differences }) => differences === 0).map(({ edition }) => edition.id));
  const slip = line.slips.find(({ to }) => right.has(to));
  if (slip !== undefined) {
    return (
      <a href={`/api/slips/${slip.id}/slip.pdf`} target="_blank" rel="noreferrer">
        Print them the slip<span class="spoken"> to edition {line.edition.number}</span>
      </a>
    );
  }
  const later = all.find(
    (other) => right.has(other.edition.id) && other.edition.number > line.edition.number && isSamePaper(other, line),
  );
  return (
    <button
      type="button"
      class="quiet"
      onClick={() => {
        compared.value = { ...compared.value, [line.edition.id]: later?.edition.id ?? "now" };
        document.getElementById(`edition-${line.edition.number}`)?.scrollIntoView({ block: "start" });
        document.querySelector<HTMLElement>(`#edition-${line.edition.number} .compare select`)?.focus();
      }}
    >
      make the slip<span class="spoken"> to edition {line.edition.number}</span>
    </button>
  );
}

function EditionPart({ line, work, others }: { line: EditionLine; work: string; others: readonly EditionLine[] }) {
  const { edition, check, ask, differences, problem } = line;
  return (
    <section class="edition" id={`edition-${edition.number}`} aria-labelledby={`edition-${edition.number}-title`}>
      <h2 id={`edition-${edition.number}-title`}>
        <span class="number">Edition {edition.number}</span> {edition.title}
      </h2>
      <p class="meta">
        {ask.kind}, issued on {dayWords(edition.issued)}, check code {check}
      </p>
      <p class={differences === null || differences > 0 ? "stands-in-the-way" : ""}>
        {differences === null && `It can no longer be made as it was asked for. ${problem}`}
        {differences === 0 && "It says what holds now."}
        {changedWords(line)}
      </p>
      <Recipients line={line} work={work} />
      <p class="row">
        {edition.papers.map(({ name, attachment }) => {
          const form = name.slice(name.lastIndexOf(".") + 1);
          return (
            <a key={attachment} class="button" href={`/api/editions/${edition.id}/paper.${form}`} download={name}>
              {form === "html" ? "The page" : form.toUpperCase()} as it was issued
            </a>
          );
        })}
      </p>
      <Corrections line={line} work={work} others={others} />
      <Reports line={line} work={work} />
    </section>
  );
}

function Recipients({ line, work }: { line: EditionLine; work: string }) {
  const adding = useSignal<string | null>(null);
  const refused = useSignal("");
  const { edition, version } = line;
  const add = async (event: Event) => {
    event.preventDefault();
    const names = namesIn(adding.value ?? "");
    if (names.length === 0) return;
    const recipients = [...edition.recipients, ...names.map((who) => ({ who, on: today() }))];
    const edit = { do: "set", kind: "editions", id: edition.id, base: version, fields: { recipients } } as const;
    const problem = await writeEdition(edit, `Edition ${edition.number} went to ${names.join(", ")}`, work);
    refused.value = problem?.sentence ?? "";
    if (problem === null) adding.value = null;
  };
  return (
    <div class="recipients">
      <p>
        {edition.recipients.length === 0
          ? "It went to nobody yet."
          : `It went to ${withDays(edition.recipients, edition.issued)}.`}{" "}
        {adding.value === null && (
          <button
            type="button"
            class="quiet"
            onClick={() => {
              adding.value = "";
            }}
          >
            give it to somebody<span class="spoken">: edition {edition.number}</span>
          </button>
        )}
      </p>
      {adding.value !== null && (
        <form class="row" onSubmit={(event) => void add(event)}>
          <label>
            <span class="label">To</span>{" "}
            <input
              value={adding.value}
              required
              placeholder="a person, a class, an occasion"
              onInput={(event) => {
                adding.value = event.currentTarget.value;
              }}
            />
          </label>
          <button type="submit" class="chief">
            Add
          </button>
          <button
            type="button"
            onClick={() => {
              adding.value = null;
            }}
          >
            Leave it
          </button>
        </form>
      )}
      {refused.value && (
        <p class="notice" role="alert">
          {refused.value}
        </p>
      )}
    </div>
  );
}

/** The day is told of those who were given it later than it was issued. */
function withDays(recipients: readonly { who: string; on: string }[], issued: string): string {
  return listed(recipients.map(({ who, on }) => (on === issued ? who : `${who} (on ${dayWords(on)})`)));
}
