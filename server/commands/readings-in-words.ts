/** server/commands/readings-in-words.ts - a count of readings as lines of text for the command line.
 *  May import: shared/ride. */
import type { DecideAnswer, Pick, WeighedExercise, WhyNot } from "../../shared/ride/puzzle/index.ts";

/** First how many ways hold; then each crux with its readings, fields parted by tabs; then what is worth knowing besides. */
export function readingsInWords(
  title: string,
  { cruxes }: WeighedExercise,
  answer: DecideAnswer,
  why: WhyNot | null,
): string[] {
  const name = ({ crux, reading }: Pick): string => {
    const found = cruxes.find(({ id }) => id === crux);
    return `“${found?.title ?? crux}” read as “${found?.readings.find(({ id }) => id === reading)?.title ?? reading}”`;
  };
  const lines = [headline(title, answer), ...(answer.treated === "" ? [] : [answer.treated])];
  for (const { id, title: crux, readings } of cruxes) {
    lines.push("", crux);
    for (const reading of readings) {
      const share = answer.shares.find((one) => one.crux === id && one.reading === reading.id);
      if (share === undefined) continue;
      const part = share.share === null ? "" : `${Math.round(share.share * 1000) / 10} %`;
      const same = readings.find((one) => one.id === reading.sameAs);
      const also = [reading.status === "adopted" ? "adopted" : "", same ? `the same as “${same.title}”` : ""];
      lines.push(
        ["", share.verdict, `${share.holding} of ${share.all}`, part, reading.title, ...also].join("\t").trimEnd(),
      );
    }
  }
  for (const { first, second } of answer.excludedPairs)
    lines.push("", `Never together: ${name(first)}, and ${name(second)}.`);
  const supplied = answer.witness?.supplied ?? [];
  if (supplied.length > 0) lines.push("", `One way supplies: ${supplied.map(({ words }) => words).join("; ")}.`);
  if (answer.apparatus.length > 0)
    lines.push("", `Not counted, without effect on the ride: ${answer.apparatus.length}.`);
  for (const { sentence } of answer.problems) lines.push("", sentence);
  if (why !== null) lines.push("", why.sentence);
  return lines;
}

function headline(title: string, { exact, why, holding, holdingUpper, surely, all }: DecideAnswer): string {
  const count = exact ? holding : `from ${holding} to ${holdingUpper}`;
  const head =
    all === "1"
      ? `“${title}”: the one way to read it ${holding === "1" ? "holds" : "does not hold"}`
      : `“${title}”: ${count} of ${all} ways to read it hold together`;
  const sure = surely === "0" ? "not surely" : all === "1" ? "surely" : `${surely} of them surely`;
  const tail = holdingUpper === "0" ? "" : `, ${sure}, whatever the text leaves open`;
  return `${head}${tail}.${exact ? "" : ` ${why}`}`;
}
