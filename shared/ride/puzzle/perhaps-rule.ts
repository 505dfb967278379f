/** shared/ride/puzzle/perhaps-rule.ts - a rule of which it cannot be told whether it is broken, by a name of its own.
 *  May import: nothing. In a puzzle it is a hit that may be or not; so it is never taken for one that surely is. */

export const perhapsRule = (rule: string): string => `${rule}?`;

export const isPerhaps = (rule: string): boolean => rule.endsWith("?");
