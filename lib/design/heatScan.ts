import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import type { HeatedField } from '../process/heatField.ts';
import { heatedField, type ScanSettings } from '../process/heatRate.ts';
import { hatch, motion } from './hatch.ts';
import { repetitionRate } from './laser.ts';
import { pulseSpacing } from './scanInputs.ts';

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
  about: 'Pulses a line, lines a pass, and the times from pulse to pulse, line to line and pass to pass.',
  from: { settings: scanSettings, rate: repetitionRate },
  compute: ({ settings, rate }): HeatedField => heatedField(settings, rate),
  shownAs: ({ pulses, lines }) => `${lines} lines of ${pulses} pulses`,
  formula: '(n_\\text{pulses}, n_\\text{lines}, t_\\text{line}, t_\\text{pass})',
  source: 'definition',
});
