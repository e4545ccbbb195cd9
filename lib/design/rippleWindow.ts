import { choice, derived, number } from '../graph/define.ts';
import { formatNumber } from '../graph/units.ts';
import { tiltedSpot } from '../optics/tiltedSpot.ts';
import { Problem } from '../problem.ts';
import { type FieldParts, partsInWindow } from '../process/fieldWindow.ts';
import { unshapedPeak } from './focus.ts';
import { asked, unshapedAsked } from './marks.ts';
import { incidence, incidenceDirection } from './rippleInputs.ts';
import { lineSpacing, passes, pulseSpacing } from './scanInputs.ts';
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

const field = { pulseSpacing, lineSpacing, passes };
const window = {
  low: windowLow,
  high: windowHigh,
  pulsesLow,
  pulsesHigh,
  exponent: incubationExponent,
};
const tilt = { incidence, direction: incidenceDirection };
const partUnits = { inside: '1', tooLittle: '1', tooMuch: '1' } as const;
const partsText = ({ inside, tooLittle, tooMuch }: FieldParts) =>
  [inside, tooLittle, tooMuch].map((part) => `${formatNumber(100 * part, 3)}\u202f%`).join(', ');

/** Bounds in their order, or a Problem. */
function checkWindow(bounds: { low: number; high: number; pulsesLow: number; pulsesHigh: number }): void {
  if (bounds.high <= bounds.low) throw reversed('fluence', windowHigh.id);
  checkCounts(bounds);
}

/** Numbers of pulses in their order, or a Problem. */
export function checkCounts(bounds: { pulsesLow: number; pulsesHigh: number }): void {
  if (bounds.pulsesHigh < bounds.pulsesLow) throw reversed('number of pulses', pulsesHigh.id);
}

/** Bounds that leave no window between them; `input` is the upper one. */
export function reversed(what: string, input: string): Problem {
  return new Problem(
    'impossible',
    `The upper bound of the ${what} does not lie above the lower one: raise it, or lower the other.`,
    { input },
  );
}

export const fieldParts = derived({
  id: 'ripples.fieldParts',
  name: 'parts of the scanned field',
  symbol: '(a_\\text{in}, a_\\text{little}, a_\\text{much})',
  unit: partUnits,
  about:
    'Parts of a wide scanned field that lie inside the window, at too little and at too much, with the plate.',
  from: { spot: asked, unit: unshapedPeak, ...field, ...window, ...tilt },
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
    const scanned = { pulseSpacing, lineSpacing, passes: Math.round(passes) };
    return partsInWindow(tiltedSpot(spot, incidence, direction), unit, scanned, window);
  },
  shownAs: (parts) => partsText(parts),
  formula: 'A\\{F_1(n)\\le F_{(n)},\\ F_{(1)}\\le F_2\\}/A',
  source: 'scaling',
  heavy: 'search',
});

export const unshapedFieldParts = derived({
  id: 'unshaped.ripples.fieldParts',
  name: 'parts of the scanned field without the step',
  symbol: '(a_\\text{in}, a_\\text{little}, a_\\text{much})_\\text{u}',
  unit: partUnits,
  about:
    'The same with the plate taken out, scanned alike: at the energy that gives the same peak fluence, or at the same energy.',
  from: {
    spot: unshapedAsked,
    shaped: asked,
    unit: unshapedPeak,
    plainUnit: fluenceWithoutPlate,
    runs: unshapedRuns,
    ...field,
    ...window,
    ...tilt,
  },
  compute: ({
    spot,
    shaped,
    unit,
    plainUnit,
    runs,
    pulseSpacing,
    lineSpacing,
    passes,
    incidence,
    direction,
    ...window
  }): FieldParts => {
    checkWindow(window);
    const scanned = { pulseSpacing, lineSpacing, passes: Math.round(passes) };
    const used = runs === 'peak' ? (unit * shaped.peak) / spot.peak : plainUnit;
    return partsInWindow(tiltedSpot(spot, incidence, direction), used, scanned, window);
  },
  shownAs: (parts) => partsText(parts),
  formula: 'A_\\text{u}\\{F_1(n)\\le F_{(n)},\\ F_{(1)}\\le F_2\\}/A',
  source: 'scaling',
  heavy: 'search',
});

export const areaInWindow = derived({
  id: 'ripples.areaInWindow',
  name: 'part of the field inside the window',
  symbol: 'a_\\text{in}',
  unit: '1',
  display: '%',
  digits: 3,
  about:
    'Part of a wide scanned field where fluence and number of pulses both lie inside the window, with the plate.',
  from: { parts: fieldParts },
  compute: ({ parts }) => parts.inside,
  formula: 'a_\\text{in}',
  source: 'scaling',
});

export const unshapedAreaInWindow = derived({
  id: 'unshaped.ripples.areaInWindow',
  name: 'part of the field inside the window without the step',
  symbol: 'a_\\text{in,u}',
  unit: '1',
  display: '%',
  digits: 3,
  about: 'The same with the plate taken out.',
  from: { parts: unshapedFieldParts },
  compute: ({ parts }) => parts.inside,
  formula: 'a_\\text{in,u}',
  source: 'scaling',
});
