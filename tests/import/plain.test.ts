/** tests/import/plain.test.ts - plain text and Markdown of our own and what they become. Rules: server/import/RULES.md. */
import { describe, expect, test } from "vitest";
import { imported, losses, shown } from "./shown.ts";

describe("[I11] reference lines in plain text", () => {
  const cases: [name: string, text: string, expected: string[]][] = [
    [
      "dotted",
      "7.13\n\nWalk on\nand on.\n\nHalt.\n\n7.14\nTurn.",
      ["7.13 | 7:  | Walk on and on. / Halt.", "7.14 | 7:  | Turn."],
    ],
    ["CRLF", "7.13\r\nWalk on.\r\n7.14\r\nTurn.\r\n", ["7.13 | 7:  | Walk on.", "7.14 | 7:  | Turn."]],
    ["in brackets", "[7.13]\nWalk on.", ["7.13 | 7:  | Walk on."]],
    ["in brackets before the words", "[7.13] Walk on.\n[7.14] Turn.", ["7.13 | 7:  | Walk on.", "7.14 | 7:  | Turn."]],
    ["behind #", "# 7.13\nWalk on.", ["7.13 | 7:  | Walk on."]],
    ["a section sign", "§ 12\nWalk on.", ["12 |  | Walk on."]],
    ["a range", "7.13-7.17\nWalk on.", ["7.13–17 | 7:  | Walk on."]],
    ["leaves", "f. 12v\nWalk on.\n\nfol. 13r, ll. 3-9\nTurn.", ["f. 12v |  | Walk on.", "f. 13r, ll. 3–9 |  | Turn."]],
    ["pages", "p. 212\nWalk on.\np. 213\nTurn.", ["p. 212 |  | Walk on.", "p. 213 |  | Turn."]],
    ["several on a line", "7.13; f. 12v; p. 212\nWalk on.", ["7.13; f. 12v; p. 212 | 7:  | Walk on."]],
    ["a leaf behind a section is a second reference", "7.13\nf. 12v\nWalk on.", ["7.13; f. 12v | 7:  | Walk on."]],
    [
      "a leaf inside a section turns the page",
      "7.13\nWalk on.\n\nf. 12v\n\nTurn.",
      ["7.13; f. 12v | 7:  | Walk on. / [folio 12v]Turn."],
    ],
    [
      "the end of a wrapped line is no page",
      "7.13\nas is said on\np. 212\nof the print.",
      ["7.13 | 7:  | as is said on p. 212 of the print."],
    ],
    ["a number alone is words", "7.13\nWalk on.\n\n12\n\nTurn.", ["7.13 | 7:  | Walk on. / 12 / Turn."]],
    ["capital headings title what follows", "OF THE WALK\n\n7.13\nWalk on.", ["7.13 | 7: OF THE WALK | Walk on."]],
  ];
  test.each(cases)("%s", (_name, text, expected) => {
    expect(shown(text, "plain")).toEqual(expected);
  });

  test("[I1] a reference without words is reported", () => {
    expect(losses(imported("7.13\n7.14\nTurn.", "plain"))).toEqual(["1:1 reference 7.13 (1)"]);
  });
});

describe("[I12] numbered paragraphs, chapters, counting", () => {
  const cases: [name: string, text: string, expected: string[]][] = [
    ["numbers with a stop", "1. Walk on.\n\nSit still.\n\n2. Halt.", ["1 |  | Walk on. / Sit still.", "2 |  | Halt."]],
    ["numbers with a bracket", "11) Walk on.\n\n12) Halt.", ["11 |  | Walk on.", "12 |  | Halt."]],
    ["section signs", "§ 11 Walk on.\n\n§ 12. Halt.", ["11 |  | Walk on.", "12 |  | Halt."]],
    ["one line each", "1. Walk on.\n2. Halt.\n3. Turn.", ["1 |  | Walk on.", "2 |  | Halt.", "3 |  | Turn."]],
    ["one alone at the start", "782. 1. _Draw_, 2. _BLADE_.", ["782 |  | 1. *Draw*, 2. *BLADE*."]],
    [
      "lists inside do not count",
      "7. Thus:\n\n1. Walk on.\n\n2. Halt.\n\n8. Turn.\n\n9. Again.",
      ["7 |  | Thus: / 1. Walk on. / 2. Halt.", "8 |  | Turn.", "9 |  | Again."],
    ],
    [
      "a heading in capitals is the title of what follows",
      "1. Walk on.\n\nOF THE HALT.\n\n2. Halt.",
      ["1 |  | Walk on.", "2 | : OF THE HALT. | Halt."],
    ],
    [
      "headings one behind the other",
      "PART ONE\n\nOF THE WALK\n\n1. Walk on.\n\n2. Halt.",
      ["1 | : PART ONE · OF THE WALK | Walk on.", "2 | : PART ONE · OF THE WALK | Halt."],
    ],
    [
      "capitals that nothing follows stay words",
      "1. Walk on.\n\n2. Halt.\n\nTHE END",
      ["1 |  | Walk on.", "2 |  | Halt. / THE END"],
    ],
    [
      "numbers that begin anew in each chapter",
      "I\n\n1. Walk on.\n\n2. Halt.\n\n3. Sit.\n\nII\n\n1. Turn.\n\n2. Halt.\n\n3. Sit.",
      [
        "1.1 | 1:  | Walk on.",
        "1.2 | 1:  | Halt.",
        "1.3 | 1:  | Sit.",
        "2.1 | 2:  | Turn.",
        "2.2 | 2:  | Halt.",
        "2.3 | 2:  | Sit.",
      ],
    ],
    [
      "roman chapters with paragraphs counted",
      "THE BOOK\n\nVI\n\nWalk on.\n\nHalt.\n\nVII\n\nTurn.",
      ["front |  | THE BOOK", "6.1 | 6:  | Walk on.", "6.2 | 6:  | Halt.", "7.1 | 7:  | Turn."],
    ],
    ["chapters with a name", "CHAPTER VII. Of turning\n\nTurn.", ["7.1 | 7: Of turning | Turn."]],
    ["nothing at all: paragraphs are counted", "Walk on.\n\nHalt.", ["1 |  | Walk on.", "2 |  | Halt."]],
  ];
  test.each(cases)("%s", (_name, text, expected) => {
    expect(shown(text, "plain")).toEqual(expected);
  });

  test("counting is reported, and so are numbers that are missing or out of order", () => {
    expect(losses(imported("Walk on.", "plain")).join()).toContain("references: counted");
    const text = ["1. a", "2. b", "3. c", "90. d", "4. e", "7. f"].join("\n\n");
    expect(losses(imported(text, "plain"))).toEqual([
      "7:1 number at the start of a paragraph (1)",
      "11:1 numbers that are missing (1) 5 to 6",
    ]);
  });
});

describe("[I13] notes, emphasis and notices of plain text", () => {
  test.each([
    [
      "a note goes to its mark",
      "7.1\nTake the rein (1) short.\n\n (1) Or, the\n    reins.",
      ["7.1 | 7:  | Take the rein[note 1: Or, the reins.] short."],
    ],
    [
      "written out",
      "7.1\nTake the rein[2] short.\n\n[Footnote 2: Or, the reins.]",
      ["7.1 | 7:  | Take the rein[note 2: Or, the reins.] short."],
    ],
    [
      "inside emphasis",
      "7.1\nTake _the rein (1) short_.\n\n (1) Or not.",
      ["7.1 | 7:  | Take *the rein*[note 1: Or not.] *short*."],
    ],
    [
      "a mark that stands twice is not safe",
      "7.1\nOne (1) two (1).\n\n (1) Or not.",
      ["7.1 | 7:  | One (1) two (1). / (1) Or not."],
    ],
    ["a list is no note", "7.1\nThus:\n\n  (1) walk on", ["7.1 | 7:  | Thus: / (1) walk on"]],
    [
      "underscores inside words",
      "7.1\nsnake_case_word and _this one_.",
      ["7.1 | 7:  | snake_case_word and *this one*."],
    ],
  ])("%s", (_name, text, expected) => {
    expect(shown(text, "plain")).toEqual(expected);
  });

  test("a note that cannot be placed is reported when others can", () => {
    const file = imported("7.1\nOne (1) two.\n\n (1) Yes.\n\n (2) Where?", "plain");
    expect(losses(file)).toEqual(["6:2 note without a place (1) (2) Where?"]);
  });

  test("notices are cut and the title is read from them", () => {
    const file = imported(
      "Title: The Long\n  Reins\nTranslator: T. Groom\n\n*** START OF THIS COPY,\nAS IT IS ***\n\n1. Walk.\n\n2. Halt.\n\n*** END OF THIS COPY ***\nSmall print",
      "plain",
    );
    expect(file.texts.map(({ title, translator, passages }) => [title, translator, passages.length])).toEqual([
      ["The Long Reins", "T. Groom", 2],
    ]);
    expect(file.dropped.map(({ what }) => what)).toEqual(["lines 1 to 6", "lines 12 to 13"]);
  });
});

describe("Markdown", () => {
  const cases: [name: string, text: string, expected: string[]][] = [
    [
      "headings that are references",
      "# 7.13\n\nWalk **on**.\n\n## 7.14\n\nTurn _now_.",
      ["7.13 | 7:  | Walk *on*.", "7.14 | 7:  | Turn *now*."],
    ],
    ["reference lines", "7.13\nWalk on.\n\n[7.14]\nTurn.", ["7.13 | 7:  | Walk on.", "7.14 | 7:  | Turn."]],
    [
      "numbered paragraphs",
      "782. Walk on.\n\nSit still.\n\n783. Halt.",
      ["782 |  | Walk on. / Sit still.", "783 |  | Halt."],
    ],
    ["section signs", "§ 12 Walk on.\n\n§ 13 Halt.", ["12 |  | Walk on.", "13 |  | Halt."]],
    [
      "footnotes",
      "# 7.1\n\nTake the rein[^a] short.\n\n[^a]: Or, the\n    reins.",
      ["7.1 | 7:  | Take the rein[note a: Or, the reins.] short."],
    ],
    [
      "headings as titles",
      "## Of the walk\n\n1. Walk on.\n\n## Of the halt\n\n2. Halt.",
      ["1 | : Of the walk | Walk on.", "2 | : Of the halt | Halt."],
    ],
    [
      "chapters and counted paragraphs",
      "## Chapter 7: Turning\n\nTurn.\n\nHalt.",
      ["7.1 | 7: Turning | Turn.", "7.2 | 7: Turning | Halt."],
    ],
    ["headings only", "# Walk\n\nOn.\n\n# Halt\n\nNow.", ["1.1 | 1: Walk | On.", "2.1 | 2: Halt | Now."]],
    ["named letters and escapes", "# 7.1\n\na &mdash; b \\* c", ["7.1 | 7:  | a — b * c"]],
  ];
  test.each(cases)("%s", (_name, text, expected) => {
    expect(shown(text, "markdown")).toEqual(expected);
  });

  test("the one heading of the first rank is the title", () => {
    const [text] = imported("# The Long Reins\n\n1. Walk.\n\n2. Halt.", "markdown").texts;
    expect([text?.title, text?.passages.length]).toEqual(["The Long Reins", 2]);
  });

  test("[I1] raw HTML, pictures, addresses and unused notes are reported with their place", () => {
    const file = imported(
      "# 7.1\n\na <b>c</b> [d](http://example.invalid/) ![e](f.png)\n\n<div>g</div>\n\n[^z]: h",
      "markdown",
    );
    expect(file.texts[0]?.passages[0]?.text).toBe("a c d");
    expect(losses(file)).toEqual([
      "3:1 HTML tag (2) <b>",
      "3:1 address of a link (1) http://example.invalid/",
      "3:1 picture (1) e",
      "5:1 raw HTML (1) <div>g</div>",
      "7:1 footnote [^z] (1) h",
    ]);
  });
});
