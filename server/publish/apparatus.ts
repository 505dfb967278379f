/** server/publish/apparatus.ts - the readings of each crux, the one taken first, the others with their arguments.
 *  May import: schema types, siblings. In the manner of an apparatus: the words, `]`, what is read, then the rest. */
import type { Citation, DrillCrux, DrillElement } from "../../schema/drill.ts";
import { citedPlaces } from "./cited.ts";
import { type CruxSigns, givesAnywhere, type SignedCrux } from "./crux-signs.ts";
import { html, joined, type Markup } from "./markup.ts";
import { stopped } from "./stopped.ts";

type Other = DrillCrux["others"][number];

const BECAUSE = {
  adopted: "adopted",
  "left free": "left to the rider; shown with this",
  chosen: "chosen for this sheet",
  exception: "read so here only",
} as const;

export function apparatus(signs: CruxSigns): Markup | null {
  if (signs.list.length === 0) return null;
  return html`<section class="apparatus"><h2>Readings</h2>
<p class="soft key">The words, then ] and what is read here; the other readings follow, each with who holds it and why.</p>
<dl>${signs.list.map(entry)}</dl></section>`;
}

function entry({ sign, at }: SignedCrux): Markup {
  const [first] = at;
  if (first === undefined) throw new RangeError(`The crux ${sign} bears on nothing.`);
  const { crux } = first;
  const places = at.flatMap(({ element }) => (element === null ? [] : [placeOf(element)]));
  const exceptions = at.slice(1).filter((other) => other.crux.taken?.reading !== crux.taken?.reading);
  return html`<dt id="crux-${sign}">†${sign}</dt>
<dd><p><span class="soft">${[...new Set(places)].join(", ") || "the whole"}</span> ${lemma(crux)}] ${takenWords(crux)}</p>
${exceptions.map(({ element, crux: other }) => html`<p class="other">At ${element ? placeOf(element) : "the whole"}: ${takenWords(other)}</p>`)}
${crux.others.map((other) => otherWords(other, givesAnywhere(at, other.reading)))}
<p class="soft">${crux.title} (${crux.is}).${crux.note === "" ? null : ` ${crux.note}`}</p></dd>`;
}

/** The words the crux is about; its title where it has none marked. */
function lemma(crux: DrillCrux): Markup {
  const [first, ...more] = crux.citations;
  if (first === undefined) return html`<em>${crux.title}</em>`;
  const same = [first, ...more].filter((citation: Citation) => citation.reference === first.reference);
  return citedPlaces(same) ?? html`<em>${crux.title}</em>`;
}

function takenWords({ taken }: DrillCrux): Markup {
  if (taken === null) return html`<span class="w-not-settled">not settled</span>`;
  const condition = taken.condition === "" ? "" : ` ${taken.condition}`;
  const reason = taken.reason === "" ? null : html`: ${taken.reason}`;
  return html`<b>${taken.title}</b> <span class="soft">(${BECAUSE[taken.because]}${condition})</span>${reason}`;
}

function otherWords(other: Other, gives: readonly string[]): Markup {
  const status =
    other.status === "standing"
      ? null
      : html` <span class="soft">(${other.status}${other.condition === "" ? "" : ` ${other.condition}`})</span>`;
  const pieces = [
    other.argument === "" ? null : html`${stopped(other.argument)}`,
    other.reason === "" ? null : html`${stopped(other.reason)}`,
    gives.length === 0 ? null : html`<span class="soft">Then ${gives.join("; ")}.</span>`,
  ].filter((piece) => piece !== null);
  return html`<p class="other"><b>${other.title}</b>${other.holder === "" ? null : html` <em>${other.holder}</em>`}${status}${pieces.length === 0 ? null : html`: ${joined(pieces, " ")}`}</p>`;
}

function placeOf(element: DrillElement): string {
  return element.number === null ? element.is : `step ${element.number}`;
}
