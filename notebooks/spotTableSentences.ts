import { workpieceZ } from '../lib/design/focus.ts';
import { repetitionRate } from '../lib/design/laser.ts';
import { spots } from '../lib/design/spots.ts';
import { phrase, says } from './prose.ts';

/** Headings in quotes, the first few of many. */
export function namedHeadings(ignored: readonly string[]): string {
  const most = 6;
  const named = ignored.slice(0, most).map((heading) => `"${heading.slice(0, 30)}"`);
  const more = ignored.length > most ? ` and ${ignored.length - most} more` : '';
  return `${named.join(', ')}${more}`;
}

/** Where energies come from: typed, or powers over the repetition rate. */
export const spotEnergySaid = says({ table: spots, rate: repetitionRate }, ({ table }) => {
  const powers = table.rows.some(({ power }) => power !== undefined);
  if (powers)
    return phrase`The table gives average powers; divided by the repetition rate of the design, ${repetitionRate}, they are the pulse energies.`;
  return 'Energies count as typed in the table, where they were measured, before the losses of the design.';
});

/** Where the marks lie. */
export const spotPlaceSaid = says({ table: spots, z: workpieceZ }, ({ table }) => {
  const placed = table.rows.some(({ z }) => z !== undefined);
  if (placed) return 'Each mark has its own z from the table.';
  return phrase`The table says nothing of z, so all marks count as made where the workpiece stands, at z\u00a0=\u00a0${workpieceZ}; a column such as “z (mm)” gives each its own.`;
});

/** What of the table is not read, if anything. */
export const spotColumnsSaid = says({ table: spots }, ({ table }) => {
  const { ignored } = table;
  if (ignored.length === 0) return 'Every column of the table is read.';
  return `Nothing is read from ${ignored.length === 1 ? 'the column' : 'the columns'} ${namedHeadings(ignored)}.`;
});

/** Rows of a coupon that are still empty. */
export const spotEmptySaid = says({ table: spots }, ({ table }) => {
  const { unmeasured } = table;
  if (unmeasured.length === 0) return '';
  const rows =
    unmeasured.length === 1
      ? `Row ${unmeasured[0]} of the coupon has`
      : `${unmeasured.length} rows of the coupon have`;
  return `${rows} no size yet; a mark that was looked for and not seen is written as 0.`;
});
