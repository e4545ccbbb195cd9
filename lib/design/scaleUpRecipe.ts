import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { checkField } from '../process/fieldChecks.ts';
import type { Recipe } from '../process/scaleUp.ts';
import { burstPulses } from './burst.ts';
import { hatch, motion } from './hatch.ts';
import { usedPulseEnergy } from './losses.ts';
import { effectiveArea } from './marks.ts';
import { pulseSpacing } from './scanInputs.ts';

export const recipe = derived({
  id: 'scaleUp.recipe',
  name: 'recipe that is held',
  symbol: '\\text{recipe}',
  unit: 'none',
  about:
    'Pulse energy of a spot, pulses of a burst, pulse spacing, lines, passes and turning round of the field as it is set: what the larger machine is to do faster, place by place the same.',
  from: { hatch, motion, pulseSpacing, energy: usedPulseEnergy, burst: burstPulses, effectiveArea },
  compute: ({ hatch, motion, effectiveArea, ...rest }): Recipe => {
    checkField(hatch, { effectiveArea });
    const { directions, turnRound, delay } = motion;
    return { hatch, motion: { directions, turnRound, delay }, ...rest };
  },
  shownAs: ({ energy, pulseSpacing, hatch }) =>
    `${formatReadable(energy, 'J', 'uJ', 3)} every ${formatReadable(pulseSpacing, 'm', 'um', 3)}, lines ${formatReadable(hatch.lineSpacing, 'm', 'um', 3)} apart`,
  formula: '(E, n_\\text{b}, p, \\Delta y, n_\\text{pass})',
  source: 'definition',
});
