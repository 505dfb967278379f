/** Steps from outside: what is applied, and the words of every refusal. Rules T19 and T20. */
import fc from "fast-check";
import { Transform } from "prosemirror-transform";
import { describe, expect, it } from "vitest";
import { passageSchema } from "../../schema/editor.ts";
import { applySteps, mapsOfSteps, projectDoc } from "../../shared/text/index.ts";
import { doc, note, p } from "../kit/passage-doc.ts";
import { amend, anyEdits, anyPassageDoc } from "../kit/random-passage.ts";

const plain = doc(p("ab", note("n")), p("c"));
const replace = (from: unknown, to: unknown, content?: unknown) => ({
  stepType: "replace",
  from,
  to,
  ...(content === undefined ? {} : { slice: { content: [content] } }),
});

describe("applySteps", () => {
  it("[T19] applies steps in order", () => {
    const result = applySteps(plain, [replace(1, 2), replace(1, 1, { type: "text", text: "x" })]);
    expect(result.ok && projectDoc(result.doc)).toBe("xb\nc");
    expect(result.ok && [result.maps.length, result.docs.length]).toEqual([2, 2]);
  });

  it.each([
    ["steps_not_a_list", { stepType: "replace" }, "Expected a list of steps; got an object."],
    ["step_unreadable", [null], "Step 1 of 1 cannot be read: expected an object with a stepType, got null."],
    ["step_unreadable", [replace(1, 2), { stepType: "fly" }], "Step 2 of 2 cannot be read: No step type fly defined."],
    ["step_unreadable", [replace("1", 2)], "Step 1 of 1 cannot be read: Invalid input for ReplaceStep.fromJSON."],
    ["step_unreadable", [replace(1, 1, { type: "image" })], "Step 1 of 1 cannot be read: Unknown node type: image."],
    ["step_does_not_fit", [replace(1, 99)], "Position 99 out of range"],
    ["step_does_not_fit", [replace(Number.NaN, 2)], "does not fit this text"],
    [
      "step_does_not_fit",
      [{ stepType: "attr", pos: 3, attr: "text", value: 7 }],
      "does not fit this text: Expected value of type string for attribute text on type note, got number.",
    ],
    ["step_line_break", [replace(1, 1, { type: "text", text: "x\ny" })], "split the block there instead"],
    ["step_half_character", [replace(1, 1, { type: "text", text: "\ud83d" })], "half of a character"],
  ])("[T20] %s", (code, steps, words) => {
    const result = applySteps(plain, steps);
    expect(result).toMatchObject({ ok: false, code });
    expect(!result.ok && result.sentence).toContain(words);
  });

  it("[T19] gives what the editor has, through JSON", () => {
    fc.assert(
      fc.property(anyPassageDoc(), anyEdits(), (document, edits) => {
        const transform = new Transform(document);
        for (const edit of edits) {
          // Edits are scripted on whatever text there is; only the steps matter here.
          amend(
            transform,
            projectDoc(transform.doc)
              .split("")
              .map((unit) => ({ id: null, unit })),
            edit,
          );
        }
        const steps = JSON.parse(JSON.stringify(transform.steps));
        const result = applySteps(document, steps);
        if (!result.ok) expect(result.code).toBe("step_half_character");
        else {
          expect(result.doc.eq(transform.doc)).toBe(true);
          expect(mapsOfSteps(steps).map(String)).toEqual(transform.mapping.maps.map(String));
        }
      }),
    );
  });

  it("[T20] never throws, whatever comes", () => {
    const junk = fc.oneof(
      fc.jsonValue(),
      fc.record({
        stepType: fc.constantFrom(
          "replace",
          "replaceAround",
          "addMark",
          "removeMark",
          "attr",
          "docAttr",
          "addNodeMark",
        ),
        from: fc.oneof(fc.integer({ min: -2, max: 12 }), fc.jsonValue()),
        to: fc.oneof(fc.integer({ min: -2, max: 12 }), fc.jsonValue()),
        gapFrom: fc.integer({ min: -2, max: 12 }),
        gapTo: fc.integer({ min: -2, max: 12 }),
        insert: fc.integer({ min: -2, max: 12 }),
        pos: fc.integer({ min: -2, max: 12 }),
        attr: fc.constantFrom("text", "n", "__proto__"),
        value: fc.jsonValue(),
        mark: fc.oneof(fc.constant({ type: "emphasis" }), fc.jsonValue()),
        slice: fc.oneof(fc.constant({ content: [{ type: "paragraph" }], openStart: 1, openEnd: 1 }), fc.jsonValue()),
      }),
    );
    fc.assert(
      fc.property(fc.array(junk, { maxLength: 3 }), (steps) => {
        const result = applySteps(plain, steps);
        if (result.ok) passageSchema.nodeFromJSON(result.doc.toJSON()).check();
        else expect(result.sentence).toMatch(/[.]$/u);
      }),
      { numRuns: 400 },
    );
  });

  it("[T19] kept steps that cannot be read are a fault of the store", () => {
    expect(() => mapsOfSteps([{ stepType: "fly" }])).toThrow("Kept step 1 cannot be read: No step type fly defined.");
  });
});
