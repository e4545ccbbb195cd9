import { expect, it } from 'vitest';
import { widthWords } from '../../../notebooks/lessons/widthWords.ts';
import { namedWidthsFigure } from '../../../notebooks/lessons/widthWordsFigures.ts';
import { expectClose } from '../../close.ts';
import { caseWith, chosenBy, expectByHand, figureOf } from './byHand.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(widthWords);

/** λf/(πw) = 1.03 µm · 200 mm/(π · 4 mm) = 16.39 µm. */
const opened = caseWith(widthWords, {
  'plate.stop': 'open',
  'laser.beamDiameter': 4e-3,
  'lens.focalLength': 0.2,
});

it('by hand: half the maximum', () => {
  // e^{−2r²/w²} = ½ at r = w √(ln 2/2) = 0.5887 · 16.39 = 9.650 µm; 1/e at 16.39/√2 = 11.59, 1/e² at 16.39, FWHM 19.30
  const errors = { 'one-over-e2': 16.39, 'one-over-e': 11.59, 'whole-width': 19.3 };
  expectByHand(opened, 'half', 9.65, errors, 5e-4);
});

it('by hand: from FWHM and from σ', () => {
  // 19.30 · 1.699 = 32.79 µm; 19.30/1.699 = 11.36; 32.79/√2 = 23.18
  const errors = {
    radius: 16.39e-6,
    'not-converted': 19.3e-6,
    'upside-down': 11.36e-6,
    'one-over-e': 23.18e-6,
  };
  expectByHand(opened, 'from-half-maximum', 32.79e-6, errors, 5e-4);
  // σ = 16.39/2 = 8.196; 4 · 8.196 = 32.78; 2.3548 · 8.196 = 19.30
  const others = { deviation: 8.196e-6, diameter: 32.78e-6, 'full-width': 19.3e-6 };
  expectByHand(opened, 'from-deviation', 16.39e-6, others, 5e-4);
});

it('by hand: the beam at 1/e', () => {
  // 8 mm/√2 = 5.657; · √2 = 11.31; 8 · 0.5887 = 4.710; 5.657/2 = 2.828
  const errors = {
    'not-converted': 8e-3,
    'upside-down': 11.31e-3,
    'half-as-wide': 4e-3,
    'full-width': 4.71e-3,
    radius: 2.828e-3,
  };
  expectByHand(opened, 'one-over-e', 5.657e-3, errors, 5e-4);
});

it('by hand: what the mix-up costs', () => {
  // (32.79/19.30)² = 1.699² = 2.886
  expect(opened.at('taken-for').right).toBe('much');
  expect(chosenBy(opened, 'taken-for')).toEqual({
    'energy-alone': 'right',
    'width-for-area': 'somewhat',
    'other-way': 'low',
  });
});

it('the named places lie on the curve', () => {
  const { marks } = figureOf(namedWidthsFigure, opened.inputs);
  const heights = [100 * Math.exp(-0.5), 50, 100 / Math.E, 100 / Math.E ** 2];
  marks!.forEach(({ y }, i) => {
    expectClose(y!, heights[i]!, { relative: 1e-9, source: 'definition' });
  });
});
