import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { familyMap } from '../optics/familyMap.ts';
import { defocusAt, focusRadius, type Light, rayleighLength as lengthOf } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { withPhaseScaled } from '../optics/variants.ts';
import { Problem } from '../problem.ts';
import { roundUp } from '../process/coupon.ts';
import { askedPlanes, type LadderProposal, proposeLadder } from '../process/focusLadder.ts';
import { type LadderLayout, type LadderRow, layLadder } from '../process/ladderPlan.ts';
import { type Mark, markOf, noMark } from '../process/marks.ts';
import { spreadOf } from './familyMap.ts';
import { fluencePerEnergy, type Passing } from './fitMarks.ts';
import { light, rayleighLength } from './focus.ts';
import { doubt, excess, expectedReading, ladderRows, stepPart } from './ladderInputs.ts';
import { repetitionRate } from './laser.ts';
import { opticsTransmission, plateTransmission } from './losses.ts';
import { namingInput } from './namingInput.ts';
import { thresholdFluence } from './threshold.ts';

/** One of the two rows, whether it is fired or not. */
export interface PlannedRow {
  /** Pulse energy at which the brightest plane has the excess wanted, J. */
  readonly energy: number;
  /** Relative irradiance of the brightest place in the brightest plane, and in the focal plane. */
  readonly brightest: number;
  readonly inFocus: number;
  /** Peak fluence of relative irradiance 1 per energy, J/m² per J. */
  readonly fluencePerEnergy: number;
  readonly proposal: LadderProposal;
}

/** A ladder as planned: both rows, and the layout of those that are fired. */
export interface PlannedLadder extends LadderLayout {
  readonly shaped: PlannedRow;
  readonly unshaped: PlannedRow;
  /** Average power a joule of pulse energy, 1/s. */
  readonly rate: number;
  /** Threshold fluence of one pulse that the marks are predicted with, J/m². */
  readonly threshold: number;
}

/** Places of a ladder lie twice its largest mark apart, so that debris does not reach the next; 10 µm at least. */
const pitchOf = (largest: number) => roundUp(Math.max(10e-6, 2 * largest));

const toDigits = (digits: number) => (value: number) => Number(value.toPrecision(digits));

/** True where a spot can be worked out: within 12 Rayleigh lengths of the focus, and not behind the image of the plate. */
function isKnown(light: Light, z: number): boolean {
  try {
    return Math.abs(defocusAt(light, z)) < 12;
  } catch (error) {
    if (error instanceof Problem) return false;
    throw error;
  }
}

/** Planes that a row is asked in: as many to either side of the focal plane, known ones alone. */
function planesOf(light: Light, part: number): Float64Array {
  const half = askedPlanes(lengthOf(light), part);
  return Float64Array.from(
    [
      ...half
        .slice(1)
        .reverse()
        .map((z) => -z),
      ...half,
    ].filter((z) => isKnown(light, z)),
  );
}

/** Radii in w0 to which a plane is searched for its brightest place, and how many: rings beyond are dim. */
const searchedRadii = 6;
const radiusCount = 300;

/** Highest relative irradiance in each plane. */
function peaksIn(light: Light, planes: Float64Array): Map<number, number> {
  // Beyond what is known: its problem says so.
  if (!planes.includes(0)) spotAt(light, 0);
  const reach = searchedRadii * focusRadius(light) * spreadOf(light);
  const radii = Float64Array.from({ length: radiusCount }, (_, i) => (reach * i) / (radiusCount - 1));
  const map = familyMap(light, planes, radii);
  return new Map(
    Array.from(planes, (z, row) => [
      z,
      map.subarray(row * radiusCount, (row + 1) * radiusCount).reduce((most, value) => Math.max(most, value)),
    ]),
  );
}

interface Wanted {
  readonly threshold: number;
  readonly excess: number;
  readonly part: number;
  readonly expected: number;
  readonly doubt: number;
}

function planRow(light: Light, passing: Passing, wanted: Wanted): PlannedRow {
  const { threshold, excess, part, expected, doubt } = wanted;
  const peaks = peaksIn(light, planesOf(light, part));
  const brightest = Math.max(...peaks.values());
  const unit = fluencePerEnergy(light, passing);
  const proposal = namingInput(stepPart.id, () =>
    proposeLadder({
      rayleighLength: lengthOf(light),
      excess: excess / brightest,
      peakAt: (z) => peaks.get(z) ?? 0,
      expected,
      doubt,
      part,
      settable: toDigits(2),
    }),
  );
  const energy = (excess * threshold) / (unit * brightest);
  return { energy, brightest, inFocus: peaks.get(0)!, fluencePerEnergy: unit, proposal };
}

/** A row with its predicted marks; where the map says that no place is near the threshold, none is asked for. */
function firedRow(light: Light, plate: boolean, row: PlannedRow, wanted: Wanted): LadderRow {
  const energy = toDigits(3)(row.energy);
  const level = wanted.threshold / (energy * row.fluencePerEnergy);
  const { reach, step } = row.proposal;
  const markAt = (reading: number): Mark => {
    const z = reading - wanted.expected;
    // Where nothing is known no mark was planned for either: the row goes on behind it with its rounded step.
    return Math.abs(z) > reach + step || !isKnown(light, z) ? noMark : markOf(spotAt(light, z), level);
  };
  return { plate, energy, proposal: row.proposal, markAt };
}

export const ladderStep = derived({
  id: 'ladder.step',
  name: 'step of the ladder',
  symbol: '\\Delta z',
  unit: 'm',
  display: 'um',
  digits: 2,
  about: 'Distance along z from mark to mark; the readings of the ladder take it to two digits.',
  from: { part: stepPart, length: rayleighLength },
  compute: ({ part, length }) => part * length,
  formula: '(\\Delta z/z_R)\\,z_R',
  source: 'definition',
});

export const ladder = derived({
  id: 'ladder.plan',
  name: 'focus ladder',
  symbol: '\\text{ladder}',
  unit: 'none',
  about:
    'Rows of single pulses along z, with the plate and without it: energy, readings of z and the mark predicted at each where the focus lies at the expected reading.',
  from: {
    light,
    threshold: thresholdFluence,
    optics: opticsTransmission,
    plate: plateTransmission,
    rate: repetitionRate,
    rows: ladderRows,
    excess,
    part: stepPart,
    expected: expectedReading,
    doubt,
  },
  compute: ({ light, optics, plate, rate, rows, ...wanted }): PlannedLadder => {
    const bare = withPhaseScaled(light, 0);
    const shaped = planRow(light, { optics, plate }, wanted);
    const unshaped = planRow(bare, { optics, plate: 1 }, wanted);
    const fired = [
      ...(rows === 'without' ? [] : [firedRow(light, true, shaped, wanted)]),
      ...(rows === 'with' ? [] : [firedRow(bare, false, unshaped, wanted)]),
    ];
    return { ...layLadder(fired, pitchOf), shaped, unshaped, rate, threshold: wanted.threshold };
  },
  shownAs: ({ marks, pitch }) => `${marks.length} marks, ${formatReadable(pitch, 'm', 'um')} apart`,
  formula: 'A\\{F(z)>F_\\text{th}\\}\\text{ at }z_\\text{exp}+i\\,\\Delta z',
  source: 'liu1982',
  heavy: 'search',
});
