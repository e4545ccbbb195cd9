import { describe, expect, it } from 'vitest';
import { fitGaussianMarks } from '../../lib/process/gaussianMarks.ts';
import { expectClose } from '../close.ts';
import { gaussianMark, syntheticMarks } from './syntheticMarks.ts';

const radius = 15e-6;
const threshold = 2e-6;
const exact = { seed: 1, thresholdEnergy: threshold, relative: 0, reading: 0, energyScatter: 0 };

describe('D² against ln E', () => {
  it('exact marks give back what they were made from', () => {
    const { marks } = syntheticMarks({ ...exact, markAt: gaussianMark(radius) });
    const fit = fitGaussianMarks(marks);
    const source = 'J. M. Liu, Opt. Lett. 7, 196 (1982)';
    expectClose(fit.thresholdEnergy, threshold, { relative: 1e-9, source });
    expectClose(fit.beamRadius, radius, { relative: 1e-9, source });
    expectClose(fit.thresholdFluence, (2 * threshold) / (Math.PI * radius ** 2), { relative: 1e-9, source });
    expect(fit.verdict).toBe('describes');
  });

  it('with scatter: the truth within the intervals, a verdict with its reason', () => {
    const { marks } = syntheticMarks({ seed: 5, thresholdEnergy: threshold, markAt: gaussianMark(radius) });
    const fit = fitGaussianMarks(marks);
    expect(fit.intervals.thresholdEnergy[0]).toBeLessThan(threshold);
    expect(fit.intervals.thresholdEnergy[1]).toBeGreaterThan(threshold);
    expect(fit.verdict).toBe('describes');
    expect(fit.used + fit.unmarked).toBe(marks.length);
    expectClose(fit.covariance[1]![1]!, fit.uncertainties.thresholdFluence ** 2, { relative: 1e-12 });
  });

  it('losses lower the fluence, not the energy', () => {
    const { marks } = syntheticMarks({ seed: 5, thresholdEnergy: threshold, markAt: gaussianMark(radius) });
    const [all, half] = [1, 0.5].map((transmission) => fitGaussianMarks(marks, { transmission }));
    expectClose(half!.thresholdFluence, all!.thresholdFluence / 2, { relative: 1e-12 });
    expect(half!.thresholdEnergy).toBe(all!.thresholdEnergy);
  });

  it('too few or shrinking marks are refused with the next step', () => {
    const { marks } = syntheticMarks({ ...exact, markAt: gaussianMark(radius), from: 1.5 });
    expect(() => fitGaussianMarks(marks.slice(0, 3))).toThrow(/at least 4 marks at 2 energies/);
    const turned = marks.map((mark, i) => ({ ...mark, area: marks.at(-1 - i)!.area }));
    expect(() => fitGaussianMarks(turned)).toThrow(/do not grow/);
  });

  it('a mark missing among large ones speaks against the model', () => {
    const { marks } = syntheticMarks({ seed: 3, thresholdEnergy: threshold, markAt: gaussianMark(radius) });
    const last = marks.length - 1;
    const fit = fitGaussianMarks(marks.map((mark, i) => (i === last ? { ...mark, area: 0 } : mark)));
    expect(fit.verdict).toBe('does not describe');
    expect(fit.reason).toContain(`Row ${marks[last]!.row} has no mark`);
  });
});
