/** tests/kit/page-words.ts - selecting words of a passage in a real page, as a person does with mouse or keyboard.
 *  May import: playwright-core types. */
import type { Locator, Page } from "playwright-core";

/** Selects the first place where `words` stand in the passage text (the leading layer unless `pane` says another). */
export async function selectWords(
  page: Page,
  words: string,
  pane = page.locator(".text-pane .ProseMirror").first(),
): Promise<void> {
  await pane.focus();
  const found = await pane.evaluate((root, wanted) => {
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    const pieces: { node: Text; from: number }[] = [];
    let text = "";
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      // What a mark's head says ("1", "†") is not part of the passage.
      if (node.parentElement?.closest(".head")) continue;
      pieces.push({ node: node as Text, from: text.length });
      text += node.textContent ?? "";
    }
    const at = text.indexOf(wanted);
    if (at === -1) return false;
    const place = (offset: number) => {
      const piece = pieces.findLast((candidate) => candidate.from <= offset);
      return piece ? ([piece.node, offset - piece.from] as const) : null;
    };
    const [start, end] = [place(at), place(at + wanted.length)];
    if (!start || !end) return false;
    window.getSelection()?.setBaseAndExtent(...start, ...end);
    return true;
  }, words);
  if (!found) throw new Error(`The passage on the page has no words “${words}”.`);
  await page.getByRole("toolbar", { name: "What these words are" }).waitFor();
}

/** Presses a letter on the selected words. */
export async function pressOnWords(page: Page, words: string, key: string): Promise<void> {
  await selectWords(page, words);
  await page.keyboard.press(key);
}

/** The gloss that is forward. */
export const activeGloss = (page: Page): Locator => page.locator(".gloss.active");
