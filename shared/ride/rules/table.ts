/** shared/ride/rules/table.ts - every rule there is, and the severities a work sets for them.
 *  May import: schema types, shared/rank, siblings. A code once shipped is never used for anything else. */
import type { Rule } from "../../../schema/riding.ts";
import { compareCodeUnits } from "../../rank.ts";
import { assertedState } from "./asserted-state.ts";
import { bendSuitsGait, circleSize } from "./bends.ts";
import { WHOLE_RULES } from "./between-rules.ts";
import { sizesAllow } from "./kit.ts";
import { oneThing } from "./one-thing.ts";
import { passGrips } from "./passing.ts";
import { beginsThere, figureFits, joinsRidden, joinsShown, onGround } from "./place.ts";
import { pointInside } from "./point-inside.ts";
import { roomToPullUp } from "./pull-up.ts";
import { reinHandZone, reinsHeld } from "./reins.ts";
import { againFits, backWhereBegun, sameHand } from "./remembered.ts";
import type { RideRule, RuleRow } from "./rule.ts";
import { objectSupported, strongHold } from "./supports.ts";
import { parryAcross, threatCovered } from "./threats.ts";
import { leadBend, ownPoint, threatWeapon } from "./turning.ts";

/** The rules that one ride is held against, in the order they are shown. */
export const RIDE_RULES: readonly RideRule[] = Object.freeze([
  reinsHeld,
  objectSupported,
  strongHold,
  oneThing,
  passGrips,
  reinHandZone,
  assertedState,
  ownPoint,
  threatWeapon,
  parryAcross,
  threatCovered,
  leadBend,
  bendSuitsGait,
  circleSize,
  onGround,
  figureFits,
  beginsThere,
  joinsShown,
  joinsRidden,
  pointInside,
  roomToPullUp,
  sameHand,
  backWhereBegun,
  againFits,
  sizesAllow,
]);

/** Every rule as people see it, those between riders last. */
export const RULES_TABLE: readonly RuleRow[] = Object.freeze(
  [...RIDE_RULES, ...WHOLE_RULES].map(({ code, sentence, basis, source, severity, reach }) => ({
    code,
    sentence,
    basis,
    source,
    severity,
    reach,
  })),
);

/** A rule as a work has it. */
export interface SetRule extends Omit<RuleRow, "severity"> {
  severity: Rule["severity"];
  /** What it is when nobody sets it; null for a rule of the user's own. */
  usual: RuleRow["severity"] | null;
  /** The row of the work that sets it; null when none does. */
  row: Rule | null;
  /** False for a rule of the user's own, which no program checks. */
  checked: boolean;
}

/** The table as a work has set it: built-in rules first, then the work's own. Of several rows with one code the last by
 *  id counts, whatever order they come in. */
export function ruleTable(rules: readonly Rule[]): SetRule[] {
  const rows = new Map([...rules].sort((a, b) => compareCodeUnits(a.id, b.id)).map((row) => [row.code, row]));
  const builtIn = RULES_TABLE.map((rule): SetRule => {
    const row = rows.get(rule.code) ?? null;
    return { ...rule, severity: row?.severity ?? rule.severity, usual: rule.severity, row, checked: true };
  });
  const known = new Set(RULES_TABLE.map(({ code }) => code));
  const own = [...rows.values()]
    .filter(({ code }) => !known.has(code))
    .sort((a, b) => compareCodeUnits(a.code, b.code))
    .map(({ code, sentence, basis, severity, reach }, at, all): SetRule => {
      const row = rows.get(all[at]?.code ?? code) ?? null;
      return { code, sentence, basis, source: "", severity, reach, usual: null, row, checked: false };
    });
  return [...builtIn, ...own];
}
