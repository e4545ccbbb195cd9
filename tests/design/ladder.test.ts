import { describe, expect, it } from 'vitest';
import type { PlannedLadder } from '../../lib/design/ladder.ts';
import type { Light } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { withPhaseScaled } from '../../lib/optics/variants.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, read, type Values } from '../notebooks/designOutcomes.ts';

const planOf = (design: Values = {}) => (outcomesOf(design)('ladder.plan') as { value: PlannedLadder }).value;
const lightOf = (design: Values = {}) => read(design)('focus.light') as unknown as Light;

describe('a ladder planned', () => {
  const losses = { 'losses.opticsTransmission': 0.8, 'losses.plateTransmission': 0.9 };

  it('has the wanted peak in the brightest plane of each row, losses counted', () => {
    const design = { ...losses, 'ladder.excess': 4 };
    const { shaped, unshaped } = planOf(design);
    const value = read(design);
    const light = lightOf(design);
    const threshold = value('threshold.fluence');
    // Fluence of relative irradiance 1: 2E'/(πw0²), physics.md §1.
    const unit = (energy: number, passes: number) =>
      (2 * energy * passes) / (Math.PI * value('focus.radius') ** 2);
    const bright = Math.max(
      ...Array.from({ length: 41 }, (_, i) => spotAt(light, (i * value('focus.rayleighLength')) / 8).peak),
    );
    // The brightest radius is found on a grid of 0.02 w0: to some 1e-4 of the peak.
    expectClose(unit(shaped.energy, 0.8 * 0.9) * bright, 4 * threshold, { relative: 1e-3 });
    const plain = spotAt(withPhaseScaled(light, 0), 0).peak;
    expectClose(unit(unshaped.energy, 0.8) * plain, 4 * threshold, { relative: 1e-3 });
    expectClose(value('ladder.rise'), plain / (0.9 * spotAt(light, 0).peak), { relative: 1e-3 });
  });

  it('without a plate and a stop it reaches as far as a Gaussian does', () => {
    // 1/(1 + ζ²) above 1/5 up to ζ = 2, found to half a step.
    const open = { 'plate.designPhase': 1e-9, 'plate.stop': 'open', 'ladder.excess': 5 };
    const { shaped } = planOf(open);
    const length = read(open)('focus.rayleighLength');
    expect(Math.abs(shaped.proposal.reach - 2 * length)).toBeLessThanOrEqual(length / 8);
    expectClose(shaped.brightest, 1, { relative: 1e-6 });
  });

  it('covers the marks wherever the focus lies within the doubt, at readings that can be set', () => {
    const design = { 'ladder.expectedReading': 5e-3, 'ladder.doubt': 0.3e-3, 'ladder.stepPart': 0.4 };
    const { marks, shaped, unshaped } = planOf(design);
    for (const { proposal } of [shaped, unshaped]) {
      const [first, last] = [proposal.readings[0]!, proposal.readings.at(-1)!];
      // The step is rounded to two digits, by at most 5 %.
      expect(first).toBeLessThan(5e-3 - 0.95 * (proposal.reach + 0.3e-3));
      expect(last).toBeGreaterThan(5e-3 + 0.95 * (proposal.reach + 0.3e-3));
      expectClose(proposal.step, Number(proposal.step.toPrecision(2)), { relative: 1e-12 });
    }
    const count = shaped.proposal.readings.length + unshaped.proposal.readings.length;
    expect(marks).toHaveLength(count);
    expect(marks.map(({ number }) => number)).toEqual(marks.map((_, i) => i + 1));
  });

  it('marks are what the spot in that plane leaves, and lie apart', () => {
    const plan = planOf();
    const light = lightOf();
    const [middle] = plan.marks.filter(({ plate, reading }) => plate && Math.abs(reading) < 1e-9);
    const unit = plan.shaped.fluencePerEnergy * middle!.energy;
    expectClose(middle!.mark.area, spotAt(light, 0).areaAbove(plan.threshold / unit), { relative: 1e-9 });
    const largest = Math.max(...plan.marks.map(({ mark }) => mark.outerDiameter));
    expect(plan.pitch).toBeGreaterThanOrEqual(2 * largest);
    // Lines of 13, four with the plate and three without it, an empty one between.
    const places = plan.marks.map(({ x, y }) => [Math.round(x / plan.pitch), Math.round(y / plan.pitch)]);
    expect(places.slice(0, 2)).toEqual([
      [0, 7],
      [1, 7],
    ]);
    expect(places[13]).toEqual([0, 6]);
    expect(places[49]).toEqual([0, 2]);
    expect(places.at(-1)).toEqual([4, 0]);
  });

  it.each([
    [{ 'ladder.doubt': 0.01 }, 'ladder.stepPart', /61 are the most: choose larger steps/],
    [{ 'threshold.source': 'fitted' }, 'threshold.spotTable', /No table of measured spots/],
  ])('%j cannot be planned, and the problem names the input', (design, input, says) => {
    const { problem } = outcomesOf(design)('ladder.plan') as {
      problem: { message: string; parts: { input?: string } };
    };
    expect(problem.message).toMatch(says);
    expect(problem.parts.input).toBe(input);
  });
});
