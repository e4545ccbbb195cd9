import { choice, number } from '../graph/define.ts';

export const fieldHeight = number({
  id: 'scan.fieldHeight',
  name: 'height of the field',
  symbol: 'G',
  unit: 'm',
  display: 'mm',
  about: 'Height of the field, across the lines of the first pass; its width lies along them.',
  initial: 10e-3,
  range: { min: 0, max: 1, above: true },
  typical: [1e-3, 100e-3],
});

export const maxSpeed = number({
  id: 'scan.maxSpeed',
  name: 'highest speed of the scanner',
  symbol: 'v_\\text{max}',
  unit: 'm/s',
  about: 'Fastest that the scanner moves the spot over the workpiece, as its maker states for this lens.',
  initial: 5,
  range: { min: 0, above: true, max: 1000 },
  typical: [1, 20],
});

export const acceleration = number({
  id: 'scan.acceleration',
  name: 'acceleration of the scanner',
  symbol: 'a_\\text{scan}',
  unit: 'm/s^2',
  about:
    'How fast the scanner changes the speed of the spot on the workpiece at the ends of a line; some thousand to some ten thousand for a mirror scanner, some metres per second squared for a stage (common practice).',
  initial: 10e3,
  range: { min: 1e-3, max: 1e7 },
  typical: [1e3, 100e3],
});

export const directions = choice({
  id: 'scan.directions',
  name: 'direction of the lines',
  symbol: '\\text{directions}',
  about:
    'Whether neighbouring lines are written to and fro, or all the same way with a way back between them.',
  initial: 'both',
  options: { both: 'to and fro', one: 'all the same way' },
});

export const turnRound = choice({
  id: 'scan.turnRound',
  name: 'where the scanner turns round',
  symbol: '\\text{turn}',
  about:
    'Beyond the ends of the line with the laser off (overscan), or at the end of the line with the laser on, where pulses then crowd.',
  initial: 'outside',
  options: { outside: 'outside the field, laser off', inside: 'at the edge of the field, laser on' },
});

export const lineDelay = number({
  id: 'scan.lineDelay',
  name: 'delay at each line',
  symbol: 't_\\text{delay}',
  unit: 's',
  display: 'us',
  about: 'Time that the scanner waits at each line besides turning round: settling, or for the part to cool.',
  initial: 0,
  range: { min: 0, max: 10 },
  typical: [0, 1e-3],
});

export const hatchAngle = number({
  id: 'scan.hatchAngle',
  name: 'turn of the hatch from pass to pass',
  symbol: '\\theta_\\text{hatch}',
  unit: 'rad',
  display: 'deg',
  about: 'Angle by which the lines are turned after every pass; 0 keeps them where they were.',
  initial: 0,
  range: { min: 0, max: Math.PI },
  typical: [0, Math.PI / 2],
});

export const interlacing = number({
  id: 'scan.interlacing',
  name: 'interlacing',
  symbol: 'n_\\text{inter}',
  unit: '1',
  about:
    'Every how many lines one is written before the next round fills those between: 1 writes neighbours in turn; a whole number, else rounded.',
  initial: 1,
  range: { min: 1, max: 1000 },
  typical: [1, 10],
  whole: true,
});
