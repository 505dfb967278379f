/** tests/papers-written/html.test.ts - a paper as one page: every line in order, well-formed, nothing that runs or loads, and
 *  citations that lead to the window. Drawings are read anew. */
import { SaxesParser } from "saxes";
import { beforeAll, describe, expect, test } from "vitest";
import { linesOf, plainBlocks } from "../../server/publish/write/paper-places.ts";
import { safeSvg } from "../../server/publish/write/safe-svg.ts";
import { PLAN_SVG, paperOf, paragraph, ref, richPaper, w } from "./paper-kit.ts";
import { squashed } from "./read-pdf.ts";
import { written } from "./written.ts";

const pageOf = async (paper = richPaper()): Promise<string> => new TextDecoder().decode(await written(paper, "html"));

const VOID = /<(meta|hr|col|br|input|link|img)\b([^>]*?)\/?>/g;

/** The page as XML: it is written so plainly that only void elements and bare words of the doctype differ. */
function asXml(page: string): string {
  return page
    .replace(/^<!doctype html>/, "")
    .replace(/<style>[\s\S]*?<\/style>/, "")
    .replace(VOID, "<$1$2/>");
}

interface PageFacts {
  text: string;
  ids: string[];
  links: string[];
  elements: string[];
  attributes: string[];
}

/** Throws where elements are not closed in turn. */
function factsOf(page: string): PageFacts {
  const facts: PageFacts = { text: "", ids: [], links: [], elements: [], attributes: [] };
  const parser = new SaxesParser({ xmlns: false, fragment: false });
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("text", (text) => {
    facts.text += text;
  });
  parser.on("opentag", ({ name, attributes }) => {
    facts.elements.push(name);
    for (const [attribute, value] of Object.entries(attributes)) {
      facts.attributes.push(attribute);
      if (attribute === "id") facts.ids.push(value);
      if (attribute === "href") facts.links.push(value);
    }
  });
  parser.write(asXml(page)).close();
  return facts;
}

describe("a rich paper", () => {
  const paper = richPaper();
  let page: string;
  let facts: PageFacts;
  beforeAll(async () => {
    page = await pageOf(paper);
    facts = factsOf(page);
  });

  test("has every word of every line, in order, and the notes after them", () => {
    const lines = [...plainBlocks(paper.blocks).flatMap(linesOf), ...paper.notes.flatMap((note) => note.lines)];
    const text = squashed(facts.text);
    let at = 0;
    for (const span of lines.flat()) {
      if (span.is !== "words") continue;
      const found = text.indexOf(squashed(span.text), at);
      expect(found, span.text).not.toBe(-1);
      at = found;
    }
  });

  test("needs nothing else and runs nothing", () => {
    expect(page).not.toMatch(/<script|<link|<img|<iframe|<object|@import|\ssrc=|javascript:/i);
    expect(facts.attributes.filter((name) => /^on/i.test(name))).toEqual([]);
    const loaded = [...page.matchAll(/url\(([^)]{0,30})/g)].map(([, to]) => to);
    expect(loaded.every((to) => to?.startsWith("data:font/woff2;base64,"))).toBe(true);
    expect(loaded.length).toBeGreaterThan(3);
  });

  test("names each place once, and every link within it leads to one", () => {
    expect(new Set(facts.ids).size).toBe(facts.ids.length);
    const inside = facts.links.filter((link) => link.startsWith("#"));
    expect(inside.length).toBeGreaterThan(12);
    expect(inside.filter((link) => !facts.ids.includes(link.slice(1)))).toEqual([]);
  });

  test("leads from a citation to its words in the window, and to the web where it says so", () => {
    const cited = '<span class="ref"><span class="part">f. 12r</span></span>';
    expect(page).toContain(`<a href="/read/0198c0de-0000-7000-8000-000000000001">${cited}</a>`);
    expect(page).toContain('<a href="https://www.example.org/leaf/12" rel="noreferrer">');
  });

  test("says languages, directions, and what is only drawn", () => {
    expect(page).toMatch(/^<!doctype html>\n<html lang="en-GB">/);
    expect(page).toContain('<bdi class="said" lang="la">');
    expect(page).toContain('<p class="quote" dir="rtl"><bdi class="said" lang="ar" dir="rtl">');
    expect(page).toContain('role="img" aria-label="the text does not say">· · ·</span>');
    expect(page).toContain('aria-label="nothing is done"');
    expect(page).toContain('aria-label="A plan: from the gate');
    for (const line of ["stated", "implied", "supplied", "not-settled"]) expect(page).toContain(`class="w-${line}"`);
  });

  test("has one main heading, whatever the levels of the paper", async () => {
    const count = (name: string): number => facts.elements.filter((element) => element === name).length;
    expect([count("h1"), count("h2"), count("h3")]).toEqual([1, 4, 1]);
    const bare = factsOf(await pageOf(paperOf({ title: "A leaf", blocks: [paragraph("body", w("Alone."))] })));
    expect(bare.elements.filter((element) => element === "h1")).toHaveLength(1);
  });
});

describe("a link", () => {
  test.each([
    ["javascript:alert(1)", null],
    ["JavaScript:alert(1)", null],
    ["data:text/html,x", null],
    ["//example.org/x", null],
    ["/\\example.org", null],
    ["http://", null],
    ["https://example.org/a b", null],
    ["mailto:a@example.org", null],
    ["/read/abc", "/read/abc"],
    ["https://www.example.org/a?b=1&c=2", "https://www.example.org/a?b=1&amp;c=2"],
  ])("to %s", async (to, link) => {
    const page = await pageOf(paperOf({ blocks: [paragraph("body", ref("here", to))] }));
    const links = [...page.matchAll(/<a href="([^"]*)"/g)].map(([, address]) => address);
    expect(links).toEqual(link === null ? [] : [link]);
    expect(page).toContain("here");
  });
});

describe("a drawing", () => {
  const drawn = (svg: string): string => safeSvg(svg, { prefix: "f1-", alternative: "a plan", width: 40 }).text;

  test("keeps all that draws", () => {
    const kept = drawn(PLAN_SVG);
    for (const part of ["<rect ", "<path ", "stroke-dasharray", "font-style", "the well</text>"])
      expect(kept).toContain(part);
    expect(kept).toMatch(
      /^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" role="img" aria-label="a plan" width="40mm" viewBox=/,
    );
  });

  test.each([
    ["a script", `<svg viewBox="0 0 1 1"><script>alert(1)</script><g/></svg>`],
    ["a handler", `<svg viewBox="0 0 1 1"><g onclick="alert(1)"/></svg>`],
    ["a handler in other letters", `<svg viewBox="0 0 1 1"><g ONLOAD="alert(1)"/></svg>`],
    ["other markup", `<svg viewBox="0 0 1 1"><foreignObject><a>alert(1)</a></foreignObject><g/></svg>`],
    ["a link that runs", `<svg viewBox="0 0 1 1"><use href="javascript:alert(1)"/><g/></svg>`],
    ["an animation", `<svg viewBox="0 0 1 1"><g><set attributeName="href" to="javascript:alert(1)"/></g></svg>`],
    ["a style sheet", `<svg viewBox="0 0 1 1"><style>*{background:url(https://x.example/alert(1))}</style><g/></svg>`],
    ["a style", `<svg viewBox="0 0 1 1"><g style="background:url(https://x.example/alert(1))"/></svg>`],
    ["a picture from elsewhere", `<svg viewBox="0 0 1 1"><image href="https://x.example/alert(1).png"/><g/></svg>`],
    ["a paint from elsewhere", `<svg viewBox="0 0 1 1"><g fill="url(https://x.example/#alert(1))"/></svg>`],
    ["words in an entity", `<!DOCTYPE svg [<!ENTITY x "<script>alert(1)</script>">]><svg viewBox="0 0 1 1"><g/></svg>`],
  ])("keeps nothing of %s", (_, svg) => {
    const kept = drawn(svg);
    expect(kept).not.toMatch(/script|alert|onclick|onload|https?:\/\/x/i);
    expect(kept).toMatch(/<g[ />]|<use|<image/);
  });

  test("shares no names with another on the page", () => {
    const svg = `<svg viewBox="0 0 1 1"><defs><pattern id="p" width="1" height="1"/></defs><g fill="url(#p)"/><use href="#p"/></svg>`;
    const kept = drawn(svg);
    expect(kept).toContain('id="f1-p"');
    expect(kept).toContain('fill="url(#f1-p)"');
    expect(kept).toContain('href="#f1-p"');
  });

  test.each(["", "no drawing", "<p>words</p>", "<svg><g></svg>"])("is refused when it is none: %s", (svg) => {
    expect(() => drawn(svg)).toThrow(RangeError);
  });
});
