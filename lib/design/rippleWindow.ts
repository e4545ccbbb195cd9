import { choice, derived, number } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import { formatNumber, formatReadable } from '../graph/units.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { tiltedSpot } from '../optics/tiltedSpot.ts';
import { Problem } from '../problem.ts';
import { type FieldParts, partsInWindow } from '../process/fieldWindow.ts';
import { rayleighLength, unshapedPeak } from './focus.ts';
import { asked, unshapedAsked } from './marks.ts';
import { incidence, incidenceDirection } from './rippleInputs.ts';
import { lineSpacing, pulseSpacing, pulsesInPlace } from './scanInputs.ts';
import { incubationExponent } from './threshold.ts';
import { fluenceWithoutPlate } from './unshaped.ts';

export const windowLow = number({
  id: 'ripples.windowLow',
  name: 'lower bound of the fluence for ripples',
  symbol: 'F_1',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about:
    'Incident fluence of a pulse from which ripples appear, with the lowest number of pulses that make them. To be measured: the value here is a place to start from, a little above published thresholds of steel.',
  initial: 2000,
  range: { min: 0, above: true, max: 1e7 },
  typical: [300, 2e4],
});

export const windowHigh = number({
  id: 'ripples.windowHigh',
  name: 'upper bound of the fluence for ripples',
  symbol: 'F_2',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about:
    'Incident fluence of a pulse above which micro-grooves and spikes take the place of ripples. To be measured: 1.3 times the lower bound is where common practice finds the plate worth while.',
  initial: 2600,
  range: { min: 0, above: true, max: 1e7 },
  typical: [300, 2e4],
});

export const pulsesLow = number({
  id: 'ripples.pulsesLow',
  name: 'fewest pulses for ripples',
  symbol: 'N_1',
  unit: '1',
  about: 'Pulses above the lower bound that a place must get before ripples show: about ten (memory).',
  initial: 10,
  range: { min: 1, max: 1e6 },
  typical: [1, 100],
});

export const pulsesHigh = number({
  id: 'ripples.pulsesHigh',
  name: 'most pulses for ripples',
  symbol: 'N_2',
  unit: '1',
  about: 'Pulses above the lower bound that a place may get before ripples give way: some hundreds (memory).',
  initial: 300,
  range: { min: 1, max: 1e7 },
  typical: [10, 3000],
});

export const unshapedRuns = choice({
  id: 'ripples.unshapedRuns',
  name: 'energy of the beam without the plate',
  symbol: '\\text{unshaped}',
  about:
    'What the field without the plate is written with: a pulse energy lowered until its peak fluence is that with the plate, or the same energy.',
  initial: 'peak',
  options: { peak: 'same peak fluence', energy: 'same pulse energy' },
});

export const unshapedUnit = derived({
  id: 'unshaped.ripples.focusFluence',
  name: 'peak fluence of the unshaped focus that the field without the plate is written with',
  symbol: 'F_\\text{u,0}^*',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about:
    'Fluence per pulse on the axis of the unshaped, unclipped beam in its focus for M² = 1, incident, at the energy at which the field without the plate is written: that of the same peak on the workpiece, or the same energy.',
  from: {
    spot: unshapedAsked,
    shaped: asked,
    unit: unshapedPeak,
    plain: fluenceWithoutPlate,
    runs: unshapedRuns,
  },
  compute: ({ spot, shaped, unit, plain, runs }) =>
    runs === 'peak' ? (unit * shaped.peak) / spot.peak : plain,
  enteredFor: ({ runs }) => ({
    keys: runs === 'peak' ? ['runs', 'spot', 'shaped', 'unit'] : ['runs', 'plain'],
  }),
  formula: 'F_0I_\\text{max}/I_\\text{max,u}\\ \\text{or}\\ F_\\text{u,0}',
  source: 'scaling',
});

const field = { pulseSpacing, lineSpacing, passes: pulsesInPlace };
const window = {
  low: windowLow,
  high: windowHigh,
  pulsesLow,
  pulsesHigh,
  exponent: incubationExponent,
};
const tilt = { incidence, direction: incidenceDirection };

/** Bounds in their order, or a Problem. */
function checkWindow(bounds: { low: number; high: number; pulsesLow: number; pulsesHigh: number }): void {
  if (bounds.high <= bounds.low) throw noWindow();
  checkCounts(bounds);
}

/** Numbers of pulses in their order, or a Problem. */
export function checkCounts(bounds: { pulsesLow: number; pulsesHigh: number }): void {
  if (bounds.pulsesHigh >= bounds.pulsesLow) return;
  throw new Problem(
    'impossible',
    'The most pulses for ripples are fewer than the fewest: raise them, or lower the others.',
    { input: pulsesHigh.id },
  );
}

/** The problem of bounds of the fluence that leave no window between them. */
export function noWindow(): Problem {
  return new Problem(
    'impossible',
    'The upper bound of the fluence does not lie above the lower one: raise it, or lower the other.',
    { input: windowHigh.id },
  );
}

/** Part of a Rayleigh length by which the plane may change over the spot before it must be said. */
const leastSlant = 0.25;

/** What must be said of a spot on a tilted surface that is taken as lying in one plane; its radius is that of its effective area. */
export function slantNote({
  spot,
  incidence,
  rayleigh,
}: {
  readonly spot: Spot;
  readonly incidence: number;
  readonly rayleigh: number;
}): string | undefined {
  const slant = (Math.sqrt(spot.effectiveArea / Math.PI) * Math.tan(incidence)) / rayleigh;
  return slant > leastSlant
    ? `Over the spot the tilted surface leaves the plane by ± ${formatNumber(slant, 2)} Rayleigh lengths, which is left out here: the cut along the surface shows what it does.`
    : undefined;
}

/** The parts of a field that one of the two beams writes; `unit` is what the irradiance of its spot is relative to. */
function partsOf(
  text: { readonly id: string; readonly name: string; readonly about: string; readonly mark: string },
  spot: Derived<Spot>,
  unit: Derived<number>,
) {
  const { mark, ...rest } = text;
  return derived({
    ...rest,
    symbol: `(a_\\text{in}, a_\\text{little}, a_\\text{much})${mark}`,
    unit: { inside: '1', tooLittle: '1', tooMuch: '1' } as const,
    from: { spot, unit, ...field, ...window, ...tilt, rayleigh: rayleighLength },
    compute: ({
      spot,
      unit,
      pulseSpacing,
      lineSpacing,
      passes,
      incidence,
      direction,
      ...window
    }): FieldParts => {
      checkWindow(window);
      const scanned = { pulseSpacing, lineSpacing, passes };
      return partsInWindow(tiltedSpot(spot, incidence, direction), unit, scanned, window);
    },
    valid: slantNote,
    shownAs: ({ inside, tooLittle, tooMuch }) =>
      [inside, tooLittle, tooMuch].map((part) => formatReadable(part, '1', '%', 3)).join(', '),
    formula: `A${mark}\\{F_1(n)\\le F_{(n)},\\ F_{(1)}\\le F_2\\}/A`,
    source: 'scaling',
    heavy: 'search',
  });
}

export const fieldParts = partsOf(
  {
    id: 'ripples.fieldParts',
    name: 'parts of the scanned field',
    about:
      'Parts of a wide scanned field that lie inside the window, at too little and at too much, with the plate.',
    mark: '',
  },
  asked,
  unshapedPeak,
);

export const unshapedFieldParts = partsOf(
  {
    id: 'unshaped.ripples.fieldParts',
    name: 'parts of the scanned field without the step',
    about:
      'The same with the plate taken out, scanned alike: at the energy that gives the same peak fluence, or at the same energy.',
    mark: '_\\text{u}',
  },
  unshapedAsked,
  unshapedUnit,
);
