/** tests/papers-written/written.ts - a paper written, or a test that fails with the sentence of the refusal. */
import type { Paper } from "../../schema/paper.ts";
import { type PaperForm, writePaper } from "../../server/publish/write/write-paper.ts";

export async function written(paper: Paper, as: PaperForm): Promise<Uint8Array> {
  const made = await writePaper(paper, as);
  if (!made.ok) throw new Error(made.refusal.error.sentence);
  return made.value;
}
