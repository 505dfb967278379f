/** client/import/passage-list.tsx - the passages as they would be stored, and everything that was left out, with its place. */
import { useSignal } from "@preact/signals";
import type { Dropped, FilePlace, ImportedPassage } from "../../schema/imported.ts";
import { formatReferences } from "../../shared/cite/format-reference.ts";

/** How many rows are drawn before more are asked for. */
const SHOWN_AT_FIRST = 60;

export function PassageList({
  passages,
  dropped,
}: {
  passages: readonly ImportedPassage[];
  dropped: readonly Dropped[];
}) {
  const shown = useSignal(SHOWN_AT_FIRST);
  return (
    <div class="would-be">
      <section>
        <h2>{passages.length === 1 ? "1 passage" : `${passages.length} passages`}, as they would be stored</h2>
        <ol>
          {passages.slice(0, shown.value).map((passage, index) => (
            <li key={index}>
              {headOf(passages, index)}
              <span class="ref">{formatReferences(passage.references)}</span>
              <p class="said words">{passage.text}</p>
            </li>
          ))}
        </ol>
        {passages.length > shown.value && (
          <button type="button" onClick={() => (shown.value += SHOWN_AT_FIRST * 5)}>
            Show more ({passages.length - shown.value} to come)
          </button>
        )}
      </section>
      <section>
        <h2>Left out, or decided on the way</h2>
        {dropped.length === 0 && <p class="meta">Nothing: every word of the file is in the passages.</p>}
        <ul>
          {dropped.map((one) => (
            <li key={`${one.what} ${one.place.line} ${one.place.column}`}>
              <span class="ref">{placeWords(one.place)}</span> {one.what}
              {one.count > 1 && <span class="meta"> {one.count} times</span>}
              <p class="meta">
                {one.why} {one.sample && <q class="said">{one.sample}</q>}
              </p>
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
}

/** The division a passage begins; null inside one. */
function headOf(passages: readonly ImportedPassage[], index: number) {
  const [division, before] = [passages[index]?.division, passages[index - 1]?.division];
  if (!division || (division.label === before?.label && division.title === before?.title)) return null;
  return (
    <h3 class="said">
      {division.label && <span class="ref">{division.label}</span>} {division.title}
    </h3>
  );
}

function placeWords({ line, column }: FilePlace): string {
  return `line ${line}, column ${column}`;
}
