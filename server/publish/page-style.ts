/** server/publish/page-style.ts - the look of the printed page: a scholar's page that can be ridden from.
 *  May import: nothing. Sizes in points and millimetres, because it is paper; on a screen it is shown as that paper. */

export const PAGE_STYLE = `
@page{size:A4;margin:16mm 15mm 18mm}
@page{@bottom-right{content:counter(page) " / " counter(pages);font:8pt "Source Sans 3",sans-serif;color:#6b6154}}
:root{color-scheme:light;--ink:#211c16;--soft:#6b6154;--rule:#cdbfa9;--rubric:#9e2a2b}
*{box-sizing:border-box}
html{background:#fff;color:var(--ink);font:9.5pt/1.42 "Source Sans 3","Noto Sans",sans-serif;font-variant-numeric:tabular-nums;-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{margin:0}
.said,em,h1,h2,.title,.advice-words{font-family:"Gentium Plus",Amiri,Gentium,serif}
[lang^="ar"]{font-family:Amiri,"Gentium Plus",serif}
h1{font-size:21pt;line-height:1.2;font-weight:400;margin:1mm 0 1.5mm;text-wrap:balance}
h1 b{color:var(--rubric);font-weight:400;margin-right:.25em}
h2{font-size:12.5pt;font-weight:400;font-style:italic;margin:5mm 0 1.2mm;break-after:avoid}
p{margin:0 0 1.2mm}
b,th{font-weight:600}
.soft{color:var(--soft)}
.ref,.sign{color:var(--rubric);text-decoration:none}
.sign{font-size:.78em;vertical-align:.35em;line-height:0;margin-left:.1em}
.book{color:var(--soft);margin:0;display:flex;justify-content:space-between;gap:6mm}
.book .said{font-style:italic}
.facts{margin:0 0 2.5mm;display:grid;grid-template-columns:21mm 1fr 18mm 1fr;gap:.4mm 2mm}
.facts dt{color:var(--soft)}
.facts dd{margin:0}
.part{border-left:2px solid var(--rubric);padding-left:2.5mm;margin:2.5mm 0}
.part.whole{border-left:.5pt solid var(--rule)}
.lines{display:flex;flex-wrap:wrap;gap:.6mm 2.4mm;color:var(--soft);margin:3mm 0 2mm;font-size:8pt}
.w-stated{border-bottom:.9pt solid var(--ink)}
.w-implied{border-bottom:.9pt dashed var(--ink)}
.w-supplied{border-bottom:1.2pt dotted var(--ink)}
.w-not-settled{border-bottom:2.4pt double var(--rubric)}
.silent{color:var(--soft);letter-spacing:.28em;white-space:nowrap}
.nothing{color:var(--soft);white-space:nowrap}
.nothing::before{content:"";display:inline-block;width:8mm;border-top:.6pt solid var(--soft);vertical-align:.3em;margin-right:1mm}
.lines .nothing::before{width:5mm}
.beside{color:var(--soft)}
.title{font-size:12pt}
table.steps{width:100%;border-collapse:collapse;table-layout:fixed;border-bottom:.9pt solid var(--ink)}
col.no{width:8mm}col.hand{width:36mm}col.shaft{width:50mm}
thead th{text-align:left;color:var(--soft);font-weight:400;font-size:8.6pt;padding:0 3mm 1mm 0;border-bottom:.9pt solid var(--ink)}
tbody{break-inside:avoid;border-top:.5pt solid var(--rule)}
tbody tr{break-inside:avoid}
tbody.tall,tbody.tall tr:last-child{break-inside:auto}
tbody tr:first-child{break-after:avoid}
tbody:first-of-type{border-top:0}
td,tbody th{vertical-align:top;text-align:left;padding:0 3mm 1.4mm 0;line-height:1.45;overflow-wrap:break-word}
td{font-size:10.5pt}
tbody tr:first-child>*{padding-top:1.6mm}
tbody th{color:var(--rubric);font-size:12pt;line-height:1.25}
td.where{padding-right:0;padding-bottom:2mm;font-size:8pt;line-height:1.38}
td.where .said{font-size:8.4pt}
td.where .place{display:grid;grid-template-columns:1fr 1fr;column-gap:5mm}
td.where .place+.place{margin-top:.6mm}
td.where .place>:only-child{grid-column:1/-1}
.rests{columns:2;column-gap:5mm;margin-top:.8mm;color:var(--soft)}
.rests li{margin:0;break-inside:avoid}
.supports{font-style:italic}
.inherited{color:var(--soft)}
.inherited .w-stated,.inherited .w-implied,.inherited .w-supplied{border-color:var(--soft)}
.advice-words{font-style:italic;font-size:11pt}
.untreated tr:first-child td{border-left:3pt double var(--soft);padding-left:2.5mm;color:var(--soft)}
.apparatus dl,.questions{margin:0;display:grid;grid-template-columns:8mm 1fr;row-gap:2mm}
.apparatus dt,.questions dt{color:var(--rubric)}
.apparatus dd,.questions dd{margin:0}
.apparatus dd{break-inside:avoid}
.apparatus p{margin:0 0 .6mm}
.apparatus .other{padding-left:5mm;text-indent:-2.5mm}
.apparatus .key{break-after:avoid;font-size:8.6pt;margin-bottom:2mm}
ul{list-style:none;margin:0;padding:0}
li{margin:0 0 1.2mm;padding-left:3mm;text-indent:-3mm}
.caution{break-before:avoid;border-top:.9pt solid var(--ink);margin-top:5mm;padding-top:2mm;font-style:italic;break-inside:avoid;font-family:"Gentium Plus",Gentium,serif;font-size:9.8pt}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
@media screen{
html{background:#fff}
body{max-width:210mm;margin:0 auto;padding:16mm 15mm}
}
@media screen and (max-width:44rem){body{padding:5mm}.facts{grid-template-columns:21mm 1fr}.steps td{font-size:9.4pt}col.no{width:6mm}col.hand,col.shaft{width:auto}td.where .place{display:block}.rests{columns:1}}
`.trim();
