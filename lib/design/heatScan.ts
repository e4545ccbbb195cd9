import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import type { HeatedField } from '../process/heatField.ts';
import { crowdsAtTurns, heatedField, type ScanSettings } from '../process/heatRate.ts';
import { overscan } from '../process/scanTime.ts';
import { hatch, motion } from './hatch.ts';
import { repetitionRate } from './laser.ts';
import { pulseSpacing } from './scanInputs.ts';
import { turnRound } from './scannerInputs.ts';

/** What to say where pulses crowd at the turns, written at `rate` (Hz): the sums of heat count them as evenly spaced. */
export function crowded({ motion, pulseSpacing }: ScanSettings, rate: number): Problem {
  const length = (value: number) => formatReadable(value, 'm', 'auto:m', 2);
  const way = overscan(pulseSpacing * rate, motion.acceleration);
  return new Problem(
    'outside',
    `Heat is not worked out where the scanner turns with the laser on: within ${length(way)} of the ends of a line it is slower than over the rest, and pulses crowd closer there than the ${length(pulseSpacing)} counted, so that the turns get hotter by much. Turn outside the field with the laser off; or scan slower or with more acceleration, until that way is no longer than the pulse spacing.`,
    {
      input: turnRound.id,
      value: turnRound.options.inside,
      allowed: turnRound.options.outside,
    },
  );
}

export const scanSettings = derived({
  id: 'heat.scan',
  name: 'how the field is written',
  symbol: '(\\text{hatch}, \\text{motion}, p)',
  unit: 'none',
  about: 'Hatch, motion of the scanner and pulse spacing together.',
  from: { hatch, motion, pulseSpacing },
  compute: ({ hatch, motion, pulseSpacing }): ScanSettings => ({ hatch, motion, pulseSpacing }),
  shownAs: ({ pulseSpacing }) => `pulses ${formatReadable(pulseSpacing, 'm', 'um', 3)} apart`,
  formula: '(\\text{hatch}, \\text{motion}, p)',
  source: 'definition',
});

export const heatedScan = derived({
  id: 'heat.field',
  name: 'field as its heat goes',
  symbol: '\\text{field}',
  unit: 'none',
  about:
    'Pulses a line, lines a pass, and the times from pulse to pulse, line to line and pass to pass; nothing where many pulses crowd at turns with the laser on.',
  from: { settings: scanSettings, rate: repetitionRate },
  compute: ({ settings, rate }): HeatedField => {
    if (crowdsAtTurns(settings, rate)) throw crowded(settings, rate);
    return heatedField(settings, rate);
  },
  shownAs: ({ pulses, lines }) => `${lines} lines of ${pulses} pulses`,
  formula: '(n_\\text{pulses}, n_\\text{lines}, t_\\text{line}, t_\\text{pass})',
  source: 'definition',
});
