/** shared/decide/schedule.ts - when each crux comes into play, and when it leaves.
 *  May import: siblings in shared/decide. A crux is in play from the first to the last stage it touches. What ties cruxes
 *  together (ties, conditions to arise, confidences given another reading) needs all of them in play at one moment, and
 *  so lengthens that. A crux with one value only costs nothing: it is in play throughout. */
import type { IndexedPuzzle } from "./indexed.ts";

export type Event = { is: "enter" | "leave"; crux: number } | { is: "stage"; stage: number };

/** Every stage once, in order, and every crux once in and once out. `values` are those each crux may take here. */
export function schedule(puzzle: IndexedPuzzle, values: readonly (readonly number[])[]): Event[] {
  const links = [...puzzle.constraints, ...puzzle.factors].map(({ scope }) => scope);
  const linksOf = values.map((): number[] => []);
  for (const [link, scope] of links.entries()) for (const crux of scope) linksOf[crux]?.push(link);
  const lastStage = values.map(() => -1);
  for (const [stage, touched] of puzzle.touches.entries()) for (const crux of touched) lastStage[crux] = stage;

  const events: Event[] = [];
  const entered = values.map(() => false);
  const inPlay = new Set<number>();
  const enter = (crux: number): void => {
    if (entered[crux]) return;
    entered[crux] = true;
    events.push({ is: "enter", crux });
    if (!alone(crux)) inPlay.add(crux);
  };
  const alone = (crux: number): boolean => (values[crux]?.length ?? 0) <= 1;
  /** Cruxes that are tied to this one and not yet in. */
  const awaited = (crux: number): number[] => [
    ...new Set((linksOf[crux] ?? []).flatMap((link) => links[link]?.filter((other) => !entered[other]) ?? [])),
  ];

  /** Lets go of every crux that no stage after this one touches. Where one only waits for cruxes that no stage will bring
   *  in, they are brought in for it, fewest first. */
  const settle = (stage: number): void => {
    for (;;) {
      const done = [...inPlay].filter((crux) => (lastStage[crux] ?? -1) <= stage);
      const waiting = done.map((crux) => ({ crux, others: awaited(crux) }));
      const free = waiting.filter(({ others }) => others.length === 0);
      for (const { crux } of free) {
        inPlay.delete(crux);
        events.push({ is: "leave", crux });
      }
      if (free.length > 0) continue;
      const [next] = waiting
        .filter(({ others }) => others.every((other) => (lastStage[other] ?? -1) <= stage))
        .sort((a, b) => a.others.length - b.others.length);
      if (!next) return;
      for (const other of next.others) enter(other);
    }
  };

  const single = [...values.keys()].filter(alone);
  for (const crux of single) enter(crux);
  for (const [stage, touched] of puzzle.touches.entries()) {
    for (const crux of touched) enter(crux);
    events.push({ is: "stage", stage });
    settle(stage);
  }
  const rest = [...values.keys()].sort((a, b) => (linksOf[a]?.length ?? 0) - (linksOf[b]?.length ?? 0));
  for (const crux of rest) {
    enter(crux);
    settle(puzzle.touches.length);
  }
  for (const crux of single) events.push({ is: "leave", crux });
  return events;
}

/** The most cruxes with more than one value that are in play at once. */
export function mostInPlay(events: readonly Event[], values: readonly (readonly number[])[]): number {
  let [now, most] = [0, 0];
  for (const event of events) {
    if (event.is === "stage" || (values[event.crux]?.length ?? 0) <= 1) continue;
    now += event.is === "enter" ? 1 : -1;
    most = Math.max(most, now);
  }
  return most;
}
