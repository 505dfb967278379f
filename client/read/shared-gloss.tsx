/** client/read/shared-gloss.tsx - words that speak of a thing the whole work shares: a hold, a movement, a station, a threat. */
import { one } from "../state/rows.ts";
import { GlossHead } from "./gloss-head.tsx";
import { useSharedForm } from "./shared-open.ts";

const WHAT = { holds: "hold", movements: "movement", stations: "station", threats: "threat" } as const;

export function SharedGloss({ kind, id }: { kind: keyof typeof WHAT; id: string }) {
  const row = one(kind, id);
  const station = kind === "stations" ? one("stations", id) : null;
  useSharedForm({ kind, id }, kind === "stations" ? "grounds" : kind, station?.ground ?? id);
  if (row === null) return null;
  return (
    <>
      <GlossHead thing={{ kind, id }} sign="" title={row.name} by={WHAT[kind]} />
      {row.note && <p class="meta">{row.note}</p>}
    </>
  );
}
