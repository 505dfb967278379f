/** client/ride/findings.tsx - what stands in the way, as sentences, the gravest first. A press goes to the moment and
 *  lights the words; a finding can be set aside with a reason, and a reading taken under which it does not arise. */
import { useSignal } from "@preact/signals";
import type { Finding, Ridden, Severity } from "../../shared/ride/ridden.ts";
import { follow } from "../state/route.ts";
import { all } from "../state/rows.ts";
import { create, newId, remove, write } from "../state/write.ts";
import { chosenFinding } from "./gone-to.ts";
import { placesOf } from "./lit-words.ts";
import { goTo } from "./playing.ts";
import { findingsTogether, goToTogether } from "./riders.ts";
import { read } from "./wish.ts";

const SEVERITY: readonly { value: Severity; words: string }[] = [
  { value: "bars", words: "cannot be ridden so" },
  { value: "warns", words: "a warning" },
  { value: "notes", words: "worth a note" },
];
/** So many are shown at first; a half-finished exercise can have many. */
const FIRST = 12;

export function Findings({ ride }: { ride: Ridden }) {
  const allShown = useSignal(false);
  const rank = (finding: Finding) =>
    (finding.waived === null ? 0 : 10) +
    SEVERITY.findIndex(({ value }) => value === finding.severity) * 2 +
    (finding.verdict === "broken" ? 0 : 1);
  const sorted = [...findingsTogether.value, ...ride.findings].sort((a, b) => rank(a) - rank(b) || a.from - b.from);
  const shown = allShown.value ? sorted : sorted.slice(0, FIRST);
  return (
    <section class="findings" aria-label="What stands in the way">
      <h2>What stands in the way</h2>
      {sorted.length === 0 && (
        <p class="empty">
          Nothing, as far as the rules can tell.{ride.treated ? " That is said of the treated part." : ""}
        </p>
      )}
      {shown.map((finding) => (
        <OneFinding key={finding.id} finding={finding} />
      ))}
      {sorted.length > shown.length && (
        <button type="button" class="quiet" onClick={() => (allShown.value = true)}>
          show all {sorted.length}
        </button>
      )}
    </section>
  );
}

function OneFinding({ finding }: { finding: Finding }) {
  const chosen = chosenFinding.value?.id === finding.id;
  const setting = useSignal(false);
  const [place] = placesOf(finding.citations);
  const show = () => {
    const words = document.getElementById("leaf");
    if (finding.reach === "whole") goToTogether(finding);
    else goTo(finding.from, finding.stage);
    chosenFinding.value = finding;
    // In one column the words stand above the findings.
    if (words !== null && getComputedStyle(words).position !== "sticky") words.scrollIntoView({ block: "nearest" });
  };
  const severity = SEVERITY.find(({ value }) => value === finding.severity)?.words ?? "";
  return (
    <article
      class={`finding ${finding.severity} ${finding.verdict === "broken" ? "" : "unsure"} ${finding.waived === null ? "" : "waived"} ${chosen ? "on" : ""}`}
    >
      <button type="button" class="sentence" aria-pressed={chosen} onClick={show}>
        {finding.sentence}
      </button>
      <p class="meta row">
        <span>
          {finding.waived === null
            ? finding.verdict === "broken"
              ? severity
              : "cannot be told"
            : `set aside: ${finding.waived}`}
        </span>
        {place && (
          <a href={`/read/${place.passage}`} onClick={follow}>
            {finding.citations[0]?.reference}
          </a>
        )}
        {finding.waived === null ? (
          <button
            type="button"
            class="quiet"
            aria-expanded={setting.value}
            onClick={() => (setting.value = !setting.value)}
          >
            set aside…
          </button>
        ) : (
          <button type="button" class="quiet" onClick={() => void takeUpAgain(finding)}>
            take it up again
          </button>
        )}
      </p>
      {finding.reading && (
        <p class="row lifting">
          {finding.reading.lifting.map((other) => (
            <button
              key={other.reading}
              type="button"
              class="quiet"
              onClick={() => finding.reading && read(finding.reading.crux, other.reading)}
            >
              ride it as “{other.title}”
            </button>
          ))}
        </p>
      )}
      {setting.value && <SetAside finding={finding} done={() => (setting.value = false)} />}
    </article>
  );
}

/** A reason, and what it rests on where there is more than the reason; both print. */
function SetAside({ finding, done }: { finding: Finding; done: () => void }) {
  const reason = useSignal("");
  const source = useSignal("");
  const store = async () => {
    const because = reason.value.trim();
    if (because === "") return;
    const note = source.value.trim();
    const row = {
      id: newId(),
      rule: finding.rule,
      element: finding.element,
      reason: because,
      basis: note === "" ? [] : [{ is: "editor" as const, note }],
    };
    if (await write([create("waivers", row)], `Set aside at one step: ${because}`)) done();
  };
  return (
    <form
      class="set-aside"
      onSubmit={(event) => {
        event.preventDefault();
        void store();
      }}
      onKeyDown={(event) => {
        if (event.key === "Escape") done();
      }}
    >
      <label class="field">
        <span>Why it may stand here</span>
        <input
          required
          ref={(input) => input?.focus()}
          value={reason.value}
          onInput={(event) => (reason.value = event.currentTarget.value)}
        />
      </label>
      <label class="field">
        <span>It rests on (a trial, other words, somebody's word)</span>
        <input value={source.value} onInput={(event) => (source.value = event.currentTarget.value)} />
      </label>
      <div class="row">
        <button type="submit">Set it aside</button>
        <button type="button" class="quiet" onClick={done}>
          not now
        </button>
        <span class="meta">It stays in this list and prints with its reason.</span>
      </div>
    </form>
  );
}

async function takeUpAgain(finding: Finding): Promise<void> {
  const rows = all("waivers").filter(({ rule, element }) => rule === finding.rule && element === finding.element);
  if (rows.length > 0)
    await write(
      rows.map(({ id }) => remove("waivers", id)),
      "Taken up again at one step",
    );
}
