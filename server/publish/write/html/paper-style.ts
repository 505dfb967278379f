/** server/publish/write/html/paper-style.ts - the look of a paper as one page: on a screen, and printed from there.
 *  May import: schema types, the room above. On a screen it is a leaf of its own width; printed, it has the sheet and the
 *  type of the paper. */
import type { Paper } from "../../../../schema/paper.ts";
import type { Look } from "../look-of.ts";
import { headWords } from "../running-words.ts";

export function paperStyle({ running, size }: Paper, look: Look): string {
  const { page } = look;
  const margins = `${page.top + 4}mm ${page.right}mm ${page.bottom}mm ${page.left}mm`;
  const head = `font:italic 8pt "Gentium Plus",serif;color:#6b6154`;
  return `@page{size:${size === "Letter" ? "letter" : size};margin:${margins};@top-left{content:${cssString(headWords(running.left))};${head}}@top-right{content:${cssString(headWords(running.right))};font:8pt "Source Sans 3",sans-serif;color:#6b6154}@bottom-right{content:counter(page) " of " counter(pages);font:8pt "Source Sans 3",sans-serif;color:#6b6154}}
@page:first{margin-top:${page.top}mm;@top-left{content:none}@top-right{content:none}}
@media print{html{font-size:${look.base}pt}}
${STYLE}`;
}

/** Words as a string of a style sheet: whatever is no plain letter or digit is written by its number. */
function cssString(words: string): string {
  const plain = [...words].map((character) =>
    /[A-Za-z0-9 ]/.test(character) ? character : `\\${(character.codePointAt(0) ?? 0).toString(16)} `,
  );
  return `"${plain.join("")}"`;
}

const STYLE = `
:root{color-scheme:light;--ink:#211c16;--soft:#6b6154;--firm:#9b8f7d;--rule:#cdbfa9;--rubric:#9e2a2b}
*{box-sizing:border-box}
html{background:#fff;color:var(--ink);font:17px/1.5 "Source Sans 3",sans-serif;font-variant-numeric:tabular-nums;-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{margin:0;overflow-wrap:break-word}
h1,h2,h3,h4,.said,em,.quote,.caution{font-family:"Gentium Plus",Amiri,serif}
[lang^="ar"]{font-family:Amiri,"Gentium Plus",serif}
h1,h2,h3,h4{font-weight:400;line-height:1.2;break-after:avoid;margin:1.5em 0 .45em;text-wrap:balance}
h1{font-size:1.9em;margin-top:1em}
h2{font-size:1.35em;font-style:italic}
h3{font-size:1.14em;font-style:italic}
h4{font-size:1em;font-style:italic}
main>:first-child{margin-top:0}
p{margin:.55em 0}
b,strong,th{font-weight:600}
a{color:inherit;text-decoration-color:var(--rule);text-decoration-thickness:1px;text-underline-offset:.42em}
.soft,.key,figcaption,caption{color:var(--soft)}
.part{white-space:nowrap}
.ref,.sign,.number{color:var(--rubric)}
.sign,.call[role]{font-size:.74em;vertical-align:.42em;line-height:0;margin-left:.14em;text-decoration:none}
.lead{font-size:1.1em}
.small,.key,figcaption,caption{font-size:.86em}
.key{white-space:pre-wrap}
.quote{margin:.7em 2em;font-size:1.06em}
.open{border-left:2px solid var(--rubric);padding-left:.8em}
.caution{border-top:1px solid var(--ink);padding-top:.6em;margin-top:1.6em;font-style:italic;break-inside:avoid}
.w-stated{border-bottom:.03em solid var(--firm)}
.w-implied{border-bottom:.08em dashed var(--ink)}
.w-supplied{border-bottom:.1em dotted var(--ink)}
.w-not-settled{border-bottom:.2em double var(--rubric)}
.silent{color:var(--soft);letter-spacing:.2em;white-space:nowrap;padding:0 .2em}
.nothing{display:inline-block;width:2em;border-top:1px solid var(--soft);vertical-align:.3em;margin:0 .1em}
.list{margin:.5em 0;padding-left:1.5em}
ul.list{list-style:"–  "}
.list li{margin:.2em 0}
.facts{display:grid;grid-template-columns:7em 1fr;gap:.15em .8em;margin:.8em 0}
.facts dt{color:var(--soft)}
.facts dd,.entries dd{margin:0}
.wide{overflow-x:auto;margin:.8em 0 1.2em}
table{width:100%;border-collapse:collapse;border-bottom:1.2px solid var(--ink);line-height:1.4}
caption{text-align:left;padding-bottom:.4em}
col.number{width:6%}
th,td{text-align:left;vertical-align:top;padding:.35em .8em .4em 0}
:is(th,td):last-child{padding-right:0}
thead th{font-weight:400;color:var(--soft);font-size:.88em;border-bottom:1.2px solid var(--ink);padding-top:0}
tbody+tbody{border-top:.7px solid var(--rule)}
.plain tbody th,.steps tbody th{color:var(--rubric)}
tbody,tbody tr{break-inside:avoid}
tbody.tall,tbody.tall tr{break-inside:auto}
td.minor{font-size:.86em;padding-top:0}
.calls{list-style:none;margin:0;padding:0}
.calls li{display:grid;grid-template-columns:3.6em 1fr;border-bottom:.7px solid var(--rule);padding:.7em 0;break-inside:avoid}
.calls .number{font-size:2em;font-weight:400;line-height:1.1}
.calls p{margin:0}
.calls p.call{font-size:2em;font-weight:600;line-height:1.15}
.calls p.act{font-size:1.4em;line-height:1.25}
.calls .when{font-size:1.15em}
figure{margin:1.2em 0;text-align:center;break-inside:avoid}
figure svg{max-width:100%;height:auto}
figcaption{margin-top:.4em}
.beside{display:grid;grid-template-columns:1.55fr 1fr;gap:2em}
.beside>div{min-width:0}
.beside>div:last-child{font-size:.9em}
.beside.figures{grid-template-columns:minmax(0,1fr) fit-content(52%)}
.beside.alike{grid-template-columns:1fr 1fr}
.beside.alike>div:last-child{font-size:1em}
:is(.figures,.alike)>div>:first-child{margin-top:0}
:is(.figures,.alike) figcaption{max-width:28em;margin-inline:auto}
.beside .quote{margin-inline:0}
.entries{margin:.7em 0}
.entries>div{margin:0 0 .5em;break-inside:avoid}
.entries p{margin:0 0 .15em}
.apparatus>div,.questions>div,.sigla>div{display:grid;grid-template-columns:2.2em 1fr}
.sigla>div{grid-template-columns:3.6em 1fr}
:is(.apparatus,.questions,.sigla) dt{color:var(--rubric)}
.glossary dt{font-weight:600}
.bibliography dt,.index dt{font-weight:400}
:is(.glossary,.index) dt{display:inline;margin-right:.6em}
:is(.glossary,.index) dd,:is(.glossary,.index) dd p:first-child{display:inline}
:is(.glossary,.index,.bibliography)>div{padding-left:1.2em;text-indent:-1.2em}
:is(.glossary,.index,.bibliography) dd p+p{text-indent:0}
.index{columns:2;column-gap:2em;font-size:.92em}
.index>div{margin-bottom:.15em}
.writing i{display:block;height:2em;border-bottom:.7px solid var(--rule)}
.contents ol{list-style:none;margin:.6em 0;padding:0}
.contents a{text-decoration:none}
.contents .level-2{padding-left:1.2em}.contents .level-3{padding-left:2.4em}.contents .level-4{padding-left:3.6em}
.page-break{border:0;border-top:.7px solid var(--rule);margin:2em 0}
.notes{border-top:.7px solid var(--rule);margin-top:2em;font-size:.9em}
.notes h2{font-size:1.2em;margin-top:.8em}
.notes ol{padding-left:1.6em;margin:0}
.notes p{margin:0 0 .15em}
.foot{color:var(--soft);font-size:.8em;margin-top:2em}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
@media screen{body{max-width:50rem;margin:0 auto;padding:2.5rem 1.5rem 4rem}}
@media screen and (max-width:40rem){html{font-size:16px}.beside,.beside.figures,.beside.alike{grid-template-columns:1fr;gap:.6em}.quote{margin-inline:1em}.index{columns:1}.wide{overflow-x:visible}.steps thead{position:absolute;clip-path:inset(50%);height:1px;overflow:hidden}.steps,.steps tbody,.steps tr,.steps td,.steps tbody th{display:block}.steps td{padding-block:0}.steps td:empty{display:none}.steps td:last-child{padding-bottom:.5em}.steps td[data-name]::before{content:attr(data-name);display:block;color:var(--soft);font-size:.8em;margin-top:.2em}.steps colgroup{display:none}}
@media print{.page-break{border:0;margin:0;break-after:page}.notes{break-before:auto}a{text-decoration:none}}
`.trim();
