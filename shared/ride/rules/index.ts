export * from "./between-riders.ts";
export * from "./findings.ts";
export { type GapAsked, gapsAsked } from "./gaps.ts";
export { type StageVerdict, verdictsOf } from "./judge.ts";
export type { RuleRow, Verdict } from "./rule.ts";
export { RULES_TABLE, ruleTable, type SetRule } from "./table.ts";
