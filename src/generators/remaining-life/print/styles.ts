// Style sheet of the report, on top of the shared one of generators/page.

export const reportStyles = `
.masthead { display: flex; justify-content: space-between; align-items: flex-end; gap: 6mm; border-bottom: 2pt solid #000; padding-bottom: 2mm; margin-bottom: 3mm; }
.masthead p { margin: 0; }
.asof { text-align: right; white-space: nowrap; }
.asof strong { font-size: 13pt; display: block; }
.lead { font-size: 12.5pt; line-height: 1.35; margin: 0 0 3mm; }
.rank { font-size: 12pt; font-weight: bold; }
.name { font-weight: bold; white-space: nowrap; color: inherit; text-decoration: none; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
a.name:hover, a.name:focus { text-decoration: underline; }
.sub { display: block; font-size: 8.8pt; color: #333; font-weight: normal; }
.verdict { font-weight: bold; }
.wrap { white-space: normal; min-width: 30mm; }
.charts { display: grid; grid-template-columns: repeat(3, 1fr); gap: 2mm 4mm; margin: 1mm 0 3mm; }
.charts svg { break-inside: avoid; }
.facts { display: grid; grid-template-columns: repeat(auto-fit, minmax(25mm, 1fr)); gap: 1mm 4mm; margin: 1mm 0 3mm; }
.facts div { border-top: 0.5pt solid #8c8c8c; padding-top: 0.8mm; }
.facts dt { font-size: 8.6pt; color: #333; }
.facts dd { margin: 0; font-weight: bold; font-size: 10.5pt; }
dl { margin: 0; }
tr.first td { background: #f3f3f3; font-weight: bold; }
tr.no-reading td { font-style: italic; }
.key { display: flex; flex-wrap: wrap; gap: 1mm 5mm; align-items: center; font-size: 8.8pt; margin: 0 0 2mm; }
.key span { display: inline-flex; align-items: center; gap: 1.5mm; }
.key svg { width: 7mm; height: 4mm; }
.words div { display: grid; grid-template-columns: 32mm 1fr; gap: 3mm; padding: 0.8mm 0; border-bottom: 0.5pt solid #c0c0c0; font-size: 9.2pt; }
.words dt { font-weight: bold; }
.words dd { margin: 0; }
table.front { table-layout: fixed; } table.front th:nth-child(1) { width: 6mm; } table.front th:nth-child(2) { width: 25mm; }
table.front th:nth-child(4) { width: 27mm; } table.front th:nth-child(5) { width: 23mm; } table.front th small { font-size: 7pt; } table.front th:nth-child(6) { width: 26mm; }
table.front td, table.front th { padding-left: 1mm; padding-right: 1mm; }
table.front th small, table.front .name { white-space: normal; }
.front-page h1 { font-size: 18pt; margin-bottom: 0.5mm; } .front-page .masthead { margin-bottom: 1.5mm; padding-bottom: 1mm; } .front-page .lead { font-size: 10.2pt; margin-bottom: 1.5mm; }
.front-page table { font-size: 9pt; margin-bottom: 1.5mm; } .front-page table .sub { font-size: 7.7pt; line-height: 1.25; }
.front-page td, .front-page th { padding-top: 0.6mm; padding-bottom: 0.6mm; }
.front-page .options { margin: 1.5mm 0.5mm 1.5mm 0; padding: 1mm 2mm; } .front-page .options h3 .sub { font-size: 7.6pt; } .front-page .options table { font-size: 8.2pt; } .front-page .options td, .front-page .options th { padding: 0.3mm 1mm; }
.front-page .options td.number .sub { white-space: nowrap; }
.front-page .small { font-size: 8.4pt; line-height: 1.3; margin: 0.5mm 0 1.5mm; } .front-page ul { margin: 0.5mm 0; } .front-page li { margin: 0; }
.options { border: 1.2pt solid #000; padding: 1.5mm 2.5mm; margin: 2mm 0.5mm 3mm 0; break-inside: avoid; }
.options h3 { margin: 0 0 1mm; } .options table { margin-bottom: 0; }
h3 .sub { display: inline; }
.working { font-size: 8.8pt; margin: 1mm 0 3mm; }
.working summary { font-weight: bold; }
h2 .sub { display: inline; font-size: 11pt; margin-left: 2mm; }
table.tight { font-size: 8.8pt; }
td.day, th.day { white-space: nowrap; }
table.matrix th { font-size: 8pt; }
.formulas { columns: 2; column-gap: 8mm; }
.formulas h3 { margin-top: 3mm; }
.formulas > div:first-child h3 { margin-top: 0; }
th.number, th.day { white-space: normal; }
th small { white-space: nowrap; } table.tight th small { white-space: normal; }
table.tight th, table.tight td { padding-left: 0.7mm; padding-right: 0.7mm; }
table.tight .sub { font-size: 7.8pt; }
td.number .sub { white-space: nowrap; }
.boxed { border: 1.6pt solid #000; padding: 0.4mm 1.2mm; margin: -0.4mm -1.2mm; display: inline-block; }
table.choice td, table.choice th { padding: 1mm 1.5mm; } table.choice td .sub { white-space: normal; }
.formula { font-family: "Liberation Mono", "DejaVu Sans Mono", Menlo, Consolas, monospace; font-size: 9pt; white-space: pre-wrap; margin: 0.5mm 0 1.5mm; }
.photos { display: grid; grid-template-columns: repeat(3, 1fr); gap: 2mm 4mm; margin: 1mm 0 3mm; }
.photo { margin: 0; }
.photo img { max-width: 100%; max-height: 60mm; border: 0.5pt solid #8c8c8c; }
.photo figcaption { overflow-wrap: anywhere; }
@media screen and (max-width: 190mm) { .charts { grid-template-columns: repeat(2, 1fr); } }
`;
