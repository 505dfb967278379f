/** server/import/tei-levels.ts - by which elements a TEI text is cited: from refsDecl, else from what is found in it.
 *  May import: siblings. A level is a name ("chapter") and a test on elements; widest level first. Keeps rule I7. */
import { childNamed, visit, type XmlElement } from "./xml-reader.ts";

export interface CitationLevel {
  name: string;
  /** The label this element gives the level ("7"), or null when the element is not of this level. */
  label: (element: XmlElement) => string | null;
  /** Elements count themselves where no number is written: the label is their place among their like. */
  counted: boolean;
}

export interface CitationScheme {
  levels: CitationLevel[];
  origin: "declared" | "found" | "counted";
}

const LONGEST_LABEL = 40;
/** The schema holds no more. */
const MOST_LEVELS = 6;

export const isDivision = (element: XmlElement): boolean => /^div[0-7]?$/.test(element.name);

/** The wrappers of an edition or translation, and numbers that are whole URNs, cite no passage. */
const numberOf = (element: XmlElement): string | null => {
  const n = element.attributes.n?.trim().replace(/\s+/g, " ") ?? "";
  return n === "" || n.startsWith("urn:") || n.length > LONGEST_LABEL ? null : n;
};

const isWrapper = (element: XmlElement): boolean =>
  /^(edition|translation|commentary)$/.test(element.attributes.type ?? "");

const numberedDivision = (element: XmlElement) =>
  isDivision(element) && !isWrapper(element) ? numberOf(element) : null;

const hasKind = (element: XmlElement, kind: string) =>
  [element.attributes.type, element.attributes.subtype, element.attributes.unit].includes(kind);

const ofUnit = (unit: string): CitationLevel => ({
  name: unit,
  counted: false,
  label: (element) => {
    if (element.name === "milestone") return element.attributes.unit === unit ? numberOf(element) : null;
    if (unit === "line" && element.name === "l") return numberOf(element);
    if (unit === "paragraph" && element.name === "p") return numberOf(element);
    return (isDivision(element) || /^(p|ab|seg|lg|l)$/.test(element.name)) && hasKind(element, unit)
      ? numberOf(element)
      : null;
  },
});

/** A step of a path such as tei:div[@type='chapter' and @n='$1']: the element's name and what its attributes must be. */
const ofStep = (name: string, step: string): CitationLevel => {
  const element = /^(?:[\w-]+:)?(\w+|\*)/.exec(step)?.[1] ?? "*";
  const tests = [...step.matchAll(/@(type|subtype|unit)\s*=\s*(?:'([^']*)'|"([^"]*)")/g)].map(
    ([, key, single, double]) => [key ?? "", single ?? double ?? ""] as const,
  );
  return {
    name,
    counted: false,
    label: (candidate) => {
      const sameName = element === "*" || candidate.name === element || (element === "div" && isDivision(candidate));
      if (!sameName || isWrapper(candidate)) return null;
      return tests.every(([key, value]) => candidate.attributes[key] === value) ? numberOf(candidate) : null;
    },
  };
};

const kindInStep = (step: string) =>
  /@(?:subtype|unit)\s*=\s*['"]([^'"]+)/.exec(step)?.[1] ?? /@type\s*=\s*['"]([^'"]+)/.exec(step)?.[1];

const fromPatterns = (declaration: XmlElement): CitationLevel[] => {
  const patterns: { name: string; steps: string[] }[] = [];
  visit(declaration, (element) => {
    if (element.name === "cRefPattern") {
      const path = (element.attributes.replacementPattern ?? "").replace(/^#?xpath\((.*)\)$/s, "$1");
      const steps = path.split(/\/+(?![^[]*\])/).filter((step) => /\$\d/.test(step));
      patterns.push({ name: element.attributes.n ?? "", steps });
    }
    return true;
  });
  const longest = patterns.reduce((best, next) => (next.steps.length > best.steps.length ? next : best), {
    name: "",
    steps: [] as string[],
  });
  return longest.steps.map((step, depth) => {
    const named = patterns.find((pattern) => pattern.steps.length === depth + 1)?.name;
    return ofStep(named || kindInStep(step) || /^(?:\w+:)?(\w+)/.exec(step)?.[1] || "division", step);
  });
};

const fromStructure = (declaration: XmlElement): CitationLevel[] => {
  const levels: CitationLevel[] = [];
  let structure = childNamed(declaration, "citeStructure");
  while (structure !== undefined) {
    const { match = "", use = "@n", unit } = structure.attributes;
    const step = match.split(/\/+(?![^[]*\])/).at(-1) ?? "";
    // Only numbers written in the text are followed; a structure cited by another thing is not guessed at.
    if (use.trim() === "@n") levels.push(ofStep(unit ?? kindInStep(step) ?? "division", step));
    structure = childNamed(structure, "citeStructure");
  }
  return levels;
};

/** The levels a header declares, widest first; empty when it declares none that can be followed. */
export const declaredLevels = (header: XmlElement | undefined): CitationLevel[] => {
  const encoding = childNamed(header, "encodingDesc");
  const candidates = (encoding?.children ?? [])
    .filter((child): child is XmlElement => typeof child !== "string" && child.name === "refsDecl")
    .map((declaration) => {
      const units = declaration.children.flatMap((child) =>
        typeof child !== "string" && /^(state|refState)$/.test(child.name) && child.attributes.unit
          ? [child.attributes.unit]
          : [],
      );
      if (units.length > 0) return units.filter((unit) => unit !== "text").map(ofUnit);
      const structure = fromStructure(declaration);
      return structure.length > 0 ? structure : fromPatterns(declaration);
    });
  return candidates.reduce((best, next) => (next.length > best.length ? next : best), []).slice(0, MOST_LEVELS);
};

/** From wide to narrow. Units that are not here are levels only where none of these is found. */
const KNOWN_UNITS = ["volume", "part", "book", "chapter", "card", "section", "subsection", "sentence", "verse"];
const NEVER_A_LEVEL = /^(para|paragraph|page|pb|fol|folio|leaf|line|lb|column|cb|tlnum)$/i;

interface Found {
  divisionKinds: string[];
  units: Map<string, number>;
  numbered: Map<string, number>;
  all: Map<string, number>;
}

const look = (body: XmlElement): Found => {
  const found: Found = { divisionKinds: [], units: new Map(), numbered: new Map(), all: new Map() };
  const add = (to: Map<string, number>, key: string) => to.set(key, (to.get(key) ?? 0) + 1);
  const walk = (element: XmlElement, depth: number): void => {
    for (const child of element.children) {
      if (typeof child === "string") continue;
      let inner = depth;
      if (numberedDivision(child) !== null) {
        const { subtype, type } = child.attributes;
        found.divisionKinds[depth] ??= subtype ?? (type === "textpart" ? undefined : type) ?? "division";
        inner += 1;
      } else if (child.name === "milestone" && numberOf(child) !== null) {
        const unit = child.attributes.unit ?? "";
        if (unit !== "" && !NEVER_A_LEVEL.test(unit)) add(found.units, unit);
      } else if (/^(p|ab|seg)$/.test(child.name)) {
        add(found.all, child.name);
        if (numberOf(child) !== null) add(found.numbered, child.name);
      }
      walk(child, inner);
    }
  };
  walk(body, 0);
  return found;
};

const PARAGRAPH_NAMES = { p: "paragraph", ab: "block", seg: "segment" } as const;

const foundLevels = (body: XmlElement): CitationLevel[] => {
  const found = look(body);
  const levels: CitationLevel[] = found.divisionKinds.map((name) => ({
    name,
    counted: false,
    label: numberedDivision,
  }));
  const known = KNOWN_UNITS.filter((unit) => found.units.has(unit));
  const units =
    known.length > 0
      ? known
      : [...found.units]
          .filter(([, count]) => count > 1)
          .sort((a, b) => a[1] - b[1])
          .map(([unit]) => unit);
  levels.push(...units.map(ofUnit));
  for (const name of ["p", "ab", "seg"] as const) {
    const numbered = found.numbered.get(name) ?? 0;
    // Numbers on a few paragraphs only are remarks, not a way to cite.
    if (numbered * 5 < (found.all.get(name) ?? 0) * 4 || numbered < 2) continue;
    levels.push({
      name: PARAGRAPH_NAMES[name],
      counted: false,
      label: (element) => (element.name === name ? numberOf(element) : null),
    });
  }
  return levels.slice(0, MOST_LEVELS);
};

/** Nothing is numbered: divisions and, in walk order, paragraphs are counted. */
const countedLevels = (body: XmlElement): CitationLevel[] => {
  const kinds: string[] = [];
  const walk = (element: XmlElement, depth: number): void => {
    const divisions = element.children.filter(
      (child): child is XmlElement => typeof child !== "string" && isDivision(child),
    );
    for (const child of divisions) {
      const alone = depth === 0 && divisions.length === 1;
      if (!alone) kinds[depth] ??= child.attributes.subtype ?? child.attributes.type ?? "division";
      walk(child, alone ? depth : depth + 1);
    }
  };
  walk(body, 0);
  const levels: CitationLevel[] = kinds
    .slice(0, MOST_LEVELS - 1)
    .map((name) => ({ name, counted: true, label: () => null }));
  levels.push({ name: "paragraph", counted: true, label: () => null });
  return levels;
};

/** How the body is cited. Declared levels that nothing in the body answers to are left out. */
export const citationScheme = (declared: readonly CitationLevel[], body: XmlElement): CitationScheme => {
  const used = new Set<CitationLevel>();
  visit(body, (element) => {
    for (const level of declared) if (!used.has(level) && level.label(element) !== null) used.add(level);
    return true;
  });
  const answering = declared.filter((level) => used.has(level));
  if (answering.length > 0) return { levels: answering, origin: "declared" };
  const found = foundLevels(body);
  return found.length > 0 ? { levels: found, origin: "found" } : { levels: countedLevels(body), origin: "counted" };
};
