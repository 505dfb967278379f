/** server/publish/editions/issue-edition.ts - freezes a paper: its number, its bytes, what it was made from, who has it.
 *  May import: Node's own modules, schema types, shared/drill, shared/text, server/store, siblings of server/publish. All of it is one
 *  change, or nothing is stored. */
import { createHash } from "node:crypto";
import type { Edit } from "../../../schema/change.ts";
import type { Issued, IssueRequest, PaperForm } from "../../../schema/issue.ts";
import type { Paper, PaperAsk } from "../../../schema/paper.ts";
import type { Choice, Edition } from "../../../schema/teaching.ts";
import { canonicalJson } from "../../../shared/drill/canonical-json.ts";
import { fileName } from "../../../shared/text/file-name.ts";
import { done, type Outcome, refused } from "../../errors.ts";
import {
  inTransaction,
  newestNumber,
  putAttachment,
  readRow,
  readRows,
  type Store,
  writeChange,
} from "../../store/index.ts";
import { buildPaper } from "../papers/build-paper.ts";
import { drillOf } from "../publish-drill.ts";
import { writePaper } from "../write/write-paper.ts";

export const MEDIA_TYPES: Readonly<Record<PaperForm, string>> = {
  pdf: "application/pdf",
  docx: "application/vnd.openxmlformats-officedocument.wordprocessingml.document",
  html: "text/html",
};

/** Refused when the paper cannot be made, and when anything was written while it was being set. */
export async function issueEdition(
  store: Store,
  request: IssueRequest,
  { now }: { now: string },
): Promise<Outcome<Issued>> {
  const known = readRow(store, "editions", request.edition);
  if (known !== null) return done(issuedAs(known.value, newestNumber(store)));
  const at = newestNumber(store);
  const built = buildPaper(store, request.ask);
  if (!built.ok) return built;
  const choice = readingsTaken(store, request.ask);
  if (!choice.ok) return choice;
  const number = nextNumber(store, built.value.work.id);
  const paper: Paper = { ...built.value, edition: { number, issued: request.issued, check: checkCode(built.value) } };
  const made: { form: PaperForm; bytes: Uint8Array }[] = [];
  for (const form of [...new Set(request.forms)]) {
    const bytes = await writePaper(paper, form);
    if (!bytes.ok) return bytes;
    made.push({ form, bytes: bytes.value });
  }
  return inTransaction(store, (): Outcome<Issued> => {
    if (newestNumber(store) !== at) {
      return refused(
        "paper_overtaken",
        "Something was written while the paper was being set, so it might not say what holds now. Look at it again and issue it again.",
      );
    }
    const edition = editionRow(store, request, { paper, made, choice: choice.value, number, at });
    const edits: Edit[] = [{ do: "create", kind: "editions", value: edition as never }];
    const { id, who, sitting } = request;
    const why = `Issue “${request.title}” as edition ${number}`;
    const written = writeChange(store, { id, who, why, sitting, group: null, edits }, { now });
    return written.ok ? done(issuedAs(edition, written.value.change)) : written;
  });
}

function editionRow(
  store: Store,
  { edition, ask, title, issued, recipients }: IssueRequest,
  {
    paper,
    made,
    choice,
    number,
    at,
  }: {
    paper: Paper;
    made: readonly { form: PaperForm; bytes: Uint8Array }[];
    choice: Choice;
    number: number;
    at: number;
  },
): Edition {
  const papers = made.map(({ form, bytes }) => {
    const name = `${fileName(title)}-edition-${number}.${form}`;
    const mediaType = MEDIA_TYPES[form];
    return { name, mediaType, attachment: putAttachment(store, { name, mediaType, bytes }) };
  });
  const variants = new Set(ask.parts.map((part) => part.variant));
  const [variant = null] = variants;
  return {
    id: edition,
    work: paper.work.id,
    exercises: [...new Set(ask.parts.map(({ exercise }) => exercise))],
    number,
    title,
    issued,
    choice,
    variant: variants.size === 1 ? variant : null,
    model: { ask, paper },
    papers,
    at,
    recipients,
  };
}

/** Editions of a work are numbered from 1, whatever paper they are of. */
function nextNumber(store: Store, work: string): number {
  const numbers = readRows(store, "editions").flatMap(({ value }) => (value.work === work ? value.number : []));
  return Math.max(0, ...numbers) + 1;
}

/** Which reading each crux was given on this paper; those that were not settled are not among them. */
function readingsTaken(store: Store, { parts, choice, way }: PaperAsk): Outcome<Choice> {
  const taken = new Map<string, string>();
  for (const { exercise, variant } of parts) {
    const cruxes = new Set(readRows(store, "cruxes").map(({ value }) => value.id));
    const drill = drillOf(store, exercise, { choice: choice.filter(({ crux }) => cruxes.has(crux)), way, variant });
    if (!drill.ok) return drill;
    for (const crux of [...drill.value.elements.flatMap((element) => element.cruxes), ...drill.value.cruxes]) {
      if (crux.taken !== null && crux.taken.because !== "exception") taken.set(crux.crux, crux.taken.reading);
    }
  }
  return done([...taken].map(([crux, reading]) => ({ crux, reading })));
}

/** Letters and digits that are not mistaken for each other when read aloud. */
const CHECK_SIGNS = "23456789ABCDEFGHJKMNPQRSTVWXYZ";

/** A short code that tells two papers apart: five signs of the SHA-256 of all it says. */
export function checkCode(paper: Paper): string {
  const hash = createHash("sha256")
    .update(canonicalJson({ ...paper, edition: null }))
    .digest();
  return [...hash.subarray(0, 5)].map((byte) => CHECK_SIGNS[byte % CHECK_SIGNS.length]).join("");
}

function issuedAs({ id, number, model }: Edition, change: number): Issued {
  const check = (model as { paper?: { edition?: { check?: string } | null } }).paper?.edition?.check ?? "";
  return { edition: id, number, check, change };
}
