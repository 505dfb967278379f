/** server/commands/import.ts - brings a text in from a file, or shows what it would bring.
 *  May import: Node's own modules, uuidv7, schema types, shared/cite, server/import, siblings. */
import { readFileSync } from "node:fs";
import { basename } from "node:path";
import { uuidv7 } from "uuidv7";
import { ImportOptions } from "../../schema/api.ts";
import type { ImportedFile, ImportedText } from "../../schema/imported.ts";
import { formatReference, formatReferences } from "../../shared/cite/format-reference.ts";
import { selectPassages } from "../../shared/cite/select-passages.ts";
import type { Outcome } from "../errors.ts";
import { acceptImport } from "../import/accept.ts";
import { codedRefusal } from "../import/coded-refusal.ts";
import { type ImportFormat, readImport } from "../import/read-import.ts";
import { checked } from "../read-body.ts";
import { type Call, type Command, DONE, type ExitCode, REFUSED, tellRefusal } from "./command.ts";
import { findWork } from "./find-row.ts";

export const importText: Command = {
  name: "import",
  usage: "FILE [--preview] [--text N] [--from REF] [--to REF] [--work WORK] [--layer TITLE] …",
  says: "Brings a text in: TEI (P5 or P4), plain text or Markdown. All of it is one change.",
  options: {
    preview: { type: "boolean", says: "show the passages and what was left out; store nothing" },
    format: { type: "string", says: "tei, plain or markdown; told from the file's name and beginning when not given" },
    text: { type: "string", says: "which text of the file, from 1" },
    from: { type: "string", says: "first place to take, as the text is cited: 7 or 7.13" },
    to: { type: "string", says: "last place to take" },
    work: { type: "string", says: "the work it belongs to, by id or title; a new title makes a new work" },
    author: { type: "string", says: "author of a new work" },
    layer: { type: "string", says: "title of this text among those of the work" },
    as: { type: "string", says: "translation or original" },
    by: { type: "string", says: "who translated or edited it" },
    language: { type: "string", says: "its language: en, la, grc, ar" },
    urn: { type: "string", says: "its CTS URN without a passage, ending in a colon" },
    exercises: { type: "string", says: "by-division (the default), one, or none" },
    title: { type: "string", says: "title of the one exercise" },
    who: { type: "string", says: "who brings it in" },
  },
  words: [1, 1],
  store: "made",
  run: (call) => {
    const [path = ""] = call.words;
    let bytes: Uint8Array;
    try {
      bytes = readFileSync(path);
    } catch (problem) {
      call.error(`The file ${path} cannot be read: ${problem instanceof Error ? problem.message : "unknown"}.`);
      return REFUSED;
    }
    const name = basename(path);
    const { format } = call.options;
    const read = readImport(bytes, { name, ...(isFormat(format) && { format }) });
    if (!read.ok) return tellRefusal(call, codedRefusal(read.refusal).refusal);
    const text = read.file.texts.find(({ number }) => number === Number(call.options.text ?? 1));
    if (call.options.preview === true) return showPreview(call, read.file, text);
    const options = optionsFor(call, name, text);
    if (!options.ok) return tellRefusal(call, options.refusal);
    const accepted = acceptImport(call.store, bytes, options.value, { now: call.now });
    if (!accepted.ok) return tellRefusal(call, accepted.refusal);
    const { passages, unmatched, work } = accepted.value.imported;
    call.out(`${passages} passages brought in as “${options.value.layer.title}”, work ${work}.`);
    if (unmatched.length > 0) {
      call.out(
        `${unmatched.length} met no passage of the work and are new: ${unmatched.slice(0, 20).join(", ")}${unmatched.length > 20 ? " …" : ""}.`,
      );
    }
    showDropped(call, read.file);
    return DONE;
  },
};

function isFormat(format: unknown): format is ImportFormat {
  return format === "tei" || format === "plain" || format === "markdown";
}

/** What was not given is taken from the text itself. */
function optionsFor(call: Call, name: string, text: ImportedText | undefined): Outcome<ImportOptions> {
  const { options, store } = call;
  const given = (option: string): string => (typeof options[option] === "string" ? options[option] : "");
  const there = given("work") === "" ? null : findWork(store, given("work"));
  const title = given("work") || text?.title || name;
  const translator = text?.translator ?? "";
  const as = given("as") || (translator === "" ? "original" : "translation");
  const work =
    there?.ok === true
      ? { is: "there", id: there.value.id }
      : { is: "new", title: title.slice(0, 500), author: given("author") || text?.author || "" };
  return checked(
    {
      id: uuidv7(),
      who: given("who") || "command line",
      name,
      ...(given("format") !== "" && { format: given("format") }),
      text: Number(given("text") || 1),
      from: given("from"),
      to: given("to"),
      work,
      layer: {
        is: as,
        title: (given("layer") || text?.title || name).slice(0, 500),
        by: given("by") || translator,
        language: given("language") || text?.language || "",
        urn: given("urn") || text?.urn || "",
      },
      exercises: (given("exercises") || "by-division").replace("-", " "),
      title: given("title"),
    },
    ImportOptions,
    "import",
  );
}

function showPreview(call: Call, file: ImportedFile, text: ImportedText | undefined): ExitCode {
  const { out, options } = call;
  out(`${file.format}, ${file.encoding}; ${file.texts.length} ${file.texts.length === 1 ? "text" : "texts"}`);
  for (const { number, title, author, translator, language, urn, passages } of file.texts) {
    out([`text ${number}`, title, author, translator, language, urn, `${passages.length} passages`].join("\t"));
  }
  if (text !== undefined) {
    const [from, to] = [options.from, options.to].map((end) =>
      typeof end === "string" && end !== "" ? end : undefined,
    );
    const selected = selectPassages(text, from, to);
    if (!selected.ok) return tellRefusal(call, codedRefusal(selected.refusal).refusal);
    for (const { references, division, text: words } of selected.passages) {
      const [first, ...others] = references;
      const place = `${first ? formatReference(first) : ""}${others.length > 0 ? ` (${formatReferences(others)})` : ""}`;
      const begins = words.replace(/\s+/g, " ");
      out([place, division?.title ?? "", begins.length > 80 ? `${begins.slice(0, 79)}…` : begins].join("\t"));
    }
  }
  showDropped(call, file);
  return DONE;
}

function showDropped({ out }: Call, { dropped }: ImportedFile): void {
  if (dropped.length > 0) out(`Left out or decided on the way (${dropped.length} kinds):`);
  for (const { what, why, place, count, sample } of dropped) {
    const often = count === 1 ? "" : `, ${count} times`;
    out(`  line ${place.line}, column ${place.column}${often}: ${what}: ${why}${sample === "" ? "" : ` “${sample}”`}`);
  }
}
