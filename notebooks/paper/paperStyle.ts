/** Styles of a paper as a page that stands alone: light and dark on the screen, white on A4. */
export const paperStyle = `
:root {
  color-scheme: light dark;
  --paper: light-dark(#ffffff, #17191c);
  --ink: light-dark(#22262b, #e6e3dc);
  --muted: light-dark(#5c6168, #a3a6ab);
  --line: light-dark(#dcd8ce, #383d43);
  --link: light-dark(#1d4f7c, #8fc1ee);
  --caution: light-dark(#7a5200, #e8bb5a);
  --caution-soft: light-dark(#fbf1d9, #352c17);
  --failed: light-dark(#a1260d, #ff9a85);
  --failed-soft: light-dark(#fae6e1, #40231d);
  --serif: "Source Serif 4", Charter, "Bitstream Charter", Cambria, Georgia, "Liberation Serif", serif;
  --sans: "Source Sans 3", "Helvetica Neue", Helvetica, Arial, "Liberation Sans", sans-serif;
}
* { box-sizing: border-box; }
body {
  margin: 0;
  background: var(--paper);
  color: var(--ink);
  font: 1.0625rem/1.55 var(--serif);
  overflow-wrap: break-word;
}
main { max-width: 42rem; margin: 0 auto; padding: 3rem 1.25rem 4rem; }
h1, h2, h3, h4 { margin: 2.2em 0 0.5em; font-family: var(--sans); font-weight: 600; line-height: 1.25; text-wrap: balance; }
h1 { margin: 0 0 0.6em; font-size: 2rem; }
h2 { font-size: 1.4rem; }
h3 { margin-top: 1.6em; font-size: 1.15rem; }
h4 { margin-top: 1.4em; font-size: 1rem; }
p { margin: 0 0 0.8em; }
ul, ol { margin: 0 0 0.8em; padding-left: 1.5em; }
li { margin-bottom: 0.25em; }
a { color: var(--link); text-underline-offset: 0.15em; }
a:focus-visible, [tabindex]:focus-visible { outline: 2px solid var(--link); outline-offset: 2px; }
.facts { display: grid; grid-template-columns: max-content minmax(0, 1fr); gap: 0.15rem 1.25rem; margin: 0 0 2.5rem; padding: 0.75rem 0; border: solid var(--line); border-width: 1px 0; font: 0.9375rem/1.45 var(--sans); }
.facts dt { color: var(--muted); }
.facts dd { margin: 0; overflow-wrap: anywhere; }
.value { white-space: nowrap; }
.caution, .failed, .note { margin: 0 0 0.8em; padding: 0.55em 0.9em; border-left: 3px solid var(--line); }
.caution { border-color: var(--caution); background: var(--caution-soft); }
.failed { border-color: var(--failed); background: var(--failed-soft); }
.note { color: var(--muted); font-size: 0.9375rem; }
.table, figure { margin: 1.6em 0; }
.wide { overflow-x: auto; }
table { width: 100%; border-collapse: collapse; font: 0.9375rem/1.4 var(--sans); font-variant-numeric: lining-nums tabular-nums; }
caption, figcaption { padding: 0 0 0.5em; color: var(--ink); font: 0.9375rem/1.45 var(--sans); text-align: left; }
figcaption { padding: 0.5em 0 0; }
caption b, figcaption b { font-weight: 600; }
th, td { padding: 0.35em 1em 0.35em 0; vertical-align: top; text-align: left; font-weight: 400; }
thead th { border: solid var(--ink); border-width: 1.5px 0 1px; font-weight: 600; vertical-align: bottom; }
tbody tr + tr > * { border-top: 1px solid var(--line); }
tbody tr:last-child > * { border-bottom: 1.5px solid var(--ink); }
figure svg { display: block; max-width: 100%; min-width: 24rem; height: auto; }
.by-night { display: none; }
math { font-family: "STIX Two Math", "Cambria Math", "Latin Modern Math", "DejaVu Math TeX Gyre", math; }
.equation { margin: 1em 0; }
.equation > .wide { padding: 0.25em 0; }
.equation .katex { display: block; }
.equation p { margin: 0.25em 0 0; color: var(--muted); font: 0.9375rem/1.45 var(--sans); }
@counter-style reference { system: extends decimal; prefix: "["; suffix: "] "; }
.references { padding-left: 2.4em; font-size: 0.9375rem; list-style: reference; }
@media (prefers-color-scheme: dark) {
  .by-day { display: none; }
  .by-night { display: block; }
}
@media (max-width: 34rem) {
  .facts { grid-template-columns: minmax(0, 1fr); gap: 0; }
  .facts dd { margin-bottom: 0.4rem; }
}
@page { size: A4; margin: 20mm 22mm 22mm; }
@media print {
  :root { color-scheme: light; }
  .by-day { display: block; }
  .by-night { display: none; }
  body { font-size: 10.5pt; line-height: 1.45; }
  main { max-width: none; padding: 0; }
  h1 { font-size: 20pt; }
  h2 { font-size: 14pt; }
  h3 { font-size: 11.5pt; }
  h4 { font-size: 10.5pt; }
  .facts, table, caption, figcaption, .note, .equation p, .references { font-size: 9.5pt; }
  .wide { overflow: visible; }
  figure svg { width: 137mm; min-width: 0; }
  a { color: inherit; text-decoration: none; }
  h2, h3, h4, caption, thead { break-after: avoid; }
  figure, tr, .equation, .caution, .failed { break-inside: avoid; }
  .caution, .failed { print-color-adjust: exact; }
  p { orphans: 3; widows: 3; }
}
`;
