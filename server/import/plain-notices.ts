/** server/import/plain-notices.ts - cuts the notices of a digital library from a plain text and reads the title from them.
 *  May import: schema types, siblings. The text stands between a line "*** START OF ..." and a line "*** END OF ...". */
import type { DroppedList } from "./dropped-list.ts";

export interface NoticeFields {
  title: string;
  author: string;
  translator: string;
  language: string;
}

const START = /^\s*\*{3}\s*START OF\b/;
const END = /^\s*\*{3}\s*END OF\b/;
/** Such a line may be wrapped; it ends with three stars. */
const LONGEST_WRAP = 4;

const wrapEnd = (lines: readonly string[], start: number): number => {
  for (let at = start; at < Math.min(lines.length, start + LONGEST_WRAP); at += 1) {
    if (/\*{3}\s*$/.test((lines[at] ?? "").replace(/^\s*\*{3}/, ""))) return at + 1;
  }
  return start + 1;
};

const field = (head: readonly string[], name: string): string => {
  const index = head.findIndex((line) => line.startsWith(`${name}:`));
  if (index < 0) return "";
  const more: string[] = [];
  for (let at = index + 1; /^\s+\S/.test(head[at] ?? ""); at += 1) more.push((head[at] ?? "").trim());
  return [(head[index] ?? "").slice(name.length + 1).trim(), ...more].join(" ").slice(0, 300);
};

/** The lines of the text as a half-open range of `lines`, and what the cut notices say of it. */
export const cutNotices = (
  lines: readonly string[],
  dropped: DroppedList,
): { from: number; to: number; fields: NoticeFields } => {
  const fields: NoticeFields = { title: "", author: "", translator: "", language: "" };
  const start = lines.findIndex((line) => START.test(line));
  const end = start < 0 ? -1 : lines.findIndex((line, index) => index > start && END.test(line));
  if (start < 0 || end < 0) return { from: 0, to: lines.length, fields };
  const from = wrapEnd(lines, start);
  const why =
    "It is a notice of the library the file comes from; the text lies between the lines “*** START OF” and “*** END OF”.";
  dropped.add(`lines 1 to ${from}`, why, { line: 1, column: 1 }, lines.slice(0, 3).join(" "));
  dropped.add(
    `lines ${end + 1} to ${lines.length}`,
    why,
    { line: end + 1, column: 1 },
    lines.slice(end, end + 3).join(" "),
  );
  const head = lines.slice(0, start);
  fields.title = field(head, "Title");
  fields.author = field(head, "Author");
  fields.translator = field(head, "Translator");
  fields.language = field(head, "Language");
  return { from, to: end, fields };
};
