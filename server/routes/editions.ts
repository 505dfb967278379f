/** server/routes/editions.ts - papers as they would print now, and editions: issued, compared, corrected.
 *  May import: express types, zod, schema, server/publish, server/store, siblings of server. */
import type { Request, Response } from "express";
import { z } from "zod";
import { Day } from "../../schema/id.ts";
import { IssueRequest, PaperForm, type SidesOfPaper, SlipRequest } from "../../schema/issue.ts";
import { PaperAsk } from "../../schema/paper.ts";
import type { Kind } from "../../schema/record.ts";
import { answer } from "../answer.ts";
import type { Desk } from "../desk.ts";
import { done, type Outcome, refused } from "../errors.ts";
import { compareEditions, editionLines } from "../publish/editions/compare-editions.ts";
import { issueEdition, MEDIA_TYPES } from "../publish/editions/issue-edition.ts";
import { paperOfSlip, slipAgainstNow, storeSlip } from "../publish/editions/slips.ts";
import { buildPaper } from "../publish/papers/build-paper.ts";
import { sidesOfPaper, writePaper } from "../publish/write/write-paper.ts";
import { checked, readJson } from "../read-body.ts";
import { getAttachment, newestNumber, readRow } from "../store/index.ts";

/** A page brings its own style and fonts, runs nothing, loads nothing, and may stand in a frame of the window. */
const PAGE_POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; frame-ancestors 'self'";

/** Seconds a browser may keep a paper: long enough that the window asks for it once, to hear of a refusal, and its frame
 *  has it without its being set again. The address names the newest change. */
const SHORTLY = 10;

type WithForm = Request<{ form: string }>;
type WithId = Request<{ id: string }>;
type WithIdAndForm = Request<{ id: string; form: string }>;

/** GET /api/paper.pdf?ask=JSON: the paper as it would print now; not issued. */
export const sendPaper = (desk: Desk) => async (request: WithForm, response: Response) => {
  const ask = askIn(request.query.ask);
  const form = formIn(request.params.form);
  if (!form.ok) return answer(response, form);
  const paper = ask.ok ? buildPaper(desk.store, ask.value) : ask;
  const bytes = paper.ok ? await writePaper(paper.value, form.value) : paper;
  sendBytes(response, bytes, form.value, "inline");
};

/** GET /api/paper.sides?ask=JSON: how many sides its PDF would take. */
export const sendSides = (desk: Desk) => async (request: Request, response: Response) => {
  const ask = askIn(request.query.ask);
  const paper = ask.ok ? buildPaper(desk.store, ask.value) : ask;
  const sides = paper.ok ? await sidesOfPaper(paper.value, () => response.closed) : paper;
  if (!sides.ok) return answer(response, sides);
  if (sides.value === null) return;
  const count: SidesOfPaper = { sides: sides.value };
  answer(response, done(count));
};

/** GET /api/editions/:id/paper.pdf: the bytes that were issued. */
export const sendIssuedPaper = (desk: Desk) => (request: WithIdAndForm, response: Response) => {
  const form = formIn(request.params.form);
  if (!form.ok) return answer(response, form);
  const edition = readRow(desk.store, "editions", request.params.id);
  const kept = edition?.value.papers.find(({ mediaType }) => mediaType === MEDIA_TYPES[form.value]);
  const bytes = kept === undefined ? null : getAttachment(desk.store, kept.attachment);
  if (kept === undefined || bytes === null) {
    const sentence =
      edition === null
        ? `There is no edition with the id ${request.params.id}. Load the list of editions again.`
        : `Edition ${edition.value.number} was not issued as ${form.value.toUpperCase()}. It has ${edition.value.papers.map(({ name }) => name).join(", ")}.`;
    return answer(response, refused("attachment_missing", sentence));
  }
  response.attachment(kept.name);
  sendBytes(response, done(bytes.bytes), form.value, "attachment");
};

export const takeEdition = (desk: Desk) => async (request: Request, response: Response) => {
  const body = await readJson(request, IssueRequest);
  if (!body.ok) return answer(response, body);
  const issued = await issueEdition(desk.store, body.value, { now: desk.now() });
  answer(response, issued);
  if (issued.ok) tellOf(desk, body.value, issued.value.change, "editions", body.value.edition);
};

export const sendEditions = (desk: Desk) => (request: WithId, response: Response) => {
  const work = readRow(desk.store, "works", request.params.id);
  if (work === null) {
    return answer(
      response,
      refused("row_unknown", `There is no work with the id ${request.params.id}. Go back to the contents.`),
    );
  }
  answer(response, done(editionLines(desk.store, work.value.id)));
};

export const sendComparison = (desk: Desk) => (request: WithId, response: Response) => {
  const other = request.query.with;
  answer(response, compareEditions(desk.store, request.params.id, typeof other === "string" ? other : null));
};

export const takeSlip = (desk: Desk) => async (request: Request, response: Response) => {
  const body = await readJson(request, SlipRequest);
  if (!body.ok) return answer(response, body);
  const slip = storeSlip(desk.store, body.value, { now: desk.now() });
  answer(response, slip);
  if (slip.ok) tellOf(desk, body.value, newestNumber(desk.store), "slips", body.value.slip);
};

/** GET /api/slips/:id/slip.pdf: a slip that was kept. */
export const sendSlip = (desk: Desk) => async (request: WithIdAndForm, response: Response) => {
  const form = formIn(request.params.form);
  if (!form.ok) return answer(response, form);
  const paper = paperOfSlip(desk.store, request.params.id);
  sendBytes(response, paper.ok ? await writePaper(paper.value, form.value) : paper, form.value, "inline");
};

/** GET /api/editions/:id/slip.pdf?on=DAY: against the work as it is now. */
export const sendSlipAgainstNow = (desk: Desk) => async (request: WithIdAndForm, response: Response) => {
  const form = formIn(request.params.form);
  if (!form.ok) return answer(response, form);
  const on = checked(request.query.on, Day, "on");
  if (!on.ok) return answer(response, on);
  const paper = slipAgainstNow(desk.store, request.params.id, on.value);
  sendBytes(response, paper.ok ? await writePaper(paper.value, form.value) : paper, form.value, "inline");
};

function formIn(form: string): Outcome<PaperForm> {
  return checked(form, PaperForm, "the form of paper");
}

function askIn(query: unknown): Outcome<PaperAsk> {
  const text = checked(query, z.string(), "ask");
  if (!text.ok) return text;
  let value: unknown;
  try {
    value = JSON.parse(text.value);
  } catch {
    return refused(
      "body_not_json",
      "What paper is asked for stands in `ask` as JSON; what came cannot be read as that.",
    );
  }
  return checked(value, PaperAsk, "ask");
}

function sendBytes(response: Response, bytes: Outcome<Uint8Array>, form: PaperForm, as: "inline" | "attachment"): void {
  if (!bytes.ok) return void answer(response, bytes);
  response.set("Content-Security-Policy", PAGE_POLICY).type(MEDIA_TYPES[form]);
  if (as === "inline") response.set("Cache-Control", `private, max-age=${SHORTLY}`);
  response.send(Buffer.from(bytes.value));
}

function tellOf(desk: Desk, { id, who }: { id: string; who: string }, change: number, kind: Kind, row: string): void {
  desk.news.post({ change, id, who, touched: [{ kind, id: row }] });
}
