import { derived, number } from '../graph/define.ts';

export const pulsesPerBurst = number({
  id: 'laser.pulsesPerBurst',
  name: 'pulses per burst',
  symbol: 'n_\\text{burst}',
  unit: '1',
  about:
    'Pulses that leave the laser close together for one count of the repetition rate, each of the pulse energy; 1 without bursts, a whole number, else rounded.',
  initial: 1,
  range: { min: 1, max: 1000 },
  typical: [1, 10],
  whole: true,
});

export const burstSpacing = number({
  id: 'laser.burstSpacing',
  name: 'spacing of pulses inside a burst',
  symbol: '\\tau_\\text{burst}',
  unit: 's',
  display: 'ns',
  about: 'Time from pulse to pulse inside a burst; on the workpiece they land in one place.',
  initial: 20e-9,
  range: { min: 0, above: true, max: 1e-3 },
  typical: [1e-9, 100e-9],
});

export const burstPulses = derived({
  id: 'laser.burstPulses',
  name: 'pulses in one place at once',
  symbol: 'n_\\text{b}',
  unit: '1',
  about: 'Whole number of pulses of one burst; 1 without bursts.',
  from: { typed: pulsesPerBurst },
  compute: ({ typed }) => Math.round(typed),
  formula: '\\operatorname{round} n_\\text{burst}',
  source: 'definition',
});
