/** client/read/read-room.tsx - the Read room: contents, the passage, and its glosses. */
import { useEffect } from "preact/hooks";
import { contents, heldWork, loadContents, openPassage, passageId } from "../state/passage.ts";
import { go } from "../state/route.ts";
import { ContentsList } from "./contents-list.tsx";
import { choose, opened, selected, unlocked } from "./focus.ts";
import { GlossColumn } from "./gloss-column.tsx";
import { Leaf, neighbours } from "./leaf.tsx";

export function ReadRoom({ passage }: { passage: string | null }) {
  useEffect(() => {
    void loadContents();
  }, []);
  const firstPassage = contents.value?.works.flatMap((work) => work.passages)[0]?.passage ?? null;
  useEffect(() => {
    if (passage !== null && passage !== passageId.value) {
      choose(null);
      selected.value = null;
      unlocked.value = null;
      opened.value = null;
      void openPassage(passage);
    } else if (passage !== null && heldWork.value !== null) {
      // The rows of the whole work are more than the passage needs.
      void openPassage(passage);
    } else if (passage === null && firstPassage) go(`/read/${firstPassage}`, true);
  }, [passage, firstPassage]);

  useEffect(() => {
    const turn = (event: KeyboardEvent) => {
      if (!event.altKey || (event.key !== "PageDown" && event.key !== "PageUp") || unlocked.value) return;
      const to = event.key === "PageDown" ? neighbours().after : neighbours().before;
      if (to === null) return;
      event.preventDefault();
      go(`/read/${to}`);
    };
    window.addEventListener("keydown", turn);
    return () => window.removeEventListener("keydown", turn);
  }, []);

  return (
    <main class="read" id="main">
      <ContentsList />
      <Leaf />
      <GlossColumn />
    </main>
  );
}
