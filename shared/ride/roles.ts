/** shared/ride/roles.ts - the roles an exercise names, and whose an element is.
 *  May import: schema types. Keeps rule R34 (shared/ride/RULES.md). */
import type { DrillElement } from "../../schema/drill.ts";

/** Roles of the elements of a drill, in their order, each once. */
export function rolesOf(elements: readonly Pick<DrillElement, "role">[]): string[] {
  return [...new Set(elements.flatMap(({ role }) => (role === "" ? [] : [role])))];
}

/** Whether a rider of a role rides an element: his own, those without a role, and all where he has none. */
export function ridesIn(elementRole: string, role: string | null): boolean {
  return role === null || elementRole === "" || elementRole === role;
}

/** Roles that ride somewhere, in steps of their own or of everybody's: the one that sets out first before the others. To
 *  stand is not to ride. */
export function ridingRoles(elements: readonly DrillElement[]): string[] {
  const moving = elements.filter(({ actions }) =>
    actions.some(
      ({ verb, values }) =>
        verb === "ride" && values.some(({ slot, value }) => slot === "figure" && value !== null && value !== "halt"),
    ),
  );
  const others = moving.some(({ role }) => role === "") ? rolesOf(elements) : [];
  return [...new Set([...rolesOf(moving), ...others])];
}
