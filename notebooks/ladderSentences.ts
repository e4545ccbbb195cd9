import { ladder, ladderStep, type PlannedLadder } from '../lib/design/ladder.ts';
import { excess, ladderRows } from '../lib/design/ladderInputs.ts';
import {
  ladderCount,
  ladderEnergy,
  ladderFirst,
  ladderLast,
  ladderRise,
  unshapedLadderCount,
  unshapedLadderEnergy,
  unshapedLadderFirst,
  unshapedLadderLast,
} from '../lib/design/ladderResults.ts';
import { usedPulseEnergy } from '../lib/design/losses.ts';
import { formatNumber, formatQuantity } from '../lib/graph/units.ts';
import { phrase, says } from './prose.ts';
import { fluenceText } from './shortTexts.ts';

/** Which rows are fired, from where to where. */
export const ladderRowsSaid = says(
  { ladder, rows: ladderRows, step: ladderStep },
  ({ rows }) => {
    const shaped = phrase`${ladderCount} marks with the plate, from z\u00a0=\u00a0${ladderFirst} to ${ladderLast}`;
    const plain = phrase`${unshapedLadderCount} marks without the plate, from z\u00a0=\u00a0${unshapedLadderFirst} to ${unshapedLadderLast}`;
    if (rows === 'with') return phrase`Fire ${shaped}, ${ladderStep} apart.`;
    if (rows === 'without') return phrase`Fire ${plain}, ${ladderStep} apart.`;
    return phrase`Fire ${shaped}, then ${plain}, ${ladderStep} apart.`;
  },
  [ladderCount, ladderFirst, ladderLast, unshapedLadderCount, unshapedLadderFirst, unshapedLadderLast],
);

/** Energies nearer than this factor count as the design's own. */
const alike = 1.1;

/** The energies to set, against that of the design. */
export const ladderEnergySaid = says(
  { ladder, rows: ladderRows, energy: usedPulseEnergy, excess },
  ({ ladder, rows, energy }) => {
    const own = rows === 'without' ? ladder.unshaped.energy : ladder.shaped.energy;
    const set =
      rows === 'with'
        ? phrase`Set ${ladderEnergy}`
        : rows === 'without'
          ? phrase`Set ${unshapedLadderEnergy}`
          : phrase`Set ${ladderEnergy} with the plate and ${unshapedLadderEnergy} without it`;
    const so = phrase`${set}, so that the brightest plane has ${excess} times the threshold.`;
    const factor = energy / own;
    if (factor > alike)
      return phrase`${so} The pulse energy of the design, ${usedPulseEnergy}, is ${formatNumber(factor, 2)} times as much: its marks would reach further from the focus.`;
    if (factor < 1 / alike)
      return phrase`${so} That is more than the pulse energy of the design, ${usedPulseEnergy}: what is said above of X-rays, glass and eyes counts for the design’s energy, and must be asked anew for this one before the first pulse.`;
    return phrase`${so} That is about the pulse energy of the design, ${usedPulseEnergy}.`;
  },
  [ladderEnergy, unshapedLadderEnergy],
);

/** Sides that differ by less than this part of the largest area are not told apart: diameters scatter by some per cent. */
const toldApart = 0.1;

/** Largest difference of predicted areas at equal distances to both sides, over the largest area. */
export function sidesDiffer({ marks }: PlannedLadder): number {
  const areas = marks.filter(({ plate }) => plate).map(({ mark }) => mark.area);
  const largest = Math.max(0, ...areas);
  const apart = areas.map((area, i) => Math.abs(area - areas[areas.length - 1 - i]!));
  return largest > 0 ? Math.max(...apart) / largest : 0;
}

/** Whether the ladder can tell which way z counts. */
export const ladderSidesSaid = says({ ladder, rows: ladderRows }, ({ ladder, rows }) => {
  if (rows === 'without')
    return 'A focus without the plate is alike to both sides, so this row gives the zero of z and not its direction; a row with the plate may tell it.';
  const apart = sidesDiffer(ladder);
  if (apart < toldApart)
    return `Behind this plate the marks are alike to both sides of the focus${apart < 0.005 ? '' : `, to ${formatQuantity(apart, '1', '%', 1)} of the largest`}: the ladder gives the zero of z, but not whether its readings grow away from the lens. See for yourself which way the stage moves.`;
  return `Behind this plate the two sides of the focus differ, in area by up to ${formatQuantity(apart, '1', '%', 2)} of the largest mark: the ladder can tell whether the readings grow away from the lens.`;
});

/** What happens where the plate is taken out and the energy left as it is. */
export const ladderPlateOutSaid = says(
  { ladder, rise: ladderRise },
  ({ ladder: { shaped, unshaped }, rise }) => {
    const peak = (row: typeof shaped, energy: number, at: 'brightest' | 'inFocus') =>
      energy * row.fluencePerEnergy * row[at];
    const top = peak(shaped, shaped.energy, 'brightest');
    const before = peak(shaped, shaped.energy, 'inFocus');
    const after = peak(unshaped, shaped.energy, 'inFocus');
    const lower = phrase`Set ${unshapedLadderEnergy} before the plate is out: then the peak stays at the ${fluenceText(top)} that the row with the plate has in its brightest plane.`;
    if (rise > 1.2)
      return phrase`Taking the plate out at unchanged energy, ${ladderEnergy}, raises the peak fluence in the focus from ${fluenceText(before)} to ${fluenceText(after)}, ${ladderRise} times as much. ${lower}`;
    if (rise < 1 / 1.2)
      return phrase`Taking the plate out at unchanged energy, ${ladderEnergy}, lowers the peak fluence in the focus from ${fluenceText(before)} to ${fluenceText(after)}; with another plate it would rise. For the same peak along the row set ${unshapedLadderEnergy}.`;
    return phrase`Taking the plate out at unchanged energy, ${ladderEnergy}, leaves the peak fluence in the focus nearly as it is (${fluenceText(before)} and ${fluenceText(after)}); with another plate it would rise. For the same peak along the row set ${unshapedLadderEnergy}.`;
  },
  [ladderEnergy, unshapedLadderEnergy],
  'Taking the plate out at unchanged energy can raise the peak fluence several times, by how much cannot be worked out for this design: lower the energy first.',
);
