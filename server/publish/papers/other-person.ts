/** server/publish/papers/other-person.ts - whether the name of a step has somebody else do it: "A groom plants the spear".
 *  May import: schema types. What others do is told of them, and never as an order to the rider. */
import type { Drill, DrillElement } from "../../../schema/drill.ts";

/** Who rides, or is ridden: what they do is the rider's to do. */
const OURS: ReadonlySet<string> = new Set(["rider", "horse", "hand", "point", "first", "second", "same"]);

/** Whether the name of a step says whose it is: "The second stays by the bench". */
export function namesRole(title: string, role: string): boolean {
  return role !== "" && title.toLowerCase().startsWith(`${role.toLowerCase()} `);
}

/** "a groom"; null where the rider does it. A step that has a role says so itself. */
export function otherPerson({ is, title, role }: DrillElement, { objects }: Pick<Drill, "objects">): string | null {
  const [, article = "", noun = "", verb = ""] = /^(an?|the) (\p{Ll}+) (\p{Ll}+)\b/iu.exec(title) ?? [];
  if (is !== "step" || role !== "" || !/[^s]s$/u.test(verb)) return null;
  if (OURS.has(noun) || objects.some(({ name }) => name.toLowerCase().split(/\s+/u).includes(noun))) return null;
  return `${article.toLowerCase()} ${noun}`;
}
