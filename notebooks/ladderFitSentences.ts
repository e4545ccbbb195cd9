import { differ, ladderFit, ladderZero, ladderZeroUncertainty } from '../lib/design/ladderFit.ts';
import { ladderRows } from '../lib/design/ladderInputs.ts';
import { madeWithPlate, measuredLadder } from '../lib/design/ladderMarks.ts';
import { ladderEnergy, unshapedLadderEnergy } from '../lib/design/ladderResults.ts';
import { formatNumber, formatQuantity } from '../lib/graph/units.ts';
import { type Phrase, phrase, says } from './prose.ts';
import { namedHeadings } from './spotTableSentences.ts';

const places = (count: number) => `${count} ${count === 1 ? 'place' : 'places'}`;

/** What was read: places with and without the plate, and which energies count. */
export const ladderTableSaid = says(
  { table: measuredLadder, rows: ladderRows },
  ({ table, rows }) => {
    const [shaped, plain] = [true, false].map(
      (plate) => table.rows.filter((row) => madeWithPlate(row, rows) === plate).length,
    ) as [number, number];
    const made =
      shaped === 0
        ? 'without the plate'
        : plain === 0
          ? 'with the plate'
          : `with the plate and ${plain} without it`;
    const told = table.rows.some(({ plate }) => plate !== undefined);
    const how = told ? '' : ', as the ladder is planned, since the table has no column “plate”';
    const read = `The table has ${places(shaped || plain)} made ${made}${how}.`;
    const energies = table.rows.some(({ energy, power }) => energy !== undefined || power !== undefined);
    if (energies) return `${read} Their energies count as the table gives them.`;
    const planned: Phrase =
      shaped === 0
        ? phrase`${unshapedLadderEnergy}`
        : plain === 0
          ? phrase`${ladderEnergy}`
          : phrase`${ladderEnergy} with the plate and ${unshapedLadderEnergy} without it`;
    return phrase`${read} It gives no energies, so the planned ones count, ${planned}.`;
  },
  [ladderEnergy, unshapedLadderEnergy],
);

/** What of the table is not read, or not there yet. */
export const ladderLeftSaid = says({ table: measuredLadder }, ({ table: { ignored, unmeasured } }) => {
  const columns =
    ignored.length === 0
      ? ''
      : `Nothing is read from ${ignored.length === 1 ? 'the column' : 'the columns'} ${namedHeadings(ignored)}.`;
  const rows =
    unmeasured.length === 0
      ? ''
      : `${unmeasured.length} ${unmeasured.length === 1 ? 'row has' : 'rows have'} no size yet; a mark that was looked for and not seen is written as 0.`;
  return `${columns} ${rows}`.trim();
});

/** A reading of z to a tenth of its uncertainty. */
function reading(value: number, uncertainty: number): string {
  const spread = Math.max(uncertainty, 1e-9);
  const size = Math.max(Math.abs(value), spread);
  const digits = Math.min(9, Math.max(1, Math.floor(Math.log10(size)) - Math.floor(Math.log10(spread)) + 2));
  return formatQuantity(value, 'm', 'mm', digits);
}

/** Marks from which on an interval holds as often as it says. */
const enoughMarks = 9;

/** Where the focus is. */
export const ladderZeroSaid = says(
  { fit: ladderFit },
  ({ fit: { zero, used, unmarked, rivals } }) => {
    const empty = unmarked === 0 ? '' : ` and ${places(unmarked)} without a mark`;
    const few =
      used < enoughMarks ? ` With fewer than ${enoughMarks} marks the interval is often too narrow.` : '';
    const other =
      rivals.length === 0
        ? ''
        : ` But a focus at ${rivals.map((at) => reading(at, zero.uncertainty)).join(' or ')} fits about as well: add marks further out and between before you move anything.`;
    const [low, high] = zero.interval.map((end) => reading(end, zero.uncertainty));
    return phrase`${String(used)} marks${empty} put the focus at a reading of ${ladderZero}, with a standard uncertainty of ${ladderZeroUncertainty}; with 95\u202f% it lies between ${low!} and ${high!}, if the prediction is right.${few}${other}`;
  },
  [ladderZero, ladderZeroUncertainty],
);

/** Which way z counts, or why that cannot be told. */
export const ladderDirectionSaid = says(
  { fit: ladderFit },
  ({ fit }) => {
    const { direction, directionEvidence, alone, curves } = fit;
    const rule =
      direction === -1
        ? phrase`z\u00a0=\u00a0${ladderZero}\u00a0− reading`
        : phrase`z\u00a0=\u00a0reading\u00a0− ${ladderZero}`;
    if (direction === 1) return phrase`The readings grow away from the lens, so that ${rule}.`;
    if (direction === -1) return phrase`The readings grow towards the lens, so that ${rule}.`;
    if (curves.shaped.length === 0)
      return 'Which way the readings count these marks cannot tell: a focus without the plate is alike to both sides. Add a row with the plate, or see which way the stage moves.';
    if (!differ(fit))
      return `Which way the readings count these marks cannot tell: the two sides of the focus behind this plate are alike. See which way the stage moves; the zero is the same for both.`;
    const better = alone[0].direction > 0 ? 'away from' : 'towards';
    return `Which way the readings count is not certain: that they grow ${better} the lens is ${formatNumber(Math.exp(directionEvidence / 2), 2)} times as likely as the other way, where 90 times count as told. Measure more marks of the row with the plate, or see which way the stage moves. The interval holds the zeros of both.`;
  },
  [ladderZero],
);

/** Whether the prediction describes the ladder. */
export const ladderVerdictSaid = says({ fit: ladderFit }, ({ fit: { verdict, reason } }) => {
  if (verdict === 'describes') return 'The predicted spot describes the marks.';
  if (verdict === 'too few')
    return `Whether the predicted spot describes the marks cannot be told. ${reason}`;
  return `The predicted spot does not describe the marks, so that zero and interval are not to be trusted. ${reason}`;
});
