import { choice, number } from '../graph/define.ts';

export const stepPart = number({
  id: 'ladder.stepPart',
  name: 'step of the ladder in Rayleigh lengths',
  symbol: '\\Delta z/z_R',
  unit: '1',
  about:
    'Distance along z from mark to mark of a focus ladder, as a part of the Rayleigh length of the unshaped beam: a quarter shows how the marks grow and shrink, a half needs half as many.',
  initial: 0.25,
  range: { min: 0.02, max: 2 },
  typical: [0.2, 0.5],
});

export const doubt = number({
  id: 'ladder.doubt',
  name: 'how far the focus may be off',
  symbol: '\\delta z',
  unit: 'm',
  display: 'mm',
  about:
    'Largest distance of the focus from the reading at which it is expected; the ladder goes as much further to both sides.',
  initial: 0.2e-3,
  range: { min: 0, max: 0.1 },
  typical: [0.1e-3, 0.3e-3],
});

export const expectedReading = number({
  id: 'ladder.expectedReading',
  name: 'reading at which the focus is expected',
  symbol: 'z_\\text{exp}',
  unit: 'm',
  display: 'mm',
  about:
    'What the scale of z shows where the workpiece is thought to be in the focal plane of the lens; the ladder is laid about it.',
  initial: 0,
  range: { min: -1, max: 1 },
  typical: [-1e-3, 1e-3],
  digits: 6,
});

export const excess = number({
  id: 'ladder.excess',
  name: 'peak of the ladder over the threshold',
  symbol: 'F_\\text{ladder}/F_\\text{th}',
  unit: '1',
  about:
    'Highest peak fluence along a row over the threshold of one pulse: with a few, marks appear near the focus alone, and their sizes change steeply along z.',
  initial: 3,
  range: { min: 1.2, max: 50 },
  typical: [2, 5],
});

export const ladderRows = choice({
  id: 'ladder.rows',
  name: 'rows of the ladder',
  symbol: '\\text{rows}',
  about:
    'Whether the ladder is fired with the plate, without it, or once with each: the row without the plate has sharper ends, and the row with it can tell which way z counts.',
  initial: 'both',
  options: { both: 'with the plate, then without', with: 'with the plate', without: 'without the plate' },
});
