/** client/read/gloss-head.tsx - the first line of a gloss. */
import type { ComponentChildren } from "preact";
import { choose, opened, sameThing, type Thing } from "./focus.ts";

/** Choosing it brings the thing forward and opens its form. `sign` is the number, dagger or query. */
export function GlossHead({
  thing,
  sign,
  title,
  by,
  opens = true,
}: {
  thing: Thing;
  sign: string;
  title: ComponentChildren;
  by: string;
  /** False for what has no form here. */
  opens?: boolean;
}) {
  return (
    <h3>
      <button
        type="button"
        class="gloss-title"
        onClick={() => choose(thing, opens)}
        aria-expanded={opens ? sameThing(opened.value, thing) : undefined}
      >
        {sign && <b>{sign}</b>} {title}
      </button>
      {by && <span class="by">{by}</span>}
    </h3>
  );
}
