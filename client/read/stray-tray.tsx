/** client/read/stray-tray.tsx - marks whose words were reworded or lost by an amendment, kept until a person decides. */

import { anchorRange } from "../../shared/text/anchor-range.ts";
import { quoteAt } from "../../shared/text/quote.ts";
import { type PlacedMark, texts } from "../state/passage.ts";
import { one } from "../state/rows.ts";
import { remove, set, write } from "../state/write.ts";
import { choose, selected } from "./focus.ts";
import { nameOf } from "./thing-names.ts";
import { strayAnchors } from "./things.ts";

export function StrayTray() {
  const list = strayAnchors.value;
  if (list.length === 0) return null;
  return (
    <section class="notice" aria-label="Marks that need a look">
      <p class="label">The text was amended under these marks.</p>
      {list.map((placed) => (
        <Stray key={placed.anchor.id} placed={placed} />
      ))}
    </section>
  );
}

function Stray({ placed: { mark, anchor } }: { placed: PlacedMark }) {
  const thing = { kind: mark.of, id: mark.target };
  const text = one("passageTexts", anchor.text);
  const now = text?.text.slice(anchor.from, anchor.to) ?? "";
  const words = selected.value;
  const accept = () => {
    if (text === null) return;
    const fields = { ...quoteAt(text.text, anchor.from, anchor.to), fate: "same" as const };
    void write([set("anchors", anchor.id, fields)], `The new words of ${nameOf(thing)} accepted`);
  };
  const place = () => {
    const target = words && one("passageTexts", words.text);
    if (!words || !target) return;
    const fields = {
      text: target.id,
      passage: target.passage,
      ...anchorRange(words.from, words.to),
      ...quoteAt(target.text, words.from, words.to),
      fate: "same" as const,
    };
    void write([set("anchors", anchor.id, fields)], `The words of ${nameOf(thing)} placed again`);
  };
  return (
    <div class="stray">
      <button type="button" class="quiet" onClick={() => choose(thing)}>
        {nameOf(thing)}
      </button>{" "}
      {anchor.fate === "lost" ? "lost its words" : "was"} <q class="said">{anchor.quote}</q>
      {anchor.fate === "reworded" && (
        <>
          , now <q class="said">{now}</q>
        </>
      )}
      <div class="tools row">
        {anchor.fate === "reworded" && (
          <button type="button" onClick={accept}>
            Yes, these words
          </button>
        )}
        <button
          type="button"
          onClick={place}
          disabled={words === null || texts.value.length === 0}
          title="Select the right words in the text first"
        >
          Place on the selected words
        </button>
        <button
          type="button"
          class="quiet"
          onClick={() => void write([remove("anchors", anchor.id)], `Words of ${nameOf(thing)} taken away`)}
        >
          take this place away
        </button>
      </div>
    </div>
  );
}
