/** client/read/basis-list.tsx - what a warrant or a reading rests on: words, premises, parallels; adding and taking away. */
import { useSignal } from "@preact/signals";
import type { Edit } from "../../schema/change.ts";
import type { Kind } from "../../schema/record.ts";
import type { Basis } from "../../schema/slot.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { all, one } from "../state/rows.ts";
import { selected } from "./focus.ts";
import { focusFirst } from "./focus-first.ts";
import { quoteOf } from "./marking.ts";
import { PictureBasisForm } from "./picture-basis-form.tsx";
import { names, short } from "./row-names.ts";
import { isMarkable, selectedBasis } from "./support.ts";

/** The words of a mark, with where they stand. */
export function markWords(mark: string): { quote: string; where: string; against: boolean } {
  const anchors = all("anchors").filter((anchor) => anchor.mark === mark && anchor.is === "text");
  const quotes = anchors.map((anchor) => (anchor.is === "text" ? anchor.quote : ""));
  const first = anchors[0];
  const passage = first?.is === "text" ? one("passages", first.passage) : null;
  const reference = passage?.references[0];
  return {
    quote: quotes.join(" … "),
    where: reference ? formatReference(reference) : "",
    against: one("marks", mark)?.as === "against",
  };
}

function BasisWords({ basis }: { basis: Basis }) {
  switch (basis.is) {
    case "words": {
      const { quote, where, against } = markWords(basis.mark);
      return (
        <>
          {against && "against it: "}
          <q class="said">{short(quote, 120) || "(no words)"}</q> <span class="ref">{where}</span>
        </>
      );
    }
    case "picture":
      return <>picture: {one("regions", basis.region)?.label || "a part of it"}</>;
    case "premise":
      return <>{basis.text}</>;
    case "parallel":
      return (
        <>
          parallel, {basis.where}
          {basis.text && `: ${basis.text}`}
        </>
      );
    case "trial":
      return <>trial: {names.value("trials", basis.trial) ?? one("trials", basis.trial)?.on}</>;
    case "editor":
      return <>the editor{basis.note && `: ${basis.note}`}</>;
  }
}

/** `sides` offers the selected words as evidence for or against. */
export function BasisList({
  bases,
  row,
  label,
  sides = false,
  store,
}: {
  bases: readonly Basis[];
  row: { kind: Kind; id: string };
  label: string;
  sides?: boolean;
  store: (bases: Basis[], also: Edit[], why: string) => Promise<boolean>;
}) {
  const adding = useSignal<"premise" | "parallel" | "picture" | null>(null);
  const add = (as: "words" | "for" | "against") => {
    const found = selectedBasis(row.kind, row.id, as);
    if (found) void store([...bases, found.basis], found.edits, `${label} rests on “${short(found.quote, 40)}”`);
  };
  const picked = selected.value ? short(quoteOf(selected.value), 30) : null;
  return (
    <div class="bases">
      {bases.length > 0 && (
        <ul aria-label={label}>
          {bases.map((basis, index) => (
            <li key={index}>
              <BasisWords basis={basis} />{" "}
              <button
                type="button"
                class="quiet"
                aria-label={`take this evidence away: ${label}, number ${index + 1}`}
                onClick={() =>
                  void store(
                    bases.filter((_, other) => other !== index),
                    [],
                    `${label}: one thing it rested on taken away`,
                  )
                }
              >
                take this evidence away
              </button>
            </li>
          ))}
        </ul>
      )}
      <p class="says">
        {isMarkable(row.kind) &&
          (picked === null ? (
            <span class="meta">Select words in the text to add them;</span>
          ) : sides ? (
            <>
              <button type="button" class="quiet" onClick={() => add("for")}>
                “{picked}” speaks for it
              </button>
              <button type="button" class="quiet" onClick={() => add("against")}>
                against it
              </button>
            </>
          ) : (
            <button type="button" class="quiet" onClick={() => add("words")}>
              “{picked}” says it
            </button>
          ))}
        <button type="button" class="quiet" onClick={() => (adding.value = "premise")}>
          a premise
        </button>
        <button type="button" class="quiet" onClick={() => (adding.value = "parallel")}>
          a parallel
        </button>
        {all("pictures").length > 0 && (
          <button type="button" class="quiet" onClick={() => (adding.value = "picture")}>
            a picture
          </button>
        )}
      </p>
      {adding.value === "picture" && (
        <PictureBasisForm
          take={(basis, also, name) =>
            store([...bases, basis], also, `${label} rests on a picture: ${short(name, 40) || "a part of it"}`)
          }
          close={() => (adding.value = null)}
        />
      )}
      {(adding.value === "premise" || adding.value === "parallel") && (
        <form
          class="row"
          ref={focusFirst}
          onKeyDown={(event) => {
            if (event.key !== "Escape") return;
            event.stopPropagation();
            adding.value = null;
          }}
          onSubmit={(event) => {
            event.preventDefault();
            const data = new FormData(event.currentTarget);
            const text = String(data.get("text") ?? "").trim();
            const where = String(data.get("where") ?? "").trim();
            const basis: Basis = adding.value === "premise" ? { is: "premise", text } : { is: "parallel", where, text };
            void store([...bases, basis], [], `${label} rests on a ${basis.is}: ${short(text || where, 40)}`).then(
              (done) => {
                if (done) adding.value = null;
              },
            );
          }}
        >
          {adding.value === "parallel" && (
            <input name="where" required placeholder="where it stands" aria-label="Where" size={14} />
          )}
          <input
            name="text"
            required={adding.value === "premise"}
            placeholder={adding.value === "premise" ? "what is taken for granted" : "what it says"}
            aria-label={adding.value === "premise" ? "Premise" : "What the parallel says"}
            size={22}
          />
          <button type="submit">Add</button>
          <button type="button" class="quiet" onClick={() => (adding.value = null)}>
            not now
          </button>
        </form>
      )}
    </div>
  );
}
