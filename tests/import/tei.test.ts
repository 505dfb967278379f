/** tests/import/tei.test.ts - small TEI texts of our own and what they become. Rules: server/import/RULES.md. */
import { describe, expect, test } from "vitest";
import { imported, losses, shown, showPassage, tei, teiP4 } from "./shown.ts";

const milestone = (unit: string, n: string) => `<milestone unit="${unit}" n="${n}"/>`;

const PATTERN = `<refsDecl n="CTS">
  <cRefPattern n="section" matchPattern="(\\w+).(\\w+)" replacementPattern="#xpath(/tei:TEI/tei:text/tei:body/tei:div/tei:div[@n='$1']/tei:div[@n='$2'])"/>
  <cRefPattern n="chapter" matchPattern="(\\w+)" replacementPattern="#xpath(/tei:TEI/tei:text/tei:body/tei:div/tei:div[@n='$1'])"/>
</refsDecl>`;
const STRUCTURE = `<refsDecl><citeStructure unit="book" match="//div[@type='book']" use="@n"><citeStructure unit="rule" match="p" use="@n"/></citeStructure></refsDecl>`;

describe("[I7] passages and their references", () => {
  const cases: [name: string, document: string, expected: string[]][] = [
    [
      "milestones of P4 cut the running text",
      teiP4(`<p>${milestone("chapter", "1")}${milestone("section", "1")}Walk on.
        ${milestone("section", "2")} Halt. ${milestone("chapter", "2")}${milestone("section", "1")}Turn.</p>`),
      ["1.1 | 1:  | Walk on.", "1.2 | 1:  | Halt.", "2.1 | 2:  | Turn."],
    ],
    [
      "a paragraph milestone begins a block",
      teiP4(`<p>${milestone("chapter", "1")}${milestone("section", "1")}Walk on.<milestone unit="para"/>Halt.</p>`),
      ["1.1 | 1:  | Walk on. / Halt."],
    ],
    [
      "divisions that nobody declared are found",
      tei(
        `<div n="1" type="textpart" subtype="chapter"><head>Of the walk</head><div n="1" type="textpart" subtype="section"><p>Walk on.</p><p>Sit still.</p></div></div>`,
      ),
      ["1.1 | 1: Of the walk | Walk on. / Sit still."],
    ],
    [
      "the head of a passage is a heading in it",
      tei(`<div n="1"><head>Of the walk</head><p>Walk on.</p></div>`),
      ["1 |  | # Of the walk / Walk on."],
    ],
    [
      "cRefPattern names the levels; the edition's wrapper is none",
      tei(
        `<div type="edition" n="urn:cts:demo:rider.reins.ed1"><div type="textpart" subtype="chapter" n="3"><div type="textpart" n="4"><p>Lower the point.</p></div></div></div>`,
        PATTERN,
      ),
      ["3.4 | 3:  | Lower the point."],
    ],
    [
      "citeStructure names the levels",
      tei(`<div type="book" n="2"><p n="a">Lower the point.</p><p n="b">Raise it.</p></div>`, STRUCTURE),
      ["2.a | 2:  | Lower the point.", "2.b | 2:  | Raise it."],
    ],
    [
      "numbered segments",
      tei(`<div n="1"><p><seg n="1">Walk on.</seg> <seg n="2">Halt.</seg></p></div>`),
      ["1.1 | 1:  | Walk on.", "1.2 | 1:  | Halt."],
    ],
    [
      "nothing is numbered: divisions and paragraphs are counted",
      tei(`<div><head>Of the walk</head><p>Walk on.</p><p>Halt.</p></div><div><p>Turn.</p></div>`),
      ["1.1 | 1: Of the walk | Walk on.", "1.2 | 1: Of the walk | Halt.", "2.1 | 2:  | Turn."],
    ],
    [
      "words before the first reference are the front",
      teiP4(`<p>To the reader. ${milestone("chapter", "1")}${milestone("section", "1")}Walk on.</p>`),
      ["front |  | To the reader.", "1.1 | 1:  | Walk on."],
    ],
    [
      "words of a chapter before its first section stand at the chapter",
      teiP4(`<div type="chapter" n="1"><p>Of the walk.</p><div type="section" n="1"><p>Walk on.</p></div></div>`),
      ["1 | 1:  | Of the walk.", "1.1 | 1:  | Walk on."],
    ],
    [
      "a division without a number among numbered ones is cited by its kind",
      tei(`<div type="preface"><p>To the reader.</p></div><div n="1"><p>Walk on.</p></div>`),
      ["preface |  | To the reader.", "1 |  | Walk on."],
    ],
    [
      "words after the last division are outside all references",
      tei(`<div n="1"><p>Walk on.</p></div><p>Farewell.</p>`),
      ["1 |  | Walk on.", "unnumbered |  | Farewell."],
    ],
  ];
  test.each(cases)("%s", (_name, document, expected) => {
    expect(shown(document, "tei")).toEqual(expected);
  });

  test("levels take the names of the scheme", () => {
    const levels = (document: string) => imported(document, "tei").texts[0]?.levels;
    expect(levels(tei(`<div n="3"><div n="4"><p>x</p></div></div>`, PATTERN))).toEqual(["chapter", "section"]);
    expect(levels(tei(`<div type="book" n="2"><p n="a">x</p></div>`, STRUCTURE))).toEqual(["book", "rule"]);
    expect(levels(teiP4(`<p>${milestone("section", "1")}x</p>`))).toEqual(["section"]);
  });
});

describe("[I1] [I6] [I9] [I10] what the words become", () => {
  const cases: [name: string, body: string, expected: string, lost?: string[]][] = [
    ["blanks collapse, none at the ends", "<p>\n  Walk \t on \n<hi>now</hi> .\n</p>", "Walk on *now* ."],
    ["blanks inside a mark", "<p>Walk <hi> on </hi>now</p>", "Walk *on* now"],
    ["other spaces are letters", "<p>ll.\u00a03</p>", "ll.\u00a03"],
    ["no normalisation", "<p>e\u0301 \u00e9</p>", "e\u0301 \u00e9"],
    [
      "marks",
      "<p><emph>a</emph> <supplied>b</supplied> <unclear>c</unclear> <foreign xml:lang='la'>d</foreign></p>",
      "*a* <b> ?c? {la: d}",
    ],
    [
      "a note clings to its word",
      "<p>the left<note n='1'>So <hi>all</hi> copies.</note> hand</p>",
      "the left[note 1: So all copies.] hand",
    ],
    ["a gap", "<p>the <gap reason='torn'/> hand</p>", "the [gap torn] hand"],
    ["verse", "<lg><l>Walk on,</l><l>walk on.</l></lg>", "~ Walk on, / ~ walk on."],
    [
      "list items are blocks",
      "<p>Three: <list><item>one</item><item>two</item></list> and more</p>",
      "Three: / one / two / and more",
    ],
    ["a line beginning parts words", "<p>walk<lb n='2'/>on</p>", "walk [line 2]on"],
    ["a line beginning inside a word", "<p>wal- <lb break='no'/> king</p>", "wal-[line ]king"],
    ["a column beginning inside a word", "<p>wal<cb n='b'/>king</p>", "wal[column b]king"],
    [
      "lem is kept",
      "<p>the <app><lem wit='#A'>left</lem><rdg wit='#B'>right</rdg></app> hand</p>",
      "the left hand",
      ["reading of #B (1) right"],
    ],
    [
      "corr is kept",
      "<p><choice><sic>lfet</sic><corr>left</corr></choice> hand</p>",
      "left hand",
      ["element <sic> (1) lfet"],
    ],
    [
      "expan is kept",
      "<p>the <choice><abbr>h.</abbr><expan>horse</expan></choice></p>",
      "the horse",
      ["element <abbr> (1) h."],
    ],
    ["reg is kept", "<p><choice><orig>hors</orig><reg>horse</reg></choice></p>", "horse", ["element <orig> (1) hors"]],
    [
      "the reading in an attribute (P4)",
      "<p><sic corr='left'>lfet</sic> <corr sic='hnad'>hand</corr></p>",
      "left hand",
      ["element <sic> (1) lfet", "other reading in <corr> (1) hnad"],
    ],
    [
      "deleted words",
      "<p>the <subst><del>right</del><add>left</add></subst> hand</p>",
      "the left hand",
      ["element <del> (1) right", "tag <add> (1)"],
    ],
    [
      "figures",
      "<p>as shown<figure><figDesc>A rider</figDesc></figure>.</p>",
      "as shown.",
      ["element <figure> (1) A rider"],
    ],
    [
      "unknown elements pass through",
      "<p>near <placeName>Ostwick</placeName></p>",
      "near Ostwick",
      ["tag <placeName> (1)"],
    ],
    [
      "comments and instructions",
      "<p>a<!-- not me -->b<?print?></p>",
      "ab",
      ["comment (1) not me", "instruction <?print?> (1)"],
    ],
    ["CDATA", "<p>a <![CDATA[< b]]></p>", "a < b"],
    ["named letters", "<p>&ldquo;caf&eacute;&rdquo; &mdash; &amp; &#x1F40E;</p>", "“café” — & 🐎"],
    [
      "unknown entities leave nothing but a report",
      "<p>the &horse.name; hand</p>",
      "the hand",
      ["entity &horse.name; (1)"],
    ],
  ];
  test.each(cases)("%s", (_name, body, expected, lost = []) => {
    const file = imported(tei(`<div n="1">${body}</div>`), "tei");
    expect(file.texts.flatMap(({ passages }) => passages.map(showPassage))).toEqual([`1 |  | ${expected}`]);
    const usual = /element <teiHeader>|references: found/;
    expect(
      losses(file)
        .filter((loss) => !usual.test(loss))
        .map((loss) => loss.replace(/^\d+:\d+ /, "")),
    ).toEqual(lost);
  });

  test("[I1] a loss is told with its line and column, equal ones once with a count", () => {
    const file = imported(tei(`<div n="1">\n<p>one <del>two</del>\n  and &lost; <del>three</del></p></div>`), "tei");
    expect(losses(file).slice(2)).toEqual(["2:8 element <del> (2) two", "3:7 entity &lost; (1)"]);
  });

  test("[I4] an entity of the file's own is read, one from outside is not", () => {
    const doctype = `<!DOCTYPE TEI SYSTEM "http://example.invalid/tei.dtd" [
      <!ENTITY who "the &what;"> <!ENTITY what "ri&#100;er"> <!ENTITY far SYSTEM "file:///etc/hosts"> <!ENTITY el "<p>x</p>">
      <!ENTITY % outer SYSTEM "http://example.invalid/x.ent"> %outer; ]>`;
    const file = imported(doctype + tei(`<div n="1"><p>&who; &far; &el; rides</p></div>`), "tei");
    expect(file.texts[0]?.passages.map(({ text }) => text)).toEqual(["the rider rides"]);
    expect(losses(file).join("\n")).toMatch(/document type http.*entity &far; \(1\)\n.*entity &el; \(1\)/s);
  });

  test("[I9] pages and leaves become references, from the first word to the last", () => {
    expect(
      shown(
        tei(
          `<div n="1"><pb n="12r"/><p>Walk <pb n="12v"/>on.</p></div><div n="2"><pb ed="#B" n="212"/><p>Halt.</p></div>`,
        ),
        "tei",
      ),
    ).toEqual(["1; f. 12r–v |  | [folio 12r]Walk [folio 12v]on.", "2; f. 12v; B p. 212 |  | [page 212]Halt."]);
  });

  test("[I9] numbered lines are part of a leaf's reference", () => {
    const [passage] =
      imported(tei(`<div n="1"><pb n="f. 3r"/><p><lb n="4"/>Walk<lb n="5"/> on.</p></div>`), "tei").texts[0]
        ?.passages ?? [];
    expect(passage?.references[1]).toEqual({
      kind: "folio",
      witness: "",
      from: { leaf: 3, side: "r", line: 4 },
      to: { leaf: 3, side: "r", line: 5 },
    });
  });
});

describe("[I8] what is said of a text", () => {
  const group = `<TEI.2><teiHeader><fileDesc><titleStmt><title>Small Works</title><author>A. Rider</author><editor role="transl">T. Groom</editor></titleStmt></fileDesc>
    <profileDesc><langUsage><language id="en">English</language><language id="greek">Greek</language></langUsage></profileDesc></teiHeader>
    <text><group><text n="One"><head>The Walk</head><body><div1 n="1"><p>Walk on.</p></div1></body></text>
    <text n="Two"><body><div1 n="1"><p>Halt.</p></div1></body></text></group></text></TEI.2>`;

  test("each text of a group is a text of its own", () => {
    const { format, texts } = imported(group, "tei");
    expect(format).toBe("tei-p4");
    expect(
      texts.map(({ number, title, author, translator, language }) => [number, title, author, translator, language]),
    ).toEqual([
      [1, "The Walk", "A. Rider", "T. Groom", "en"],
      [2, "Two", "A. Rider", "T. Groom", "en"],
    ]);
  });

  test("each document of a corpus is read with the corpus's header behind its own", () => {
    const one = tei(`<div n="1"><p>Walk.</p></div>`);
    const corpus = `<teiCorpus><teiHeader><fileDesc><titleStmt><title>All</title><author>A. Rider</author></titleStmt></fileDesc></teiHeader>${one}${one}</teiCorpus>`;
    expect(imported(corpus, "tei").texts.map(({ number, author }) => [number, author])).toEqual([
      [1, "A. Rider"],
      [2, "A. Rider"],
    ]);
  });

  test.each([
    [
      "idno",
      tei("<p>x</p>", "", "<fileDesc><idno type='CTS'>urn:cts:demo:rider.reins.ed1</idno></fileDesc>"),
      "urn:cts:demo:rider.reins.ed1:",
    ],
    [
      "a division",
      tei(`<div type="translation" xml:lang="eng" n="urn:cts:demo:rider.reins.tr1:"><div n="1"><p>x</p></div></div>`),
      "urn:cts:demo:rider.reins.tr1:",
    ],
    [
      "with a passage",
      tei(`<div type="edition" n="urn:cts:demo:rider.reins.ed1:1.2"><div n="1"><p>x</p></div></div>`),
      "urn:cts:demo:rider.reins.ed1:",
    ],
    ["nowhere", tei("<p>x</p>"), ""],
    ["another urn", tei("<p>x</p>", "", "<fileDesc><idno>urn:isbn:0</idno></fileDesc>"), ""],
  ])("a CTS URN in %s", (_where, document, urn) => {
    expect(imported(document, "tei").texts[0]?.urn).toBe(urn);
  });

  test("the language is that of the edition or translation", () => {
    expect(
      imported(tei(`<div type="translation" xml:lang="eng"><div n="1"><p>x</p></div></div>`), "tei").texts[0]?.language,
    ).toBe("en");
  });

  test("[I10] Greek in Beta Code is changed, in its own language only", () => {
    const body = `<div n="1" lang="greek"><p>to\\n i(/ppon, <foreign lang="en">a horse (so)</foreign></p></div>`;
    const file = imported(teiP4(body).replace(/<refsDecl>.*<\/refsDecl>/, ""), "tei");
    expect(file.texts[0]?.passages[0]?.text).toBe("τὸν ἵππον, a horse (so)");
    expect(losses(file).join()).toContain("Greek in Beta Code");
  });
});
