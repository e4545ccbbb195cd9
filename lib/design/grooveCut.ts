import type { Report } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import type { Light } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { Problem } from '../problem.ts';
import type { PulseTrain } from '../process/chordRemoval.ts';
import { countingLevel } from '../process/cuttingLaw.ts';
import type { CuttingLight, CuttingSampling } from '../process/cuttingLight.ts';
import { cutGroove } from '../process/groove.ts';
import { type GrooveShape, shapeOf } from '../process/grooveShape.ts';
import { PassHistory } from '../process/passHistory.ts';
import { grooveLight } from './grooveLight.ts';

/** Sections shown of a groove on its way. */
const sectionsShown = 5;

/** A groove as plain data. Lengths in m. */
export interface CutGroove {
  readonly y: Float64Array;
  readonly depth: Float64Array;
  /** After each pass, from none on. */
  readonly deepest: Float64Array;
  readonly area: Float64Array;
  /** Removed by the last pass at each place. */
  readonly lastPass: Float64Array;
  /** Part of the width in which the walls stand still though a level floor would be cut. */
  readonly stoppedPart: number;
  readonly shape: GrooveShape;
  /** On the way, first to last; the last is the whole groove. */
  readonly sections: readonly { readonly passes: number; readonly depth: Float64Array }[];
  /** The pass from which the groove was deeper than the light is computed; 0 where it never was. */
  readonly leftRange: number;
}

export const shapeUnits = {
  depth: 'm',
  centreDepth: 'm',
  meanDepth: 'm',
  topWidth: 'm',
  bottomWidth: 'm',
  wallAngle: 'rad',
  centreToMeanDepth: '1',
  besideDepth: 'm',
} as const;

/** Units of a {@link CutGroove}. */
export const grooveUnits = {
  y: 'm',
  depth: 'm',
  deepest: 'm',
  area: 'm^2',
  lastPass: 'm',
  stoppedPart: '1',
  shape: shapeUnits,
  sections: { passes: '1', depth: 'm' },
  leftRange: '1',
} as const;

/** Passes after which a groove of `passes` is shown. */
function shownPasses(passes: number): number[] {
  const parts = Array.from({ length: sectionsShown }, (_, i) =>
    Math.round(((i + 1) * passes) / sectionsShown),
  );
  return [...new Set(parts.filter((pass) => pass >= 1))];
}

/** What was last cut with a light, so that the passes can be moved by hand. */
const histories = new WeakMap<CuttingLight, PassHistory>();

function passHistory(light: CuttingLight, train: PulseTrain): PassHistory {
  const known = histories.get(light);
  if (known && isSame(known.train, train)) return known;
  const made = new PassHistory(light, train);
  histories.set(light, made);
  return made;
}

/** The law is one object as long as its inputs are. */
function isSame(one: PulseTrain, other: PulseTrain): boolean {
  return (
    one.unit === other.unit &&
    one.pulseSpacing === other.pulseSpacing &&
    one.pulsesPerBurst === other.pulsesPerBurst &&
    one.law === other.law
  );
}

/** Cuts a groove with the fluence `unit` at relative irradiance 1, from a fresh surface at z. */
export function grooveAt(
  light: Light,
  z: number,
  train: PulseTrain,
  passes: number,
  report?: Report,
  steps?: CuttingSampling['steps'],
): CutGroove {
  const whole = Math.max(1, Math.round(passes));
  const cutting = grooveLight(light, z, countingLevel(train.law) / train.unit, steps);
  const cut = { ...train, passes: whole, keep: shownPasses(whole) };
  const groove = cutGroove(cutting, cut, report, passHistory(cutting, train));
  const shape = shapeOf(groove);
  if (shape === undefined) throw nothingCut(train.unit * spotAt(light, z).peak, train.law.incubation.first);
  const { y, depth, deepest, area, lastPass, stopped, kept, leftRange = 0 } = groove;
  const cutPlaces = depth.reduce((count, d) => count + (d > 0 ? 1 : 0), 0);
  return {
    y,
    depth,
    deepest,
    area,
    lastPass,
    stoppedPart: stopped.reduce((count, one) => count + one, 0) / cutPlaces,
    shape,
    sections: [...kept].map(([passes, section]) => ({ passes, depth: section.depth })),
    leftRange,
  };
}

/** The Problem of a peak below what cuts. */
export function nothingCut(peak: number, threshold: number): Problem {
  const show = (fluence: number) => formatReadable(fluence, 'J/m^2', 'J/cm^2', 3);
  return new Problem(
    'absent',
    `The peak fluence of ${show(peak)} lies below what the pulses on a place need; the threshold of one pulse is ${show(threshold)}. Nothing is cut: raise the pulse energy or choose another plane.`,
    { input: 'laser.pulseEnergy', value: show(peak), allowed: `above ${show(threshold)}` },
  );
}
