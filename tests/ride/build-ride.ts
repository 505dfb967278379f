/** tests/ride/build-ride.ts - rows of small rides: a ground, stations, steps with one figure. */
import type { ActOf } from "../../schema/act.ts";
import type { RecordOf } from "../../schema/record.ts";
import type { ValueOf } from "../../schema/values.ts";
import { idOf, supplied, WorkBuilder } from "../drill/build-rows.ts";

type RideSlots = ActOf<"ride">["slots"];

/** A work of one exercise, ridden on a ground of its own where one is given. */
export class RideBuilder extends WorkBuilder {
  readonly home: string;

  constructor(ground?: { width: number; length: number; trackOffset?: number; is?: RecordOf<"grounds">["is"] }) {
    super("A work to ride");
    if (ground) {
      const { width, length, trackOffset = 0, is = "rectangular" } = ground;
      this.put("grounds", {
        id: idOf("ground"),
        work: this.work,
        rank: "a0",
        name: "the ground",
        is,
        slots: { width: metres(width), length: metres(length), trackOffset: metres(trackOffset) },
        note: "",
      });
    }
    this.home = this.exercise("a ride", { ground: ground ? idOf("ground") : null });
  }

  /** A point of the ground, in metres from its centre. */
  station(name: string, x: number, y: number, partner: string | null = null): string {
    return this.put("stations", {
      id: idOf(name),
      ground: idOf("ground"),
      rank: "a0",
      name,
      is: "point",
      outline: supplied({ is: "point", at: { x: Math.round(x * 1_000), y: Math.round(y * 1_000) } }),
      partner: partner === null ? null : idOf(partner),
      note: "",
    });
  }

  /** A step with one figure. */
  figure(name: string, figure: ValueOf<"figure">, slots: RideSlots = {}): string {
    const step = this.step(name, this.home);
    this.action(step, "ride", { figure: supplied(figure), ...slots });
    return step;
  }
}

export const metres = (of: number) => supplied({ is: "exact" as const, of });
export const at = (station: string) => supplied({ is: "station" as const, station: idOf(station) });
export const LEFT = supplied({ to: "left" as const, viewpoint: "rider" as const });
export const RIGHT = supplied({ to: "right" as const, viewpoint: "rider" as const });
export const times = (n: number) => supplied({ is: "times" as const, n });
export const timed = (timing: ValueOf<"timing">) => ({ timing: supplied(timing) });
