import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { type Light, rayleighLength as lengthOf, planeOfDefocus } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { withPhaseScaled } from '../optics/variants.ts';
import { Problem } from '../problem.ts';
import { spotSurface } from '../process/areaSurface.ts';
import { fitLadder, type LadderFit } from '../process/focusLadder.ts';
import { curveOf, type LadderCurve } from '../process/ladderCurve.ts';
import { fewestMarks, type MarksOfSpot } from '../process/planeFit.ts';
import type { SpotMark } from '../process/spotMark.ts';
import { fluencePerEnergy, type Passing } from './fitMarks.ts';
import { doubtOf } from './fits.ts';
import { light } from './focus.ts';
import { type LadderMarks, ladderMarks, ladderTable } from './ladderMarks.ts';
import { opticsTransmission, plateTransmission } from './losses.ts';
import { namingInput } from './namingInput.ts';

/** Zero and direction as fitted, and the diameters predicted for either row: the better direction first. */
export interface FittedLadder extends LadderFit {
  readonly curves: { readonly [K in keyof LadderMarks]: readonly LadderCurve[] };
  /** The marks that were fitted. */
  readonly marks: LadderMarks;
}

/** Rayleigh lengths that readings may span: more is a wrong unit, and would be searched for minutes. */
const longestSpan = 40;

function checkSpan(marks: readonly SpotMark[], length: number): void {
  const all = marks.map(({ z }) => z);
  const span = Math.max(...all) - Math.min(...all);
  if (!(span > longestSpan * length)) return;
  throw new Problem(
    'impossible',
    `The readings of z in the table of the ladder span ${formatReadable(span, 'm', 'mm', 3)}, more than ${longestSpan} Rayleigh lengths of ${formatReadable(length, 'm', 'um', 3)}. Check the unit of z, or give the marks near the focus alone.`,
    { input: ladderTable.id, value: formatReadable(span, 'm', 'mm', 3) },
  );
}

function checkCount(marks: readonly SpotMark[]): void {
  const seen = marks.filter(({ area }) => area > 0);
  const planes = new Set(marks.map(({ z }) => z)).size;
  if (seen.length < fewestMarks) {
    throw new Problem(
      'impossible',
      `The ladder shows ${seen.length} ${seen.length === 1 ? 'mark' : 'marks'}, where at least ${fewestMarks} are needed, nine or more of them for a sure interval. Raise the energy, or begin nearer to the focus.`,
      { input: ladderTable.id, value: `${seen.length}`, allowed: `${fewestMarks} or more` },
    );
  }
  if (planes < 3) {
    throw new Problem(
      'impossible',
      `The ladder has marks at ${planes === 1 ? 'one reading of z' : `${planes} readings of z`}, and a focus is found from how marks change along z: make them at nine readings or more. Single spots in one plane belong into the table of measured spots.`,
      { input: ladderTable.id, value: `${planes}`, allowed: '3 or more' },
    );
  }
}

/** Planes are known within 12 Rayleigh lengths of the focus; beyond, where hardly a mark is left, the last one counts. */
function knownSpots(light: Light): (z: number) => Spot {
  const [low, high] = [planeOfDefocus(light, -11.9), planeOfDefocus(light, 11.9)];
  const ends = new Map<number, Spot>();
  return (z) => {
    if (z > low && z < high) return spotAt(light, z);
    const end = z > low ? high : low;
    const spot = ends.get(end) ?? spotAt(light, end);
    ends.set(end, spot);
    return spot;
  };
}

function marksOf(marks: readonly SpotMark[], light: Light, passing: Passing): MarksOfSpot {
  const surface = spotSurface(knownSpots(light), lengthOf(light) / 16);
  return { marks, surface, fluencePerEnergy: fluencePerEnergy(light, passing) };
}

/** −2 ln of the likelihood by which planes alike on both sides of the focus differ: no more than rounding. */
const noDifference = 0.5;

/** True where the direction is open, and what is predicted depends on it. */
export function differ({ direction, directionEvidence }: LadderFit): boolean {
  return direction === null && directionEvidence >= noDifference;
}

export const ladderFit = derived({
  id: 'ladder.fit',
  name: 'fit of the ladder',
  symbol: '(z_0, \\pm)',
  unit: 'none',
  about:
    'Reading of z at which the workpiece is in the focus, and whether readings grow away from the lens, from the areas predicted in every plane with the plate and without it; threshold, residuals, and whether the prediction describes the marks.',
  from: { marks: ladderMarks, light, optics: opticsTransmission, plate: plateTransmission },
  compute: ({ marks, light, optics, plate }): FittedLadder => {
    const { shaped, unshaped } = marks;
    checkSpan([...shaped, ...unshaped], lengthOf(light));
    checkCount([...shaped, ...unshaped]);
    const rows = {
      shaped: marksOf(shaped, light, { optics, plate }),
      unshaped: marksOf(unshaped, withPhaseScaled(light, 0), { optics, plate: 1 }),
    };
    const given = Object.values(rows).filter(({ marks }) => marks.length > 0);
    const fit = namingInput(ladderTable.id, () => fitLadder(given));
    const places = fit.alone.slice(0, differ(fit) ? 2 : 1);
    const curves = (row: MarksOfSpot) =>
      row.marks.length === 0 ? [] : places.map((place) => curveOf(row, place));
    return { ...fit, marks, curves: { shaped: curves(rows.shaped), unshaped: curves(rows.unshaped) } };
  },
  shownAs: ({ zero }) => `z = ${formatReadable(zero.value, 'm', 'mm', 6)}`,
  formula: 'A\\{F(\\pm(z-z_0))>F_\\text{th}\\}',
  source: 'fit',
  heavy: 'search',
});

const doubtful = ({ fit }: { readonly fit: LadderFit }) => doubtOf(fit);

export const ladderZero = derived({
  id: 'ladder.zero',
  name: 'reading in the focus',
  symbol: 'z_0',
  unit: 'm',
  display: 'mm',
  digits: 6,
  about: 'What the scale of z shows where the workpiece is in the focal plane of the lens, as fitted.',
  from: { fit: ladderFit },
  compute: ({ fit }) => fit.zero.value,
  valid: doubtful,
  formula: 'z_0',
  source: 'fit',
});

export const ladderZeroUncertainty = derived({
  id: 'ladder.zeroUncertainty',
  name: 'standard uncertainty of the reading in the focus',
  symbol: 'u(z_0)',
  unit: 'm',
  display: 'um',
  digits: 2,
  about:
    'Standard uncertainty (one standard deviation) of the reading in the focus, from the scatter of the marks; over both directions where they are not told apart.',
  from: { fit: ladderFit },
  compute: ({ fit }) => fit.zero.uncertainty,
  formula: 'u(z_0)',
  source: 'jcgm100',
});

export const ladderDirection = derived({
  id: 'ladder.direction',
  name: 'which way z counts',
  symbol: '\\pm',
  unit: 'none',
  about:
    '1 where readings of z grow away from the lens, −1 where they grow towards it, 0 where the ladder does not tell.',
  from: { fit: ladderFit },
  compute: ({ fit }) => fit.direction ?? 0,
  shownAs: (direction) =>
    direction === 0 ? 'not told' : direction > 0 ? 'away from the lens' : 'towards the lens',
  formula: '\\pm',
  source: 'fit',
});

export const ladderThreshold = derived({
  id: 'ladder.thresholdFluence',
  name: 'threshold from the ladder',
  symbol: 'F_\\text{th,ladder}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 3,
  about: 'Peak fluence at the threshold that goes with the fitted zero, incident, for the pulses on a place.',
  from: { fit: ladderFit },
  compute: ({ fit }) => fit.thresholdFluence.value,
  valid: doubtful,
  formula: 'F_\\text{th}',
  source: 'fit',
});

export const ladderThresholdUncertainty = derived({
  id: 'ladder.thresholdUncertainty',
  name: 'standard uncertainty of the threshold from the ladder',
  symbol: 'u(F_\\text{th,ladder})',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 2,
  about: 'Standard uncertainty (one standard deviation) of the threshold that the ladder gives.',
  from: { fit: ladderFit },
  compute: ({ fit }) => fit.thresholdFluence.uncertainty,
  formula: 'u(F_\\text{th,ladder})',
  source: 'jcgm100',
});
