/** client/print/corrections.tsx - what an edition says otherwise than another, or than now; the slip; and issuing it anew. */
import { signal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Comparison, EditionLine, Issued, IssueRequest, SlipRequest } from "../../schema/issue.ts";
import { correctionOf } from "../../shared/text/correction.ts";
import { ask, type Refused } from "../state/api.ts";
import { loadContents } from "../state/passage.ts";
import { sitting, today, who } from "../state/session.ts";
import { newId } from "../state/write.ts";
import { isSamePaper, loadEditions, stillHolding } from "./edition-rows.ts";
import { dayWords, listed } from "./edition-words.ts";

/** What each edition is compared with, by its id: another's id, or "now". */
export const compared = signal<Readonly<Record<string, string>>>({});

export function Corrections({
  line,
  work,
  others,
}: {
  line: EditionLine;
  work: string;
  others: readonly EditionLine[];
}) {
  const { edition, differences, slips } = line;
  const against = compared.value[edition.id] ?? null;
  const compareWith = (value: string) => {
    const { [edition.id]: _before, ...rest } = compared.value;
    compared.value = value === "none" ? rest : { ...rest, [edition.id]: value };
  };
  const later = others.filter((other) => other.edition.number > edition.number && isSamePaper(other, line));
  const holders = stillHolding(line, others);
  const numberOf = (id: string) => others.find((other) => other.edition.id === id)?.edition.number;
  return (
    <div class="corrections">
      <div class="row">
        <label class="compare">
          <span class="label">Compare it with</span>{" "}
          <select value={against ?? "none"} onChange={(event) => compareWith(event.currentTarget.value)}>
            <option value="none">nothing</option>
            <option value="now">what holds now</option>
            {later.map((other) => (
              <option key={other.edition.id} value={other.edition.id}>
                edition {other.edition.number}
              </option>
            ))}
          </select>
        </label>
        {differences !== null && differences > 0 && !later.some((other) => other.differences === 0) && (
          <IssueAnew line={line} work={work} others={others} />
        )}
      </div>
      {slips.map(({ id, to, on }) => (
        <p key={id}>
          <a href={`/api/slips/${id}/slip.pdf`} target="_blank" rel="noreferrer">
            Correction slip to edition {numberOf(to) ?? "that is gone"}
          </a>
          , of {dayWords(on)}
          {holders.length > 0 &&
            `, for ${listed(holders)}, who ${holders.length === 1 ? "has" : "have"} only this edition`}
          .
        </p>
      ))}
      {against !== null && <Compared line={line} against={against} work={work} />}
    </div>
  );
}

function Compared({ line, against, work }: { line: EditionLine; against: string; work: string }) {
  const comparison = useSignal<Comparison | null>(null);
  const refused = useSignal<Refused | null>(null);
  const { edition } = line;
  const isNow = against === "now";
  useEffect(() => {
    const query = isNow ? "" : `?with=${against}`;
    void ask<Comparison>(`/api/editions/${edition.id}/compare${query}`).then((answer) => {
      comparison.value = answer.ok ? answer.value : null;
      refused.value = answer.ok ? null : answer.error;
    });
  }, [edition.id, against, line]);
  const keep = async () => {
    const request: SlipRequest = {
      id: newId(),
      slip: newId(),
      who: who.value,
      sitting: sitting.value,
      from: edition.id,
      to: against,
      on: today(),
    };
    const answer = await ask("/api/slips", request);
    refused.value = answer.ok ? null : answer.error;
    await loadEditions(work);
  };
  if (refused.value) {
    return (
      <p class="notice" role="alert">
        {refused.value.sentence}
      </p>
    );
  }
  if (comparison.value === null) return <p class="meta">Comparing …</p>;
  const { entries, renumbered } = comparison.value;
  if (entries.length === 0) return <p>Both say the same{renumbered && `; ${renumbered}`}.</p>;
  return (
    <>
      <dl class="compared">
        {entries.map((entry, index) => (
          <Entry key={`${index} ${entry.shown}`} entry={entry} sameReason={entry.why === entries[index - 1]?.why} />
        ))}
      </dl>
      {renumbered && <p class="meta">{renumbered}</p>}
      <p class="row">
        {isNow ? (
          <a
            class="button"
            href={`/api/editions/${edition.id}/slip.pdf?on=${today()}`}
            target="_blank"
            rel="noreferrer"
          >
            Correction slip
          </a>
        ) : (
          !line.slips.some(({ to }) => to === against) && (
            <button type="button" onClick={() => void keep()}>
              Keep these as a correction slip
            </button>
          )
        )}
      </p>
    </>
  );
}

/** A reason that several entries share stands with the first of them. */
function Entry({
  entry: { shown, was, now, why },
  sameReason,
}: {
  entry: Comparison["entries"][number];
  sameReason: boolean;
}) {
  return (
    <>
      <dt>{shown}</dt>
      <dd>
        <Said was={was} now={now} />
        {why && !sameReason && <p class="meta">{why}</p>}
      </dd>
    </>
  );
}

function Said({ was, now }: { was: string; now: string }) {
  if (now.startsWith("now comes ")) {
    return (
      <>
        <del>{was}</del> {now}
      </>
    );
  }
  const correction = correctionOf(was, now);
  switch (correction.do) {
    case "add":
      return (
        <>
          {correction.after && `after “${correction.after}” `}add <ins>{correction.now}</ins>
        </>
      );
    case "strike out":
      return (
        <>
          strike out <del>{correction.was}</del>
        </>
      );
    case "read":
      return (
        <>
          for <del>{correction.was}</del> read <ins>{correction.now}</ins>
        </>
      );
  }
}

/** The same paper as it is now, as the next edition, to those who hold the old one, with the slip for that. */
function IssueAnew({ line, work, others }: { line: EditionLine; work: string; others: readonly EditionLine[] }) {
  const { edition } = line;
  const issuing = useSignal(false);
  const refused = useSignal<Refused | null>(null);
  const issue = async () => {
    issuing.value = true;
    const to = newId();
    const request: IssueRequest = {
      id: newId(),
      edition: to,
      who: who.value,
      sitting: sitting.value,
      ask: line.ask,
      title: edition.title,
      issued: today(),
      forms: edition.papers.map(({ name }) => name.slice(name.lastIndexOf(".") + 1) as IssueRequest["forms"][number]),
      recipients: stillHolding(line, others).map((name) => ({ who: name, on: today() })),
    };
    const issued = await ask<Issued>("/api/editions", request);
    const slip: SlipRequest = {
      id: newId(),
      slip: newId(),
      who: who.value,
      sitting: sitting.value,
      from: edition.id,
      to,
      on: today(),
    };
    const kept = issued.ok ? await ask("/api/slips", slip) : issued;
    issuing.value = false;
    refused.value = kept.ok ? null : kept.error;
    await loadEditions(work);
    await loadContents();
  };
  return (
    <>
      <button type="button" disabled={issuing.value} onClick={() => void issue()}>
        {issuing.value ? "Setting the paper …" : "Issue it anew to those who hold it, with a correction slip"}
        <span class="spoken">: edition {edition.number}</span>
      </button>
      {refused.value && (
        <p class="notice" role="alert">
          {refused.value.sentence}
        </p>
      )}
    </>
  );
}
