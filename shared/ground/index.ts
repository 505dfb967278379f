export * from "./distances.ts";
export { AMOUNTS, type Amount, type CircleAsk } from "./figures/circle.ts";
export type { EightAsk, OblongAsk } from "./figures/eight.ts";
export {
  type FigureCode,
  type FigureNote,
  type FigureRefusal,
  type FigureResult,
  type Manege,
  reinOf,
} from "./figures/figure.ts";
export type { HalfVolteAsk } from "./figures/half-volte.ts";
export type { HaltAsk, ReinBackAsk } from "./figures/rein-back.ts";
export * from "./figures/ride-figure.ts";
export type { SerpentineAsk } from "./figures/serpentine.ts";
export type { SpiralAsk } from "./figures/spiral.ts";
export type { StraightAsk } from "./figures/straight.ts";
export type { Manner, TurnAsk } from "./figures/turn.ts";
export type { AcrossAsk, WallAsk } from "./figures/wall.ts";
export * from "./fit.ts";
export * from "./gaits.ts";
export * from "./grounds.ts";
export * from "./join.ts";
export * from "./lean.ts";
export * from "./moving-span.ts";
export * from "./nearest.ts";
export * from "./path.ts";
export * from "./path-data.ts";
export * from "./piece.ts";
export * from "./plane.ts";
export * from "./riders.ts";
export * from "./samples.ts";
export * from "./school-grounds.ts";
export * from "./stations.ts";
export * from "./timed-path.ts";
export * from "./track.ts";
export * from "./usual.ts";
