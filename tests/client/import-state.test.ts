/** tests/client/import-state.test.ts - what a text on its way in is called and taken for before a person says otherwise. */
import "../kit/no-window.ts";
import { beforeEach, describe, expect, test } from "vitest";
import { change, chooseText, exerciseTitle, file, preview, target } from "../../client/import/import-state.ts";
import type { ImportedFile, ImportedText } from "../../schema/imported.ts";

const text = (number: number, fields: Partial<ImportedText> = {}) =>
  ({ number, title: "", author: "", translator: "", language: "", urn: "", passages: [], ...fields }) as ImportedText;

function look(...texts: ImportedText[]): void {
  preview.value = { texts, dropped: [] } as unknown as ImportedFile;
  chooseText(texts[0] ?? null);
}

beforeEach(() => {
  file.value = null;
  change({ exerciseTitle: null });
});

describe("the title of the exercise", () => {
  const [first, second] = [text(1, { title: "Of the lance" }), text(2, { title: "Of the pole" })];

  test("follows the chosen text", () => {
    look(first, second);
    expect(exerciseTitle.value).toBe("Of the lance");
    chooseText(second);
    expect(exerciseTitle.value).toBe("Of the pole");
    look(text(1));
    expect(exerciseTitle.value).toBe("pasted text");
  });

  test("stays as it was typed, even when it was emptied", () => {
    look(first, second);
    change({ exerciseTitle: "The turn" });
    chooseText(second);
    expect(exerciseTitle.value).toBe("The turn");
    change({ exerciseTitle: "" });
    chooseText(first);
    expect(exerciseTitle.value).toBe("");
  });
});

describe("a text is taken for", () => {
  const cases: [where: string, pasted: boolean, fields: Partial<ImportedText>, is: "translation" | "original"][] = [
    ["pasted, of no language", true, {}, "translation"],
    ["pasted, Latin", true, { language: "la" }, "original"],
    ["a file of no language", false, {}, "original"],
    ["a file in English", false, { language: "en" }, "translation"],
    ["a file with a translator", false, { language: "fr", translator: "the colleague" }, "translation"],
  ];
  test.each(cases)("%s", (_where, pasted, fields, is) => {
    file.value = pasted ? null : new File([], "text.txt");
    look(text(1, fields));
    expect(target.value.layerIs).toBe(is);
  });
});
