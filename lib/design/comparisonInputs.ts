import { number } from '../graph/define.ts';

export const leastInside = number({
  id: 'comparison.leastInside',
  name: 'least part of the field inside the window',
  symbol: 'a_\\text{min}',
  unit: '1',
  display: '%',
  about:
    'Part of the scanned field that must lie inside the window for ripples, with the plate and without it alike.',
  initial: 0.9,
  range: { min: 0.01, max: 0.9999 },
  typical: [0.5, 0.99],
});

export const largestModulation = number({
  id: 'comparison.largestModulation',
  name: 'largest modulation of the accumulated fluence',
  symbol: 'm_\\text{max}',
  unit: '1',
  display: '%',
  about:
    'Highest less lowest accumulated fluence across the lines over their sum that is let pass, with the plate and without it alike.',
  initial: 0.1,
  range: { min: 0.001, max: 1 },
  typical: [0.03, 0.3],
});
