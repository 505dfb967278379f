/** shared/decide/members.ts - what can be dropped so that more holds: picks, single rules at single stages, stated values.
 *  May import: siblings in shared/decide. Dropping only ever enlarges: what held before still holds. */
import type { Enforced } from "./automaton.ts";
import type { IndexedPuzzle } from "./indexed.ts";
import type { Layer, StageLayer } from "./layers.ts";
import type { Pick } from "./puzzle.ts";
import type { Runs } from "./runs.ts";

export type Member =
  | { is: "pick"; crux: string; reading: string }
  | { is: "rule"; stage: string; rule: string }
  | { is: "stated"; stage: string; value: string };

/** All members, in groups: each pick by itself, then stage by stage what rules and stated values there are. Rules are all
 *  that could bar if nothing else did. */
export function membersOf(
  puzzle: IndexedPuzzle,
  picks: readonly Pick[],
  layers: readonly Layer[],
  runs: Runs,
): Member[][] {
  const groups: Member[][] = picks.map(({ crux, reading }) => [{ is: "pick", crux, reading }]);
  let states = new Set(puzzle.puzzle.start.map((state) => runs.numberOf(state)));
  for (const layer of layers) {
    if (layer.is !== "stage") continue;
    const { id = "", stated = [] } = puzzle.puzzle.stages[layer.stage] ?? {};
    const { rules, next } = looseStage(layer, states, stated, runs);
    const group: Member[] = [
      ...[...rules].sort().map((rule): Member => ({ is: "rule", stage: id, rule })),
      ...stated.map((value): Member => ({ is: "stated", stage: id, value })),
    ];
    if (group.length > 0) groups.push(group);
    states = next;
  }
  return groups;
}

/** Every way on from every state, whether it bars or not, said or not said. */
function looseStage(
  { stage, groups }: StageLayer,
  states: ReadonlySet<number>,
  stated: readonly string[],
  runs: Runs,
): { rules: Set<string>; next: Set<number> } {
  const rules = new Set<string>();
  const next = new Set<number>();
  const unsaid = stated.length > 0 ? [[], stated] : [[]];
  for (const state of states) {
    for (const values of groups) {
      for (const without of unsaid) {
        for (const way of runs.outcome(stage, state, values, without).ways) {
          next.add(way.state);
          for (const { rule, bars } of way.hits) if (bars) rules.add(rule);
        }
      }
    }
  }
  return { rules, next };
}

/** What is left of the rules and of what is said when these members are dropped. */
export function enforcedWithout(puzzle: IndexedPuzzle, dropped: readonly Member[]): Enforced {
  const rules = new Map<string, Set<string>>();
  const unsaid = new Map<string, string[]>();
  for (const member of dropped) {
    if (member.is === "rule") rules.set(member.stage, (rules.get(member.stage) ?? new Set()).add(member.rule));
    if (member.is === "stated") unsaid.set(member.stage, [...(unsaid.get(member.stage) ?? []), member.value].sort());
  }
  const idOf = (stage: number): string => puzzle.puzzle.stages[stage]?.id ?? "";
  return {
    bars: (stage, rule) => rules.get(idOf(stage))?.has(rule) !== true,
    without: (stage) => unsaid.get(idOf(stage)) ?? [],
  };
}
