export * from "./mirror-ridden.ts";
export * from "./moments.ts";
export * from "./ridden.ts";
export * from "./ride-context.ts";
export * from "./ride-exercise.ts";
export * from "./ride-roles.ts";
export * from "./ride-together.ts";
export * from "./roles.ts";
