/** schema/issue.ts - issuing a paper as an edition, and what window and server say of editions, corrections and reports.
 *  May import: zod, siblings. */
import { z } from "zod";
import { Day, Id, Name } from "./id.ts";
import { Paper, PaperAsk } from "./paper.ts";
import type { Edition, Report, Slip } from "./teaching.ts";

export const PAPER_FORMS = ["pdf", "docx", "html"] as const;
export const PaperForm = z.enum(PAPER_FORMS);
export type PaperForm = z.infer<typeof PaperForm>;

/** POST /api/editions: freezes a paper. Sending it twice under one id issues it once. */
export const IssueRequest = z.strictObject({
  /** Id of the change. */
  id: Id,
  /** Id of the edition it makes. */
  edition: Id,
  who: z.string().trim().min(1).max(200),
  sitting: Id.nullable(),
  ask: PaperAsk,
  title: Name,
  issued: Day,
  forms: z.array(PaperForm).min(1).max(PAPER_FORMS.length),
  recipients: z.array(z.strictObject({ who: Name, on: Day })).max(500),
});
export type IssueRequest = z.infer<typeof IssueRequest>;

/** GET /api/styles: citation styles by name, the program's own first; and files that cannot be used, each with why. */
export interface StylesThere {
  styles: { name: string; inNotes: boolean }[];
  broken: { file: string; sentence: string }[];
}

/** GET /api/paper.sides?ask=JSON: the sides of its PDF. */
export interface SidesOfPaper {
  sides: number;
}

/** What an edition keeps of how it was made. */
export const IssuedModel = z.strictObject({ ask: PaperAsk, paper: Paper });
export type IssuedModel = z.infer<typeof IssuedModel>;

export interface Issued {
  edition: string;
  number: number;
  check: string;
  change: number;
}

/** GET /api/works/:id/editions, newest first. */
export interface EditionLine {
  edition: Omit<Edition, "model">;
  version: number;
  ask: PaperAsk;
  check: string;
  /** How many items it says otherwise than the same paper would say now; null where it can no longer be made. */
  differences: number | null;
  /** Where it does, each place once, in its order: "Step 5", "Throughout", "New step 6". */
  changed: string[];
  /** Why it can no longer be made, in words; "" when it can. */
  problem: string;
  /** The steps as it numbers them, to report an error against. */
  steps: { element: string; shown: string; words: string }[];
  reports: { version: number; value: Report }[];
  /** Slips that correct it. */
  slips: Pick<Slip, "id" | "to" | "on">[];
}

/** GET /api/editions/:id/compare?with=ID (without: as it would be made now). */
export interface Comparison {
  entries: Slip["entries"];
  /** What is only numbered anew, in words; "" when nothing is. */
  renumbered: string;
}

/** POST /api/slips: keeps the corrections of one edition by another. */
export const SlipRequest = z.strictObject({
  id: Id,
  slip: Id,
  who: z.string().trim().min(1).max(200),
  sitting: Id.nullable(),
  from: Id,
  to: Id,
  on: Day,
});
export type SlipRequest = z.infer<typeof SlipRequest>;
