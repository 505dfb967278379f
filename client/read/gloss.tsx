/** client/read/gloss.tsx - one gloss: what some words come to, and the way into its form. */
import type { ComponentChildren } from "preact";
import { one } from "../state/rows.ts";
import { CruxGloss } from "./crux-gloss.tsx";
import { choose, closeForm, opened, pointed, sameThing, type Thing } from "./focus.ts";
import { SharedGloss } from "./shared-gloss.tsx";
import { AdviceGloss, NoteGloss, QuestionGloss, StandingGloss, TermGloss, UntreatedGloss } from "./small-glosses.tsx";
import { StepGloss } from "./step-gloss.tsx";
import { FaultGloss, RuleGloss } from "./teaching-gloss.tsx";

export function Gloss({ thing, active }: { thing: Thing; active: boolean }) {
  const open = sameThing(opened.value, thing);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: pointer and focus only bring it forward; what it can do are buttons within.
    <section
      class={`gloss ${thing.kind} ${active ? "active" : ""}`}
      data-thing={`${thing.kind}:${thing.id}`}
      onMouseEnter={() => (pointed.value = thing)}
      onMouseLeave={() => (pointed.value = null)}
      onFocusIn={(event) => {
        // A press chooses on its own; were it chosen at the focus already, the glosses would move away under the press.
        if (!active && (event.target as HTMLElement).matches(":focus-visible")) choose(thing, open);
      }}
      onKeyDown={(event) => {
        if (event.key === "Escape" && open) {
          event.stopPropagation();
          closeForm();
        }
      }}
    >
      {bodyOf(thing, open)}
    </section>
  );
}

function bodyOf(thing: Thing, open: boolean): ComponentChildren {
  switch (thing.kind) {
    case "elements": {
      const element = one("elements", thing.id);
      if (element?.is === "advice") return <AdviceGloss element={element} open={open} />;
      if (element?.is === "untreated") return <UntreatedGloss element={element} open={open} />;
      return element ? <StepGloss element={element} open={open} /> : null;
    }
    case "cruxes":
      return <CruxGloss id={thing.id} open={open} />;
    case "questions":
      return <QuestionGloss id={thing.id} open={open} />;
    case "terms":
    case "senses":
      return <TermGloss thing={thing} open={open} />;
    case "standings":
      return <StandingGloss id={thing.id} />;
    case "notes":
      return <NoteGloss id={thing.id} open={open} />;
    case "holds":
    case "movements":
    case "stations":
    case "threats":
      return <SharedGloss kind={thing.kind} id={thing.id} />;
    case "rules":
      return <RuleGloss id={thing.id} />;
    case "faults":
      return <FaultGloss id={thing.id} />;
    default:
      return null;
  }
}
