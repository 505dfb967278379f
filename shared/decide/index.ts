export { assignments } from "./assignments.ts";
export type { Bounds } from "./bounded.ts";
export { type Count, countByBruteForce } from "./brute-force.ts";
export * from "./count.ts";
export * from "./narrowed.ts";
export * from "./puzzle.ts";
export { type Limits, type Peaks, USUAL_LIMITS } from "./tally.ts";
export type { ExcludedPair, ReadingShare, ReadingVerdict } from "./verdicts.ts";
export * from "./walk.ts";
