import { derived } from '../graph/define.ts';
import { unshapedPeak } from './focus.ts';
import { asked, unshapedAsked } from './marks.ts';
import { unshapedUnit } from './rippleWindow.ts';
import { lineSpacing, pulseSpacing, pulsesInPlace } from './scanInputs.ts';

const scanned = { pulseSpacing, lineSpacing, pulsesInPlace };

/** Mean over a wide field of what all pulses leave there: n E/(p Δy), E through the stop. */
function accumulated(
  energy: number,
  { pulseSpacing, lineSpacing, pulsesInPlace }: Record<keyof typeof scanned, number>,
): number {
  return (pulsesInPlace * energy) / (pulseSpacing * lineSpacing);
}

export const accumulatedFluence = derived({
  id: 'scan.accumulatedFluence',
  name: 'mean accumulated fluence',
  symbol: '\\bar F_\\text{acc}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 3,
  about:
    'Energy of all pulses of all passes per area of a wide scanned field, incident, with the plate and behind the stop; a mean, also where the field is uneven.',
  from: { spot: asked, unit: unshapedPeak, ...scanned },
  compute: ({ spot, unit, ...field }) => accumulated(unit * spot.peak * spot.effectiveArea, field),
  formula: 'n\\,F_\\text{peak}A_\\text{eff}/(p\\,\\Delta y)',
  source: 'definition',
});

export const unshapedAccumulatedFluence = derived({
  id: 'unshaped.scan.accumulatedFluence',
  name: 'mean accumulated fluence without the step',
  symbol: '\\bar F_\\text{acc,u}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 3,
  about:
    'The same with the plate taken out, scanned alike: at the energy that gives the same peak fluence, or at the same energy.',
  from: { spot: unshapedAsked, unit: unshapedUnit, ...scanned },
  compute: ({ spot, unit, ...field }) => accumulated(unit * spot.peak * spot.effectiveArea, field),
  formula: 'n\\,F_\\text{peak,u}A_\\text{eff,u}/(p\\,\\Delta y)',
  source: 'definition',
});
