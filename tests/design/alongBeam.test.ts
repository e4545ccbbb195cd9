import { describe, expect, it } from 'vitest';
import { shownDepth, shownPlaces } from '../../lib/design/alongBeam.ts';

describe('lengths along the beam in one unit for each kind', () => {
  it.each([
    [0, '0\u202fµm'],
    [0.4091e-6, '0.409\u202fµm'],
    [26.6e-6, '26.6\u202fµm'],
    [0.99951e-3, '1\u202fmm'],
    [2.8614e-3, '2.86\u202fmm'],
    [13.11e-3, '13.1\u202fmm'],
  ])('a depth of %s m', (length, shown) => {
    expect(shownDepth(length)).toBe(shown);
  });

  it.each([
    [[0], ['0\u202fmm']],
    [
      [35.92e-6, 62.56e-6],
      ['0.03592\u202fmm', '0.06256\u202fmm'],
    ],
    [
      [-5e-6, 62.56e-6],
      ['−0.005\u202fmm', '0.06256\u202fmm'],
    ],
    [
      [-0.4091e-6, 0.4091e-6],
      ['−0.4091\u202fµm', '0.4091\u202fµm'],
    ],
    [
      [-0.1, 0.1],
      ['−100\u202fmm', '100\u202fmm'],
    ],
  ])('places %j', (places, shown) => {
    expect(shownPlaces(places)).toEqual(shown);
  });
});
