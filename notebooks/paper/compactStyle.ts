/** What a page in compact type has besides: small and tight on paper, of whatever size that is. */
export const compactStyle = `
.compact th, .compact td { padding-right: 0.7em; }
@page { size: auto; margin: 9mm 12mm; }
@media print {
  .compact { font-size: 8pt; line-height: 1.24; }
  .compact h1 { margin: 0 0 1mm; font-size: 13pt; }
  .compact h2 { margin: 1.2mm 0 0.6mm; font-size: 9.5pt; }
  .compact .facts { display: flex; flex-wrap: wrap; gap: 0 1.2em; margin: 0 0 1.2mm; padding: 0.5mm 0; }
  .compact .facts dd { margin: 0 0 0 -0.8em; }
  .compact :is(.facts, table, caption, .note) { font-size: 7.5pt; line-height: 1.2; }
  .compact p, .compact li { margin-bottom: 0.4mm; orphans: 2; widows: 2; }
  .compact ol, .compact ul { margin-bottom: 0.8mm; }
  .compact :is(.caution, .failed, .note) { margin-bottom: 0.8mm; padding: 0.6mm 2mm; }
  .compact .table { margin: 1.2mm 0; }
  .compact caption { padding-bottom: 0.4mm; }
  .compact :is(th, td) { padding-top: 0.2mm; padding-bottom: 0.2mm; }
}
`;
