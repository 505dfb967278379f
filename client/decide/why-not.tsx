/** client/decide/why-not.tsx - the clash that was asked for: what cannot stand together, each member as words of the passage, a
 *  reading or a rule, what must give, and the picture without the weakest rule. */
import type { ToldMember } from "../../shared/ride/puzzle/index.ts";
import { follow } from "../state/route.ts";
import { asked, openExercises, why } from "./answers.ts";
import { openInRead, openInRide, passageOf, passageOfCitations } from "./goto.ts";
import { Quoted } from "./quoted.tsx";
import { basisOf, elementOf, ruleSentence, weakestFirst } from "./stage-words.ts";
import { type LeftOut, leaveOut, picks } from "./wish.ts";

export function WhyNotPart() {
  const told = why.value;
  if (told === null) return <p class="meta inset">Looking for what stands in the way…</p>;
  if (told.is === "failed") return <p class="notice">{told.sentence}</p>;
  if (told.is === "dropped") return null;
  const { clashes, complete, shortest, mustGive, smallest, sentence } = told.value;
  const rules = weakestFirst(
    clashes
      .flat()
      .flatMap(({ member }): LeftOut[] => (member.is === "rule" ? [{ stage: member.stage, rule: member.rule }] : [])),
  );
  const [weakest] = rules;
  return (
    <section class="inset why-not" aria-label="Why not">
      {clashes.length === 0 && <p>{sentence}</p>}
      {clashes.map((clash, index) => (
        <div key={index} class="clash">
          <p>{clashLead(clash.length, index, asked.value?.target != null)}</p>
          <ul>
            {clash.map((member) => (
              <Member key={JSON.stringify(member.member)} told={member} />
            ))}
          </ul>
        </div>
      ))}
      {clashes.length > 0 && (
        <p class="meta">
          {shortest && clashes.length > 1 && "The first is a shortest one, not counting the words it hangs on. "}
          {complete
            ? clashes.length > 1
              ? "These are all the reasons there are."
              : ""
            : "There may be other reasons besides."}
        </p>
      )}
      {mustGive && mustGive.length > 0 && <MustGive list={mustGive} smallest={smallest} />}
      {weakest && (
        <p>
          <button type="button" onClick={() => leaveOut(weakest)}>
            Show it without the weakest rule
          </button>{" "}
          <span class="meta">
            {ruleSentence(weakest.rule)} It rests on {BASIS[basisOf(weakest.rule)] ?? "nothing that is named"}.
          </span>
        </p>
      )}
    </section>
  );
}

/** What a rule rests on, in the middle of a sentence. */
const BASIS: Readonly<Record<string, string>> = {
  "the user": "your own word",
  "common practice": "common practice",
  "published source": "a published source",
  "the text": "the text itself",
};

function clashLead(members: number, index: number, ofReading: boolean): string {
  if (index > 0) return members === 1 ? "And this:" : "Nor can these all be:";
  if (members === 1) return ofReading ? "This stands in its way:" : "This stands in the way:";
  return ofReading
    ? "With it these cannot all be; if any one of them gives, the others can:"
    : "These cannot all be; if any one of them gives, the others can:";
}

function MustGive({ list, smallest }: { list: readonly ToldMember[]; smallest: boolean }) {
  const [only, another] = list;
  const less = smallest ? "" : " Perhaps less would do.";
  if (only !== undefined && another === undefined) {
    return (
      <p>
        It is enough that this gives: {only.words}.{less}
      </p>
    );
  }
  return (
    <div>
      <p>What must give, all of it:{less}</p>
      <ul class="gives">
        {list.map(({ words, member }) => (
          <li key={JSON.stringify(member)}>{stopped(words)}</li>
        ))}
      </ul>
    </div>
  );
}

function Member({ told }: { told: ToldMember }) {
  const { member, words, quote, element, crux } = told;
  const passage = passageOfCitations(quote);
  const thing = crux
    ? ({ kind: "cruxes", id: crux } as const)
    : element
      ? ({ kind: "elements", id: element } as const)
      : null;
  const place = passage ?? (thing ? passageOf(thing) : null);
  const exercise = "stage" in member ? (elementOf(member.stage)?.exercise ?? openExercises.value[0]) : null;
  return (
    <li>
      <span>{stopped(words)}</span> <Quoted citations={quote} brief />
      <span class="says">
        {place && thing && (
          <a
            href={`/read/${place}`}
            class="quiet-link"
            onClick={(event) => (plain(event) ? void openInRead(thing, place) : follow(event))}
          >
            in Read
          </a>
        )}
        {exercise && element && (
          <a
            href={`/ride/${exercise}`}
            class="quiet-link"
            onClick={(event) =>
              plain(event)
                ? openInRide(exercise, [...picks.value, ...(asked.value?.target ? [asked.value.target] : [])], element)
                : follow(event)
            }
          >
            in Ride
          </a>
        )}
        {member.is === "rule" && (
          <button type="button" class="quiet" onClick={() => leaveOut({ stage: member.stage, rule: member.rule })}>
            without this rule
          </button>
        )}
      </span>
    </li>
  );
}

const stopped = (words: string): string =>
  `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.!?]$/.test(words) ? "" : "."}`;

/** Whether the click is for this window; then it goes no further. */
function plain(event: MouseEvent): boolean {
  if (event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0) return false;
  event.preventDefault();
  return true;
}
