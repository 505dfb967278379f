/** client/decide/terms-list.tsx - the words that are followed through the work, with the way to their pages. */
import { follow } from "../state/route.ts";
import { all } from "../state/rows.ts";
import { openExercises } from "./answers.ts";
import { sensesOf } from "./term-places.ts";

export function TermsList() {
  const terms = all("terms").sort((a, b) => a.word.localeCompare(b.word));
  if (terms.length === 0 || openExercises.value.length === 0) return null;
  return (
    <section class="terms-list" aria-label="Words followed through the work">
      <h2>Words followed</h2>
      <ul>
        {terms.map(({ id, word, language }) => (
          <li key={id}>
            <a href={`/decide/term/${id}`} onClick={follow}>
              <i class="said" lang={language || undefined}>
                {word}
              </i>
            </a>{" "}
            <span class="meta">
              {sensesOf(id)
                .map(({ title }) => `“${title}”`)
                .join(", ") || "no sense is named yet"}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
