import { derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import type { FieldParts } from '../process/fieldWindow.ts';
import { gainBestPeak, gainPeakAtTop } from '../process/fluenceWindow.ts';
import { plateTransmission } from './losses.ts';
import { asked } from './marks.ts';
import { incidence } from './rippleInputs.ts';
import { fieldParts, noWindow, unshapedFieldParts, windowHigh, windowLow } from './rippleWindow.ts';
import { peakFluence } from './spot.ts';

const kinds = {
  inside: {
    id: 'areaInWindow',
    name: 'inside the window',
    mark: 'in',
    about: 'where fluence and number of pulses both lie inside the window',
  },
  tooLittle: {
    id: 'areaTooLittle',
    name: 'at too little',
    mark: 'little',
    about: 'that stays below the lower bound, or gets too few pulses above it',
  },
  tooMuch: {
    id: 'areaTooMuch',
    name: 'at too much',
    mark: 'much',
    about: 'where a pulse goes beyond the upper bound, or too many come',
  },
} as const;

/** One part of the field, with the plate or (`before` the id) without it. */
function partOf(parts: Derived<FieldParts>, kind: keyof typeof kinds, before: '' | 'unshaped.') {
  const { id, name, mark, about } = kinds[kind];
  const [words, plate, symbol] =
    before === ''
      ? (['', ', with the plate', `a_\\text{${mark}}`] as const)
      : ([' without the step', ', with the plate taken out', `a_\\text{${mark},u}`] as const);
  return derived({
    id: `${before}ripples.${id}`,
    name: `part of the field ${name}${words}`,
    symbol,
    unit: '1',
    display: '%',
    digits: 3,
    about: `Part of a wide scanned field ${about}${plate}.`,
    from: { parts },
    compute: ({ parts }) => parts[kind],
    formula: symbol,
    source: 'scaling',
  });
}

export const areaInWindow = partOf(fieldParts, 'inside', '');
export const areaTooLittle = partOf(fieldParts, 'tooLittle', '');
export const areaTooMuch = partOf(fieldParts, 'tooMuch', '');
export const unshapedAreaInWindow = partOf(unshapedFieldParts, 'inside', 'unshaped.');
export const unshapedAreaTooLittle = partOf(unshapedFieldParts, 'tooLittle', 'unshaped.');
export const unshapedAreaTooMuch = partOf(unshapedFieldParts, 'tooMuch', 'unshaped.');

export const surfacePeak = derived({
  id: 'ripples.surfacePeak',
  name: 'peak fluence on the tilted surface',
  symbol: 'F_\\text{peak}\\cos\\theta',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 3,
  about: 'Peak fluence of one pulse per area of the workpiece, incident: what is held against the window.',
  from: { peak: peakFluence, incidence },
  compute: ({ peak, incidence }) => peak * Math.cos(incidence),
  formula: 'F_\\text{peak}\\cos\\theta',
  source: 'scaling',
});

const single = { spot: asked, low: windowLow, high: windowHigh, plate: plateTransmission };

export const pulseGainAtTop = derived({
  id: 'ripples.pulseGainAtTop',
  name: 'gain of a single pulse with both peaks at the upper bound',
  symbol: 'G_{1,F_2}',
  unit: '1',
  digits: 3,
  about:
    'Area of one pulse between the bounds for ripples per energy over that of a Gaussian, both peaks at the upper bound; the losses of the plate and the stop count.',
  from: single,
  compute: ({ spot, low, high, plate }) => plate * gainPeakAtTop(spot, ratioOf(low, high)),
  formula: '\\frac{(A/E)_{F_2}}{(A/E)_{\\text{Gauss},F_2}}',
  source: 'search',
});

export const pulseGain = derived({
  id: 'ripples.pulseGain',
  name: 'gain of a single pulse at its best peak',
  symbol: 'G_1',
  unit: '1',
  digits: 3,
  about: 'The same with each beam at the peak up to the upper bound that gives it most area per energy.',
  from: single,
  compute: ({ spot, low, high, plate }) => plate * gainBestPeak(spot, ratioOf(low, high)),
  formula: '\\frac{A/E}{(A/E)_\\text{Gauss}}',
  source: 'search',
});

/** F2/F1, or a Problem that names the upper bound. */
function ratioOf(low: number, high: number): number {
  if (high > low) return high / low;
  throw noWindow();
}
