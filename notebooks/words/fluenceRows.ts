import { formatQuantity } from '../../lib/graph/units.ts';
import { energyOfPeak, gaussianFluences, type WidthName } from '../../lib/optics/widths.ts';
import type { LinkedRow } from './linkedRows.ts';

/** A pulse of a Gaussian beam: energy in J, 1/e² radius in m. */
export interface GaussianPulse {
  readonly energy: number;
  readonly radius: number;
}

export type FluenceKey = 'energy' | 'peak' | 'mean';

const fluence = { unit: 'J/m^2', display: 'J/cm^2', bare: 'J/cm^2', between: [0, 1e12] } as const;

/** Energy and fluences of a pulse, any of which may be typed; the width stands beside them. */
export const fluenceRows: readonly LinkedRow<FluenceKey>[] = [
  {
    key: 'energy',
    label: 'Pulse energy',
    symbol: 'E',
    about: 'Of one pulse, where the fluence is asked for.',
    unit: 'J',
    display: 'auto:J',
    bare: 'uJ',
    between: [0, 1000],
  },
  {
    key: 'peak',
    label: 'Peak fluence',
    symbol: '2E/(\\pi w^2)',
    about: 'On the axis; what a threshold is compared with.',
    ...fluence,
  },
  {
    key: 'mean',
    label: 'Mean fluence',
    symbol: 'E/(\\pi w^2)',
    about: 'All of the energy over the circle of the 1/e² radius, as papers often mean it.',
    ...fluence,
  },
];

/** What the rows show for a pulse. */
export function pulseValues({ energy, radius }: GaussianPulse): Readonly<Record<FluenceKey, number>> {
  const { peak, mean } = gaussianFluences(energy, radius);
  return { energy, peak, mean };
}

/** The pulse with one of its numbers typed: a fluence changes the energy, never the width. */
export function pulseWith(pulse: GaussianPulse, key: FluenceKey, value: number): GaussianPulse {
  if (key === 'energy') return { ...pulse, energy: value };
  return { ...pulse, energy: energyOfPeak(key === 'peak' ? value : 2 * value, pulse.radius) };
}

/** Peak and mean in a sentence. */
export function fluenceSaid({ energy, radius }: GaussianPulse): string {
  const { peak, mean, meanInside } = gaussianFluences(energy, radius);
  const show = (value: number) => formatQuantity(value, 'J/m^2', 'J/cm^2', 4);
  return `The peak is ${show(peak)}, twice the mean of ${show(mean)}. Of the energy 86.5\u202f% falls into the 1/e² circle, so the mean of what really arrives in it is ${show(meanInside)}.`;
}

/** The ways of the width that may be typed beside the energy. */
export const widthChoices: Readonly<Record<WidthName, string>> = {
  radius: '1/e² radius',
  diameter: '1/e² diameter, D4σ',
  radiusAtE: '1/e radius',
  diameterAtE: '1/e diameter',
  fullWidth: 'full width at half maximum',
  deviation: 'standard deviation σ',
};
