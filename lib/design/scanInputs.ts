import { derived, number } from '../graph/define.ts';
import { burstPulses } from './burst.ts';
import { repetitionRate } from './laser.ts';

export const scanSpeed = number({
  id: 'scan.speed',
  name: 'scan speed',
  symbol: 'v',
  unit: 'm/s',
  about: 'Speed of the spot over the workpiece along a line.',
  initial: 0.05,
  range: { min: 0, above: true, max: 1000 },
  typical: [0.01, 10],
});

export const lineSpacing = number({
  id: 'scan.lineSpacing',
  name: 'line spacing',
  symbol: '\\Delta y',
  unit: 'm',
  display: 'um',
  about: 'Distance of neighbouring lines of a scanned field.',
  initial: 6e-6,
  range: { min: 0.1e-6, max: 10e-3 },
  typical: [1e-6, 100e-6],
});

export const passes = number({
  id: 'scan.passes',
  name: 'passes',
  symbol: 'n_\\text{pass}',
  unit: '1',
  about:
    'How often the field is gone over, each time along the same lines unless the hatch is turned; a whole number, else rounded.',
  initial: 1,
  range: { min: 1, max: 1000 },
  typical: [1, 20],
  whole: true,
});

export const pulseSpacing = derived({
  id: 'scan.pulseSpacing',
  name: 'pulse spacing',
  symbol: 'p',
  unit: 'm',
  display: 'um',
  digits: 3,
  about: 'Distance of neighbouring pulses along a line; with bursts, of neighbouring bursts.',
  from: { speed: scanSpeed, rate: repetitionRate },
  compute: ({ speed, rate }) => speed / rate,
  formula: 'v/f_\\text{rep}',
  source: 'definition',
});

export const pulsesInPlace = derived({
  id: 'scan.pulsesInPlace',
  name: 'pulses in each place',
  symbol: 'n',
  unit: '1',
  about:
    'Pulses of all passes that land in exactly one place: passes times pulses per burst. With a hatch that turns from pass to pass the places differ; bounds on pulses are held against them as if they did not.',
  from: { passes, burst: burstPulses },
  compute: ({ passes, burst }) => Math.round(passes) * burst,
  formula: 'n_\\text{pass}\\,n_\\text{b}',
  source: 'definition',
});
