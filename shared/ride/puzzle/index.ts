export * from "./answer.ts";
export * from "./exercise-puzzle.ts";
export * from "./weighed.ts";
export * from "./what-next.ts";
export * from "./why-not.ts";
