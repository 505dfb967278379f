export type { Member } from "../../decide/members.ts";
export type { Pick } from "../../decide/puzzle.ts";
export * from "./answer.ts";
export * from "./exercise-puzzle.ts";
export * from "./puzzle-memory.ts";
export type { ToldMember } from "./told-member.ts";
export * from "./weighed.ts";
export * from "./what-next.ts";
export * from "./why-not.ts";
