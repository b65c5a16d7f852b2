package worksheet

// style is for paper first: black on white, the fonts that are there, no size of paper,
// so that A4 and Letter both do. The foot is fixed, which printing repeats on every
// page; every page keeps room for it.
const style = `@page { margin: 14mm 13mm 12mm; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 50rem; padding: 1rem; background: #fff; color: #000; font: 10pt/1.3 sans-serif; }
h1 { font-size: 18pt; margin: 0 0 0.4rem; }
h2 { font-size: 14pt; margin: 0 0 0.3rem; border-bottom: 2px solid #000; }
h3 { font-size: 11pt; margin: 0.8rem 0 0.2rem; break-after: avoid; }
p, ul { margin: 0.25rem 0; }
.caution { border: 2px solid #000; padding: 0.3rem 0.6rem; font-weight: bold; }
table { width: 100%; border-collapse: collapse; margin: 0.5rem 0; table-layout: fixed; }
caption { text-align: left; font-weight: bold; padding: 0.3rem 0; break-after: avoid; }
th, td { border: 1px solid #000; padding: 0.15rem 0.25rem; text-align: left; vertical-align: top; font-weight: normal; overflow-wrap: anywhere; }
thead th { font-weight: bold; background: #fff; }
thead { display: table-header-group; }
tr, li, figure, svg { break-inside: avoid; }
td, li { font-size: 9pt; }
.code { width: 2.6rem; font-weight: bold; }
th.blank { width: 27%; }
td.blank { height: 1.9rem; }
.unit { width: 5.2rem; }
td.unit, .small { font-size: 7.5pt; }
.by { width: 3.4rem; }
.few { width: 13%; }
.choice { white-space: nowrap; margin-right: 0.4rem; display: inline-block; }
.box { display: inline-block; width: 0.8em; height: 0.8em; border: 1.2px solid #000; vertical-align: -0.05em; }
.ticks { list-style: none; padding: 0; }
.ticks li { padding: 0.15rem 0; }
.part { margin-top: 1.2rem; }
.part h2 { break-after: avoid; }
.short { break-inside: avoid; }
.contents { columns: 2; list-style: none; padding: 0; }
a { color: #000; }
.line { display: inline-block; border-bottom: 1px solid #000; width: 9rem; height: 1.2em; }
.line.wide { width: 16rem; }
.line.short { width: 6rem; }
.line.full { width: 100%; display: block; }
.who { margin: 0.5rem 0; }
figure { margin: 0.4rem 0; }
figcaption { font-size: 9pt; }
svg { width: 100%; height: auto; display: block; }
svg text { font: 15px sans-serif; fill: #000; }
footer { border-top: 1px solid #000; font-weight: bold; font-size: 8.5pt; background: #fff; }
@media print {
  body { max-width: none; padding: 0; }
  .sheet { break-before: page; }
  main { -webkit-box-decoration-break: clone; box-decoration-break: clone; padding-bottom: 9mm; }
  footer { position: fixed; bottom: 0; left: 0; right: 0; }
}
`
