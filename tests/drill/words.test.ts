/** tests/drill/words.test.ts - values and acts in short English. */
import { describe, expect, test } from "vitest";
import type { Act, Verb } from "../../schema/act.ts";
import type { ValueKind } from "../../schema/values.ts";
import { actWords } from "../../shared/drill/act-words.ts";
import { partOf } from "../../shared/drill/part-of.ts";
import { slotLabel } from "../../shared/drill/slot-labels.ts";
import { type Names, valueWords } from "../../shared/drill/words.ts";
import { supplied } from "./build-rows.ts";

const names: Names = (_kind, id) => (id === "gone" ? null : id);

describe("values in words", () => {
  const table: [kind: ValueKind, value: unknown, expected: string][] = [
    ["hand", "left", "the left hand"],
    ["hand", "both", "both hands"],
    ["hand", "the other", "the other hand"],
    ["object", "spear", "spear"],
    ["object", "gone", "(no longer there)"],
    ["zone", "balance", "at the balance"],
    ["bearing", { is: "clock", hour: 9 }, "left"],
    ["bearing", { is: "clock", hour: 12 }, "forward"],
    ["bearing", { is: "clock", hour: 10 }, "forward left (10 o’clock)"],
    ["bearing", { is: "toward", what: "the onlookers" }, "toward the onlookers"],
    ["turn", { to: "left", viewpoint: "rider" }, "left"],
    ["turn", { to: "left", viewpoint: "onlookers" }, "left (as the onlookers see it)"],
    ["length", { is: "exact", of: 0.1524 }, "0.15 m (6 in)"],
    ["length", { is: "about", of: 10, spread: 0 }, "about 10 m (33 ft)"],
    ["length", { is: "about", of: 10, spread: 2 }, "about 10 m, 2 m either way (33 ft)"],
    ["length", { is: "range", from: 8, to: 10 }, "8 to 10 m (26 to 33 ft)"],
    ["length", { is: "exact", of: 0 }, "0 m (0 in)"],
    ["angle", { is: "about", of: 45, spread: 0 }, "about 45°"],
    ["mass", { is: "exact", of: 1.8 }, "1.8 kg"],
    ["count", { is: "times", n: 2 }, "twice"],
    ["count", { is: "times", n: 7 }, "7 times"],
    ["count", { is: "until", event: "he obeys" }, "until he obeys"],
    ["contact", { with: "thigh", side: "right", degree: "touches" }, "touching the right thigh"],
    ["contact", { with: "other", words: "the side", degree: "near" }, "near the side"],
    ["spin", { plane: "level", sense: "clockwise", viewpoint: "from above" }, "clockwise, level (seen from above)"],
    ["timing", { is: "at", over: 1, of: 3 }, "at a third of the way"],
    ["timing", { is: "during", from: [1, 4], to: [1, 2] }, "from a quarter of the way to half-way"],
    ["timing", { is: "with", action: "hook the scabbard" }, "together with: hook the scabbard"],
    ["place", { is: "station", station: "the well" }, "the well"],
    ["level", "ground", "to the ground"],
  ];
  test.each(table)("%s %j is “%s”", (kind, value, expected) => {
    expect(valueWords(kind, value as never, names)).toBe(expected);
  });
});

describe("the column of what has no verb of its own", () => {
  const table: [slots: Record<string, unknown>, besides: boolean, column: string][] = [
    [{}, false, "rider"],
    [{ who: "horse" }, false, "horse"],
    [{ who: "right hand" }, false, "right hand"],
    [{ who: "object" }, false, "shaft"],
    [{ who: "rider", object: "lance" }, false, "rider"],
    [{ object: "lance" }, false, "shaft"],
    [{ object: "sheath" }, true, "rider"],
  ];
  test.each(table)("%j, besides %s: %s", (slots, besides, column) => {
    const said = Object.fromEntries(Object.entries(slots).map(([slot, value]) => [slot, supplied(value)]));
    expect(partOf({ verb: "other", slots: said } as Act, null, besides)).toBe(column);
  });
});

describe("acts in words", () => {
  const about = { about: { is: "words", words: "the well" }, laps: { is: "times", n: 1 } };
  const left = { to: "left", viewpoint: "rider" };
  const right = { to: "right", viewpoint: "rider" };
  const seen = { to: "left", viewpoint: "onlookers" };
  const table: [verb: Verb, slots: Record<string, unknown>, expected: string][] = [
    ["ride", { figure: "circle", turn: left, ...about }, "circle left, about the well, once"],
    [
      "ride",
      { figure: "turn", amount: "half", turn: left, manner: "on the haunches" },
      "half turn left on the haunches",
    ],
    ["ride", { figure: "half volte", turn: left, size: { is: "exact", of: 8 } }, "half volte left, of 8 m (26 ft)"],
    ["ride", { figure: "part circle", amount: "quarter", turn: right }, "a quarter of a circle right"],
    ["ride", { figure: "part circle", amount: "full" }, "a full circle"],
    ["ride", { figure: "part circle", turn: left }, "part circle left"],
    ["ride", { figure: "along the wall", turn: left }, "along the wall, on the left rein"],
    ["ride", { figure: "along the wall", turn: seen }, "along the wall, left (as the onlookers see it)"],
    ["ride", { figure: "along the wall" }, "along the wall"],
    ["ride", {}, "ride"],
    ["go at", { gait: "canter", pace: "collected", lead: "left" }, "collected canter, left lead"],
    ["go at", { pace: "increased" }, "increase the pace"],
    ["go at", { pace: "full speed" }, "full speed"],
    ["take", { object: "spear", zone: "balance", hand: "left" }, "take the spear at the balance, with the left hand"],
    ["release", {}, "let go of it"],
    ["pass", { object: "the spear", from: "left", to: "right" }, "pass the spear from the left hand to the right hand"],
    ["change reins", { to: "left" }, "change the reins to the left hand"],
    ["lay reins", { on: "neck" }, "lay the reins on the neck"],
    ["carry", { object: "spear", bearing: { is: "clock", hour: 9 }, level: "low" }, "the spear: point left, low"],
    ["draw", { object: "sabre", from: "scabbard" }, "draw the sabre, from the scabbard"],
    ["parry", { object: "spear", to: left }, "parry with the spear, to the left"],
    ["wait", { how: "a slight pause" }, "wait, a slight pause"],
    ["other", { words: "salute the lady" }, "salute the lady"],
    ["other", { who: "object", object: "the lance", words: "takes the ring" }, "takes the ring"],
    ["raise", { object: "the lance" }, "raise the lance"],
    ["raise", { object: "his lance" }, "raise his lance"],
  ];
  test.each(table)("%s %j is “%s”", (verb, slots, expected) => {
    const said = Object.fromEntries(Object.entries(slots).map(([slot, value]) => [slot, supplied(value)]));
    expect(actWords({ verb, slots: said } as Act, names)).toBe(expected);
  });

  test("what a crux holds is said to be not settled", () => {
    const act = { verb: "ride", slots: { figure: { is: "in crux", crux: "k" } } } as unknown as Act;
    expect(actWords(act, names)).toBe("(not settled)");
    expect(actWords(act, names, null)).toBe("ride");
  });

  test("slots have labels; one that is not ours keeps its name", () => {
    expect([slotLabel("turn"), slotLabel("zone"), slotLabel("strange")]).toEqual([
      "to which side",
      "where it is held",
      "strange",
    ]);
  });
});
