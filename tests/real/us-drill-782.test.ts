/** tests/real/us-drill-782.test.ts - the sabre in the US Infantry Drill Regulations, from the digital text to the drill
 *  and the count. Source: US War Department, Infantry Drill Regulations 1911 with changes to 1917, paragraphs 782-785. */
import { expect, test } from "vitest";
import type { Drill } from "../../schema/drill.ts";
import { countByBruteForce } from "../../shared/decide/brute-force.ts";
import type { Puzzle } from "../../shared/decide/puzzle.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { stateAfterEach } from "../../shared/drill/state-after-each.ts";
import { idOf } from "../drill/build-rows.ts";
import { describeWithCheckData } from "../kit/check-data.ts";
import { expectTrueToSource } from "./drill-claims.ts";
import { puzzleCruxes } from "./puzzle-cruxes.ts";
import { textOf, wordsByReference } from "./source-texts.ts";
import { usDrillModel } from "./us-drill-model.ts";

describeWithCheckData("US Infantry Drill Regulations 782–785", (path) => {
  const text = textOf(path("texts", "us-drill-1911", "20866-8.txt"), () => true);
  const { rows, exercises, knotCrux, sameTime, ground } = usDrillModel(text);
  const words = wordsByReference(text);
  const drill = (exercise: string, way: Drill["way"]) => compileDrill(rows, exercise, { way });
  const lines = (compiled: Drill) =>
    compiled.elements.map(({ number, role, actions, text: told }) =>
      [number, role, ...actions.map(({ part, text: act }) => `${part}: ${act}`), told].filter((part) => part !== ""),
    );

  test("each drill is true to its source, mounted and on foot", () => {
    for (const exercise of Object.values(exercises)) {
      for (const way of ["mounted", "on foot"] as const) {
        expectTrueToSource(drill(exercise, way), (_layer, reference) => words.get(reference));
      }
    }
  });

  const first = [
    "left hand: unhook the scabbard, with the thumb on the end of the hook, two fingers lifting the upper ring",
    "left hand: take the scabbard at the upper band",
    "left hand: bring the hilt a little forward",
    "right hand: take the sabre by the hilt",
    "shaft: draw the sabre, from the scabbard, 0.15 m (6 in), with the right hand",
    "left hand: the scabbard, resting on the thigh",
  ];
  const second = [
    "shaft: draw the sabre, with the right hand, quickly",
    "shaft: the sabre: point toward the right front, about 45°, edge down, with the right hand, the arm at its full extent, the sabre in a straight line with it",
    "rider: wait, a slight pause",
    "shaft: the sabre, edge to the front, touching the shoulder, with the back of the blade",
    "right hand: near the side, arm nearly extended, elbow back",
    "right hand: keep the sabre by the hilt, third and fourth fingers back of the grip",
    "left hand: hook the scabbard, thumb through the upper ring, two fingers supporting it",
    "left hand: let go of the scabbard",
    "left hand: near the side",
    "shaft: the sabre: carry, with the right hand",
  ];

  test("782 on foot: two motions, each hand in its column", () => {
    expect(lines(drill(exercises.draw, "on foot"))).toEqual([
      [1, ...first],
      [2, ...second],
    ]);
  });

  test("782 mounted: unhooked before mounting, then as before, with the exceptions of the text", () => {
    const officers = "officers and noncommissioned officers";
    expect(lines(drill(exercises.draw, "mounted"))).toEqual([
      [1, officers, "shaft: unhook the scabbard"],
      [
        2,
        officers,
        "right hand: take the sabre by the hilt, over the bridle hand",
        "rider: does nothing, the rein hand",
        "right hand: touching the right thigh",
        expect.stringMatching(
          /^as “draw, first motion” to “draw, second motion”, save: .*“take the sabre by the hilt, with the right hand, over the bridle hand” in place of “take the sabre by the hilt, with the right hand”/,
        ),
      ],
    ]);
    const [again] = drill(exercises.draw, "mounted").elements.slice(-1);
    expect(again?.text.match(/without/g)?.length).toBe(8);
  });

  test("mounted and on foot differ in nothing else", () => {
    const told = (exercise: string) => {
      const [mounted, onFoot] = (["mounted", "on foot"] as const).map((way) =>
        drill(exercise, way).elements.flatMap(({ actions }) => actions.map(({ text: act }) => act)),
      );
      const only = (some: string[] = [], others: string[] = []) => some.filter((act) => !others.includes(act));
      return { mounted: only(mounted, onFoot), onFoot: only(onFoot, mounted) };
    };
    expect(told(exercises.present)).toEqual({
      mounted: ["the sabre: point toward a little to the right and front of the stirrup", "near the thigh, behind it"],
      onFoot: ["the sabre: point toward the front of the right foot", "near the side, arm extended"],
    });
    expect(told(exercises.order)).toEqual({ mounted: [], onFoot: [] });
    expect(told(exercises.honors)).toEqual({ mounted: [], onFoot: [] });
    expect(drill(exercises.draw, "on foot").standing.map(({ text: said }) => said)).toEqual([
      "On foot, whenever nothing else is said",
    ]);
    expect(drill(exercises.draw, "mounted").standing).toEqual([]);
  });

  test("784 in honours: officers do both motions, enlisted men the first, at the second command", () => {
    expect(
      drill(exercises.honors, "on foot").elements.map(({ role, text: told, values }) => [role, told, values[0]?.text]),
    ).toEqual([
      ["officers", "as “present, first motion”", "the command “present”"],
      ["officers", "as “present, second motion”", "the command “arms”"],
      ["enlisted men with the sabre", "as “present, first motion”", "the command “arms”; the second motion is omitted"],
    ]);
  });

  test("the knot and the point on or near the ground are left free, with a default for computing", () => {
    const order = drill(exercises.order, "on foot").elements[0];
    expect(order?.actions[1]?.text).toBe("the sabre, edge down, near the ground");
    expect(order?.cruxes[0]?.taken).toMatchObject({ because: "left free", reading: idOf("near it") });
    const used = compileDrill(rows, exercises.draw, { choice: [{ crux: knotCrux, reading: idOf("it is used") }] });
    expect(used.elements.filter(({ is }) => is === "advice").map(({ actions }) => actions[0]?.text)).toEqual([
      "hook the sabre knot to the right wrist",
    ]);
    expect(drill(exercises.draw, "mounted").elements.some(({ is }) => is === "advice")).toBe(false);
  });

  test("the hands after each motion, on foot and mounted", () => {
    const sentences = (exercise: string, way: Drill["way"]) =>
      stateAfterEach(rows, drill(exercise, way), { way }).map(({ figure }) => figure.sentence);
    expect(sentences(exercises.draw, "on foot")).toEqual([
      "After step 1: on foot; sabre in the right and perhaps the left hand, where the point looks and how high is not known; scabbard in the left and perhaps the right hand.",
      "After step 2: on foot, sabre in the right hand, point toward the right front, how high is not known.",
    ]);
    const [, mounted] = stateAfterEach(rows, drill(exercises.draw, "mounted"), { way: "mounted" });
    expect(mounted?.state.objects[0]?.grip).toEqual({
      left: { is: "unknown" },
      right: { is: "known", value: "hilt" },
    });
    expect(mounted?.state.doing.right).toEqual({
      is: "known",
      value: { is: "rests", on: { with: "thigh", side: "right", degree: "touches" } },
    });
  });

  /** By hand: at the same time as what (2), whether the knot is used (2), the point on or near the ground (2): 8
   *  assignments, none ties another. The left hand presses the scabbard to the thigh in the first motion; how long is not
   *  said: until the second begins, or until the blade is out. A hand does one thing: hooking "throughout" breaks the rule
   *  where it still presses, hooking with the shoulder never does. So all 8 hold, and the 4 with the shoulder hold surely. */
  test("the count over stages is the one worked by hand: 8 hold, 4 surely", () => {
    const puzzle: Puzzle = {
      ...puzzleCruxes(rows, [sameTime, knotCrux, ground]),
      start: ["at the side"],
      stages: [
        {
          id: "first motion",
          touches: [],
          run: () =>
            ["pressing", "free"].map((state) => ({ state, hits: [], supplied: `then the left hand is ${state}` })),
        },
        {
          id: "second motion",
          touches: [sameTime],
          run: (state, reading) => {
            const clash = state === "pressing" && reading(sameTime) === idOf("throughout the motion");
            return [{ state: "hooked", hits: clash ? [{ rule: "a hand does one thing", bars: true }] : [] }];
          },
        },
        { id: "order", touches: [ground], run: (state) => [{ state, hits: [] }] },
      ],
    };
    const count = countByBruteForce(puzzle);
    expect([count.all, count.holding, count.surelyHolding]).toEqual([8n, 8n, 4n]);
    expect(count.witnesses[0]?.steps.map(({ state }) => state)).toEqual(["pressing", "hooked", "hooked"]);
  });
});
