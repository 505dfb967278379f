/** client/ride/fitted-words.ts - as much of what is told as fits a stretch of a lane: whole clauses, else whole words, else nothing.
 *  Three dots say that more is told. Pure but for the measure that is handed in. */

const MORE = " …";
/** Before these a clause can end after one word: “spear” of “spear at the balance”; else it has two, and does not end with one
 *  of LINKING: “half volte” of “half volte left”. */
const LINKING = new Set(["a", "about", "an", "and", "at", "by", "from", "in", "of", "on", "or", "the", "to", "with"]);
const GOES_ON = /^(\(|about$|across$|at$|behind$|before$|by$|from$|in$|into$|of$|on$|to$|toward$|with$)/;

/** `width` in CSS pixels, `measure` how wide words are. "" where nothing fits that says something by itself. */
export function fittedWords(words: string, width: number, measure: (words: string) => number): string {
  if (measure(words) <= width) return words;
  const clauses = words.split(/(?<=[;,]) /);
  for (let kept = clauses.length - 1; kept > 0; kept -= 1) {
    const part = `${bare(clauses.slice(0, kept).join(" "))}${MORE}`;
    if (measure(part) <= width) return part;
  }
  const each = bare(clauses[0] ?? "").split(" ");
  for (let kept = each.length - 1; kept > 0; kept -= 1) {
    if (LINKING.has(each[kept - 1] ?? "") || (kept < 2 && !GOES_ON.test(each[kept] ?? ""))) continue;
    const part = `${each.slice(0, kept).join(" ")}${MORE}`;
    if (measure(part) <= width) return part;
  }
  return "";
}

const bare = (clause: string): string => clause.replace(/[;,]$/, "");
