/** client/read/warrant-choice.tsx - why we believe something, as three lines with their words: solid stated, dashed
 *  implied, dotted supplied. One press changes it. */
import { useId } from "preact/hooks";
import { type Support, Warrant } from "../../schema/slot.ts";
import { withWarrant } from "./support.ts";

const MEANING: Record<Warrant, string> = {
  stated: "stated: the words say it",
  implied: "implied: the words imply it",
  supplied: "supplied: we supply it",
};

/** `marks` are those whose words may state it. `brief` shows the words of the chosen one alone; the others are lines. */
export function WarrantChoice({
  support,
  marks,
  label,
  brief = false,
  take,
}: {
  support: Support;
  marks: readonly string[];
  label: string;
  brief?: boolean;
  take: (support: Support) => void;
}) {
  const group = useId();
  return (
    <span class={`warrants ${brief ? "brief" : ""}`} role="radiogroup" aria-label={`Why we believe it: ${label}`}>
      {Warrant.options.map((warrant) => {
        const next = withWarrant(support, warrant, marks);
        const reason =
          next === null ? "stated needs words: select them, and add them under “rests on”" : MEANING[warrant];
        return (
          <label key={warrant} title={reason} class={support.warrant === warrant ? "on" : ""}>
            <input
              type="radio"
              name={group}
              aria-label={reason}
              checked={support.warrant === warrant}
              disabled={next === null}
              onChange={() => next && take(next)}
            />
            <span class={`w-${warrant}`} aria-hidden="true">
              {!brief || support.warrant === warrant ? warrant : ""}
            </span>
          </label>
        );
      })}
    </span>
  );
}
