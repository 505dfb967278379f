export { assignments } from "./assignments.ts";
export {
  type Count,
  countByBruteForce,
  type ExcludedPair,
  type ReadingShare,
  type ReadingVerdict,
} from "./brute-force.ts";
export * from "./count.ts";
export * from "./narrowed.ts";
export * from "./puzzle.ts";
export * from "./walk.ts";
