/** tests/papers-written/pdf.test.ts - a paper as PDF, read back: every line, citation and note in its place and order, faces
 *  inside, links that lead somewhere, tags and outline; and the type that fits. */
import { beforeAll, describe, expect, test } from "vitest";
import type { Paper } from "../../schema/paper.ts";
import { linesOf, plainBlocks } from "../../server/publish/write/paper-places.ts";
import { fitted } from "../../server/publish/write/pdf/fit.ts";
import { firstMissing } from "./in-order.ts";
import { call, heading, paperOf, paragraph, ref, richPaper, said, steps, w } from "./paper-kit.ts";
import { type ReadPdf, readPdf, squashed } from "./read-pdf.ts";
import { written } from "./written.ts";

const read = async (paper: Paper): Promise<ReadPdf> => readPdf(await written(paper, "pdf"));

/** Words of all lines but those from right to left, which a reader gives back in an order of its own. */
function spansInOrder(paper: Paper): string[] {
  return plainBlocks(paper.blocks)
    .flatMap(linesOf)
    .flat()
    .flatMap((span) => (span.is === "words" && span.language !== "ar" ? [squashed(span.text)] : []))
    .filter((words) => words !== "");
}

describe("a rich paper", () => {
  let paper: Paper;
  let pdf: ReadPdf;
  let words: string;
  beforeAll(async () => {
    paper = richPaper();
    pdf = await read(paper);
    words = squashed(pdf.pages.join("\n"));
  });

  test("has every word of every line, in order", () => {
    expect(firstMissing("abc", ["a", "c", "b"])).toBe("b");
    expect(firstMissing(words, spansInOrder(paper))).toBeNull();
  });

  test("has its notes at the foot of the page that calls them", () => {
    const [first = ""] = pdf.pages.map(squashed);
    expect(firstMissing(first, ["comesbacktoit.1", "f.12r2", "1Sothetranslator", "f.12v.", "2Anotherhand"])).toBeNull();
    expect(pdf.roles.Note).toBe(2);
  });

  test("has its notes at the end where that is asked", async () => {
    const end = await read(richPaper({ notesAt: "end" }));
    const last = squashed(end.pages.at(-1) ?? "");
    expect(firstMissing(last, ["Ridethisonly", "Notes", "1Sothetranslator", "2Anotherhand"])).toBeNull();
    expect(end.outline.map(({ title }) => title)).toContain("Notes");
    expect(end.links.every(({ page, address }) => page !== null || address !== null)).toBe(true);
  });

  test("has words from right to left", () => {
    const arabic = [...squashed("حول البئر")];
    expect(arabic.every((letter) => words.includes(letter))).toBe(true);
    expect(pdf.faces.map(({ name }) => name)).toContain("Amiri-Regular");
  });

  test("has its faces inside", () => {
    expect(pdf.faces.length).toBeGreaterThan(3);
    expect(pdf.faces.filter(({ embedded }) => !embedded)).toEqual([]);
    const ours = /^(GentiumPlus|SourceSans3|Amiri)(-|$)/;
    expect(pdf.faces.filter(({ name }) => !ours.test(name))).toEqual([]);
  });

  test("has links that lead somewhere, within it and to the web; none to the window", () => {
    expect(pdf.links.filter(({ page, address }) => page === null && address === null)).toEqual([]);
    expect(pdf.links.map(({ address }) => address).filter((address) => address !== null)).toEqual([
      "https://www.example.org/leaf/12",
    ]);
    const [, toReadings] = [...new Set(pdf.links.filter(({ from }) => from === 2).map(({ page }) => page))].concat([
      null,
    ]);
    expect(toReadings === null || toReadings === 3).toBe(true);
  });

  test("has the headings as its outline", () => {
    expect(pdf.outline.map(({ title }) => title)).toEqual([
      "Of the round about the well",
      "How to read this",
      "Steps",
      "What to call",
      "Readings",
    ]);
    const pages = pdf.outline.map(({ page }) => page);
    expect([...pages].sort((a, b) => a - b)).toEqual(pages);
  });

  test("is tagged, with a title, a language, and words for what is only drawn", () => {
    expect(pdf.marked).toBe(true);
    expect(pdf.title).toBe("Of the round about the well");
    expect(pdf.author).toBe("Brother Osmer of Tarn");
    expect(pdf.language).toBe("en-GB");
    expect(pdf.roles).toMatchObject({ Table: 2, H1: 1, H2: 3, H3: 1, THead: 2 });
    expect(pdf.alternatives.filter((words_) => words_ === "the text does not say")).toHaveLength(4);
    expect(pdf.alternatives.filter((words_) => words_ === "nothing is done")).toHaveLength(2);
    expect(pdf.alternatives.some((words_) => words_.startsWith("A plan:"))).toBe(true);
  });

  test("has no clock in it and runs nothing", () => {
    expect(pdf.dates).toEqual([]);
    expect(pdf.scripts).toBe(false);
  });

  test("counts its pages and bears its running heads from the second on", () => {
    const total = pdf.pages.length;
    expect(total).toBeGreaterThan(1);
    for (const [index, page] of pdf.pages.entries()) expect(page).toContain(`${index + 1} of ${total}`);
    expect(pdf.pages[0]).not.toMatch(/^The book of the low court/);
    expect(pdf.pages[1]).toMatch(/^The book of the low court Of the round about the well/);
    for (const page of pdf.pages) expect(page).toContain("Edition 2 of 2026-05-04 · check K7QX");
  });
});

test("a paper that is not issued says so at its foot", async () => {
  const pdf = await read(paperOf({ blocks: [heading(1, "Loose leaf")], edition: null, invented: false }));
  expect(pdf.pages[0]).toContain("Not issued: a draft");
  expect(pdf.pages[0]).not.toContain("invented");
});

test("the contents tell the pages their headings stand on", async () => {
  const chapters = Array.from({ length: 12 }, (_, index) => [
    heading(1, `Chapter ${"abcdefghijkl"[index]}`),
    ...Array.from({ length: 9 }, () => paragraph("body", w("He rides on, and on again. ".repeat(30)))),
  ]);
  const pdf = await read(paperOf({ blocks: [{ is: "contents", depth: 1 }, ...chapters.flat()] }));
  const told = [...(pdf.pages[0] ?? "").matchAll(/Chapter ([a-l])[ .]+(\d+)/g)].map(([, letter, page]) => ({
    title: `Chapter ${letter}`,
    page: Number(page),
  }));
  expect(told).toHaveLength(12);
  expect(told).toEqual(pdf.outline);
});

describe("a table of steps over several pages", () => {
  const many = Array.from({ length: 60 }, (_, index) => ({
    horse: [[w(`figure ${index + 1} on the left rein, and after it a straight line to the far wall`)]],
    hands: [[w("left: holds the reins")], [w("right: the spear at the balance")]],
    shaft: [[w("low")]],
    where: [[ref(`f. ${index + 1}r`)]],
  }));

  test("repeats its head on each page", async () => {
    const pdf = await read(paperOf({ blocks: [steps(many)] }));
    expect(pdf.pages.length).toBeGreaterThan(2);
    for (const page of pdf.pages) expect(page).toContain("Horse Hands Boar-spear Where");
  });

  test("keeps a step on one page", async () => {
    const pdf = await read(paperOf({ blocks: [steps(many)] }));
    for (let step = 1; step <= 60; step += 1) {
      const pages = pdf.pages.filter((page) => {
        const plain = squashed(page);
        return plain.includes(squashed(`figure ${step} on the`)) || plain.includes(`f.${step}r`);
      });
      expect(pages).toHaveLength(1);
    }
  });

  test("a step taller than a page goes on, and says its number again at the head of each page", async () => {
    const tall = Array.from({ length: 40 }, (_, index) => [
      w(`line ${index + 1}: `),
      said("he turns about the well ".repeat(5)),
    ]);
    const table = steps([{ horse: tall, hands: [], shaft: [] }]);
    const [first] = table.rows;
    const below = { ...first!, anchor: null, shown: null, cells: [[], [[w("Below it: what it rests on.")]]] };
    const pdf = await read(paperOf({ blocks: [{ ...table, rows: [first!, below] }] }));
    expect(pdf.pages.length).toBeGreaterThan(1);
    const all = squashed(pdf.pages.join("\n"));
    for (let line = 1; line <= 40; line += 1) expect(all).toContain(`line${line}:`);
    for (const page of pdf.pages.slice(1)) expect(page).toMatch(/Where\n1 (line|Below)/);
    expect(all.match(/(?<!\d)1line\d+:/g)).toHaveLength(pdf.pages.length);
    expect(all).toContain("Belowit:whatitrestson.");
  });
});

describe("a sheet that must fit", () => {
  const row = (index: number) => ({
    horse: [[w(`ride the figure number ${index} about the well`)]],
    hands: [],
    shaft: [[w("low")]],
  });
  const sheet = (count: number, kind: Paper["kind"] = "ride sheet") =>
    paperOf({
      kind,
      blocks: [heading(1, "The round"), steps(Array.from({ length: count }, (_, index) => row(index + 1)))],
    });

  test.each([
    [3, 1],
    [18, 1],
    [21, 1],
    [45, 2],
  ])("%i steps stand on %i page(s)", async (count, pages) => {
    expect((await read(sheet(count))).pages).toHaveLength(pages);
  });

  test("one that fits nowhere is printed whole all the same", async () => {
    const pdf = await read(sheet(200));
    expect(pdf.pages.length).toBeGreaterThan(2);
    expect(squashed(pdf.pages.join(""))).toContain(squashed("figure number 200 about"));
  });

  const trial = (base: number, length: number) => {
    const filled = (length * base * base) / 100;
    return { base, filled, count: Math.ceil(filled) };
  };
  const sizes = [15, 13, 11, 9, 8];

  test.each([
    ["fits at once", 0.3, [1, 2], 15],
    ["fits one page when smaller", 0.8, [1, 2], 11],
    ["fits only two pages", 1.9, [1, 2], 9],
    ["fits two pages large", 0.88, [2], 15],
    ["fits nowhere", 9, [1, 2], 8],
    ["has no wish", 9, [], 15],
  ])("the largest type that does: %s", async (_, length, wishes, base) => {
    const tried: number[] = [];
    const found = await fitted(sizes, wishes, async (at) => {
      tried.push(at);
      return trial(sizes[at] ?? 0, length);
    });
    expect(found.base).toBe(base);
    expect(new Set(tried).size).toBe(tried.length);
  });
});

describe("each size of sheet", () => {
  test.each(["A4", "Letter", "A5"] as const)("%s bears every line of every kind of paper", async (size) => {
    for (const kind of ["ride sheet", "class handout", "caller's sheet", "working sheet", "correction slip"] as const) {
      const paper = richPaper({ size, kind });
      const pdf = await read(paper);
      expect(firstMissing(squashed(pdf.pages.join("\n")), spansInOrder(paper))).toBeNull();
    }
  });
});

test("a link to a note leads to where the note stands", async () => {
  const blocks = [
    paragraph("body", w("Called here."), call("n1")),
    { is: "page break" } as const,
    paragraph("body", w("See "), ref("the note", "#n1")),
  ];
  const notes = [{ id: "n1", lines: [[w("The note.")]], of: [] }];
  const pdf = await read(paperOf({ blocks, notes }));
  expect(pdf.links.filter(({ from }) => from === 2)).toEqual([{ from: 2, page: 1, address: null }]);
});

describe("notes called in a table", () => {
  // Steps of several lines with long notes: somewhere a step just fits without its note and not with it.
  const long = (count: number) => "He turns about the well and lets the point sink as he goes. ".repeat(count);
  const table = (count: number) => {
    const rows = Array.from({ length: count }, (_, index) => ({
      horse: [[w(`Call ${index + 1}.`), call(`n${index + 1}`)], [w(long(1 + (index % 4)))]],
      hands: [[w(long(1))]],
      shaft: [[w("low")]],
      where: [[ref(`f. ${index + 1}r`)]],
    }));
    const notes = rows.map((_, index) => ({
      id: `n${index + 1}`,
      lines: [[w(`Note to call ${index + 1}: `), w(long(2 + ((index * 5) % 7)))]],
      of: [],
    }));
    return { blocks: [heading(1, "Steps"), steps(rows)], notes };
  };

  // Where not a line of a note finds room below a row, the type setter begins it overleaf: that is rare, and never before.
  test.each([24, 30, 36])(
    "stand at the foot of the page with their call, and never before it: %i of them",
    async (count) => {
      const pdf = await read(paperOf(table(count)));
      const pages = pdf.pages.map(squashed);
      expect(pages.length).toBeGreaterThan(3);
      let overleaf = 0;
      for (let note = 1; note <= count; note += 1) {
        const calledOn = pages.findIndex((page) => page.includes(`Call${note}.${note}He`));
        const standsOn = pages.findIndex((page) => page.includes(`${note}Notetocall${note}:`));
        expect(calledOn).not.toBe(-1);
        expect([calledOn, calledOn + 1], `note ${note}`).toContain(standsOn);
        if (standsOn > calledOn) overleaf += 1;
      }
      expect(overleaf).toBeLessThanOrEqual(count / 10);
    },
  );

  test("stand below the pieces of a step that parts", async () => {
    const horse = Array.from({ length: 30 }, (_, index) => [w(`Line ${index + 1}. ${long(2)}`), call(`n${index + 1}`)]);
    const notes = horse.map((_, index) => ({ id: `n${index + 1}`, lines: [[w(`Note ${index + 1}.`)]], of: [] }));
    const pdf = await read(paperOf({ blocks: [steps([{ horse, hands: [], shaft: [] }])], notes }));
    const pages = pdf.pages.map(squashed);
    for (let note = 1; note <= 30; note += 1) {
      const calledOn = pages.findIndex((page) => page.includes(`Line${note}.`));
      const standsOn = pages.findIndex((page) => page.includes(`${note}Note${note}.`));
      expect([note, standsOn]).toEqual([note, calledOn]);
    }
    // The number of the step is said again at the head of each page it goes on to.
    for (const page of pdf.pages.slice(1)) expect(page).toMatch(/Where\n1 Line/);
  });
});
