/** shared/ride/puzzle/why-not.ts - why nothing holds, or why a reading is dead, in words of the text.
 *  May import: shared/decide, siblings. Keeps rule P12 (shared/ride/puzzle/RULES.md). */
import { clashes, type Member, type Pick, type Puzzle, whatMustGive } from "../../decide/index.ts";
import { askedPuzzle, countedPick, type DecideAsk, picksOf } from "./answer.ts";
import { MemberTeller, type ToldMember } from "./told-member.ts";
import type { WeighedExercise } from "./weighed.ts";
import { wordsItHangsOn } from "./words-it-hangs-on.ts";

export interface WhyNot {
  /** Sets that cannot hold together, each as small as it can be, the shortest first. */
  clashes: ToldMember[][];
  /** Whether these are all there are. */
  complete: boolean;
  /** Whether the first is proven to be a shortest. */
  shortest: boolean;
  /** A set to give up so that something holds; null where nothing holds whatever is given up, or none was found. */
  mustGive: ToldMember[] | null;
  /** Whether it is proven that no fewer would do. */
  smallest: boolean;
  sentence: string;
}

/** `target` null: why nothing holds under what is asked; else why nothing that takes this reading does. */
export function whyNot(weighed: WeighedExercise, ask: DecideAsk, target: Pick | null): WhyNot {
  const teller = new MemberTeller(weighed);
  const wanted = target === null ? null : countedPick(weighed, target);
  if (target !== null && wanted === null)
    return { ...NOTHING, sentence: `Nothing that is ridden hangs on ${teller.pickWords(target)}: it is not counted.` };
  if (wanted !== null && isRuledOut(weighed.puzzle, wanted))
    return {
      ...NOTHING,
      sentence: `${capital(teller.pickWords(wanted))} was ruled out by hand, so it is not counted.`,
    };
  const puzzle = askedPuzzle(weighed, { ...ask, picks: [], asAdopted: false });
  // Stated values are looked for afterwards, one by one: all of them at once would let almost anything happen.
  const plain = { ...puzzle, stages: puzzle.stages.map((stage) => ({ ...stage, stated: [] })) };
  const picks = picksOf(weighed, ask).filter(({ crux }) => crux !== wanted?.crux);
  const found = clashes(plain, wanted, { picks });
  if (found.clashes.length === 0 && found.complete) return { ...NOTHING, sentence: holdsWords(teller, wanted) };
  const give = whatMustGive(plain, { picks, target: wanted });
  const told = found.clashes.map((clash, index) => {
    const under = picksIn(clash, wanted);
    const stated = index < MOST_WITH_WORDS ? wordsItHangsOn(puzzle, clash, under) : [];
    return inOrder(puzzle, [...clash, ...stated]).map((member) => teller.told(member, under));
  });
  const mustGive = give === null ? null : give.drop.map((member) => teller.told(member, [...picks, ...listOf(wanted)]));
  return {
    clashes: told,
    complete: found.complete,
    shortest: found.shortest,
    mustGive,
    smallest: give?.smallest ?? false,
    sentence: sentenceOf(teller, wanted, told, mustGive),
  };
}

/** Clashes whose stated values are looked for. */
const MOST_WITH_WORDS = 4;

/** Picks first, then as the steps come; at a step what the words say before the rule that is broken. */
function inOrder({ stages }: Puzzle, members: readonly Member[]): Member[] {
  const place = (member: Member): number =>
    member.is === "pick" ? -1 : stages.findIndex(({ id }) => id === member.stage) * 2 + (member.is === "rule" ? 1 : 0);
  return [...members].sort((a, b) => place(a) - place(b));
}

const NOTHING: WhyNot = { clashes: [], complete: true, shortest: true, mustGive: null, smallest: true, sentence: "" };

function isRuledOut({ cruxes }: Puzzle, { crux, reading }: Pick): boolean {
  return cruxes.find(({ id }) => id === crux)?.ruledOut.includes(reading) ?? false;
}

const listOf = <T>(one: T | null): T[] => (one === null ? [] : [one]);

function picksIn(clash: readonly Member[], target: Pick | null): Pick[] {
  const picked = clash.flatMap((one) => (one.is === "pick" ? [{ crux: one.crux, reading: one.reading }] : []));
  return [...picked, ...listOf(target)];
}

function holdsWords(teller: MemberTeller, target: Pick | null): string {
  return target === null
    ? "Something holds as it stands: nothing is in the way."
    : `${capital(teller.pickWords(target))} can be ridden: nothing is in the way.`;
}

function sentenceOf(
  teller: MemberTeller,
  target: Pick | null,
  [first]: readonly ToldMember[][],
  mustGive: readonly ToldMember[] | null,
): string {
  const head = target === null ? "Nothing holds as it stands" : `Nothing holds with ${teller.pickWords(target)}`;
  if (first === undefined) return `${head}. There are too many ways to read to say why; pick some readings first.`;
  if (first.length === 0)
    return `${head}: what the readings require and exclude, and what is ruled out, leave no way to read it so.`;
  const why = first.map(({ words }) => words).join("; ");
  const [only, another] = mustGive ?? [];
  const whole = `${head}. ${first.length === 1 ? "This is in the way" : "These cannot all be"}: ${why}.`;
  if (only === undefined || (another === undefined && first.length === 1)) return whole;
  const names = (mustGive ?? []).map(({ words }) => words).join("; ");
  return `${whole} ${another === undefined ? "It is enough to give up" : "So much would have to be given up"}: ${names}.`;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
