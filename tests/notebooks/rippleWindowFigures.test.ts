import { expect, it } from 'vitest';
import { insideFigure } from '../../notebooks/rippleWindowFigures.ts';

const summary = (shaped: readonly number[]) =>
  insideFigure.view({
    inside: {
      ratio: Float64Array.of(1.05, 1.5, 3),
      shaped: Float64Array.from(shaped),
      plain: Float64Array.of(0.1, 0.2, 0.3),
    },
    low: 1000,
    high: 1300,
  }).summary;

it('says that a wider window is not always more where the part inside falls, and only there', () => {
  expect(summary([1, 0.03, 0])).toContain('Wider is not always more');
  expect(summary([0.5, 0.8, 0.8])).not.toContain('Wider');
});
