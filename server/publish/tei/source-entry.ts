/** server/publish/tei/source-entry.ts - a source (a CSL-JSON item) as an entry of TEI's bibliography.
 *  May import: schema types, shared/cite, siblings. What the item holds is taken as it comes: nothing in it is trusted
 *  to be of the kind it should be. */
import type { RecordOf } from "../../../schema/record.ts";
import { plainOf, richText } from "../../../shared/cite/rich-text.ts";
import type { Markup } from "../markup.ts";
import { element, inLines } from "../xml.ts";
import { nameOf, tokenOf } from "./pointers.ts";

type Item = Readonly<Record<string, unknown>>;

export function sourceEntry({ id, item }: RecordOf<"sources">): Markup {
  const held: Item = item;
  const inside = textOf(held["container-title"]);
  const parts: (Markup | null)[] = [
    ...namesIn(held.author).map((name) => element("author", {}, name)),
    simple("title", held.title, { level: inside === null ? "m" : "a" }),
    simple("title", held["container-title"], { level: isPeriodical(held) ? "j" : "m" }),
    ...namesIn(held.editor).map((name) => element("editor", {}, name)),
    ...namesIn(held.translator).map((name) => element("editor", { role: "translator" }, name)),
    simple("edition", held.edition),
    simple("pubPlace", held["publisher-place"]),
    simple("publisher", held.publisher),
    dateOf(held.issued),
    ...(["volume", "issue", "page"] as const).map((unit) => simple("biblScope", held[unit], { unit })),
    ...(["DOI", "ISBN", "ISSN"] as const).map((type) => simple("idno", held[type], { type })),
    simple("idno", held.URL, { type: "URI" }),
    simple("note", held.note),
  ];
  const attributes = { "xml:id": nameOf("sources", id), type: tokenOf(String(item.type)), n: String(item.id) };
  const kept = parts.filter((part) => part !== null);
  return kept.length === 0 ? element("bibl", attributes, String(item.id)) : inLines("bibl", attributes, kept);
}

function simple(tag: string, value: unknown, attributes: Record<string, string> = {}): Markup | null {
  const words = textOf(value);
  return words === null ? null : element(tag, attributes, words);
}

/** Words without the looks that CSL allows in a field; null where there are none. */
function textOf(value: unknown): string | null {
  if (typeof value === "number") return String(value);
  if (typeof value !== "string" || value.trim() === "") return null;
  const look = /<\/?(?:i|b|em|sup|sub|sc|span(?: style="font-variant: small-caps;")?)>/u;
  return look.test(value) ? plainOf(richText(value.replace(/&(?!\w+;)/gu, "&amp;"))) : value;
}

function namesIn(value: unknown): string[] {
  if (!Array.isArray(value)) return [];
  return value.flatMap((one: unknown) => {
    if (typeof one !== "object" || one === null) return [];
    const { literal, family, given } = one as Item;
    const [whole, last, first] = [textOf(literal), textOf(family), textOf(given)];
    const name = whole ?? [last, first].filter((part) => part !== null).join(", ");
    return name === "" ? [] : [name];
  });
}

const isPeriodical = ({ type }: Item): boolean => typeof type === "string" && /^(article|review)/u.test(type);

/** A year, a month, a day, as far as they are given in numbers; else the words. */
function dateOf(value: unknown): Markup | null {
  if (typeof value !== "object" || value === null) return simple("date", value);
  const { raw, literal, "date-parts": lists } = value as Item;
  const [parts] = Array.isArray(lists) ? (lists as unknown[]) : [];
  const numbers = (Array.isArray(parts) ? parts : []).map(Number).slice(0, 3);
  const [year = 0, month, day] = numbers;
  if (!Number.isInteger(year) || year < 1 || year > 9999) return simple("date", literal ?? raw);
  const isMonth = month !== undefined && month >= 1 && month <= 12;
  const isDay = isMonth && day !== undefined && day >= 1 && day <= 28;
  const two = (number: number) => String(number).padStart(2, "0");
  const when = `${String(year).padStart(4, "0")}${isMonth ? `-${two(month)}` : ""}${isDay ? `-${two(day)}` : ""}`;
  return element("date", { when }, textOf(literal) ?? textOf(raw) ?? when);
}
