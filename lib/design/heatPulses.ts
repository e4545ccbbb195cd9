import { derived } from '../graph/define.ts';
import { formatNumber, formatReadable } from '../graph/units.ts';
import type { HeatInput } from '../process/heatPulse.ts';
import { burstPulses, burstSpacing } from './burst.ts';
import { type HeatBeam, shapedBeam, unshapedBeam } from './heatBeam.ts';
import { residualFraction, thickness } from './heatInputs.ts';
import { absorptance, density, diffusivity, specificHeat } from './heatMaterial.ts';
import { repetitionRate } from './laser.ts';

/** Part of the time between bursts that a burst may last and still count as one heat input. */
const longestBurst = 0.1;

/** What must be said of bursts; nothing without. */
function burstNote(values: {
  readonly burst: number;
  readonly spacing: number;
  readonly rate: number;
}): string | undefined {
  const part = (values.burst - 1) * values.spacing * values.rate;
  return part > longestBurst
    ? `A burst lasts ${formatNumber(part, 2)} of the time between bursts: its pulses are no longer one heat input, as they are counted here.`
    : undefined;
}

/** Heat of a pulse, and all that its spreading depends on, of one of the two beams. */
function inputsOf({ before, spot, unit, words, mark }: HeatBeam) {
  const perPulse = derived({
    id: `${before}heat.perPulse`,
    name: `heat left by a pulse${words}`,
    symbol: `Q${mark === '' ? '' : '_\\text{u}'}`,
    unit: 'J',
    display: 'uJ',
    digits: 3,
    about:
      'Energy that passes the stop, times the part absorbed, times the part of that which stays as heat; with bursts of all pulses of a burst, which count as one heat input.',
    from: {
      spot,
      unit,
      absorptance,
      residualFraction,
      burst: burstPulses,
      spacing: burstSpacing,
      rate: repetitionRate,
    },
    compute: ({ spot, unit, absorptance, residualFraction, burst }) =>
      residualFraction * absorptance * unit * spot.peak * spot.effectiveArea * burst,
    enteredFor: () => ({ keys: ['spot', 'unit', 'absorptance', 'residualFraction', 'burst'] }),
    valid: burstNote,
    formula: `\\eta_\\text{heat}\\,A\\,F_{${mark}\\text{peak}}A_{${mark}\\text{eff}}\\,n_\\text{b}`,
    source: 'common practice',
  });
  const input = derived({
    id: `${before}heat.input`,
    name: `heat input${words}`,
    symbol: `(Q, w_\\text{eff}, \\chi)${mark === '' ? '' : '_\\text{u}'}`,
    unit: { energy: 'J', radius: 'm', diffusivity: 'm^2/s', heatCapacity: 'J/(m^3*K)', thickness: 'm' },
    about:
      'Heat of a pulse, the radius of the Gaussian with the effective area of the spot, and the workpiece that takes it.',
    from: { perPulse, spot, diffusivity, density, specificHeat, thickness },
    compute: ({ perPulse, spot, diffusivity, density, specificHeat, thickness }): Required<HeatInput> => ({
      energy: perPulse,
      radius: Math.sqrt((2 * spot.effectiveArea) / Math.PI),
      diffusivity,
      heatCapacity: density * specificHeat,
      thickness,
    }),
    shownAs: ({ energy, radius }) =>
      `${formatReadable(energy, 'J', 'uJ', 3)} within ${formatReadable(radius, 'm', 'um', 3)}`,
    formula: `w_\\text{eff}=\\sqrt{2A_{${mark}\\text{eff}}/\\pi}`,
    source: 'scaling',
  });
  return { perPulse, input };
}

export const { perPulse, input: heatInput } = inputsOf(shapedBeam);
export const { perPulse: unshapedPerPulse, input: unshapedHeatInput } = inputsOf(unshapedBeam);
