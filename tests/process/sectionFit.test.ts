import { describe, expect, it } from 'vitest';
import { levelSection } from '../../lib/measured/sectionLevel.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { Problem } from '../../lib/problem.ts';
import { fitSection } from '../../lib/process/sectionFit.ts';
import type { SectionModel } from '../../lib/process/sectionModel.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';

/**
 * A line of a Gaussian before saturation: (2√2/3)(δ w n/p)[ln(F0/F_th) − 2y²/w²]^{3/2}, with w = 6 µm, F0 = 2 J/cm² and
 * ten passes at p = 1 µm.
 */
const [w, peak, passesPerSpacing] = [6e-6, 2e4, 10 / 1e-6];
const gaussian = (y: number, depth: number, threshold: number) =>
  ((2 * Math.SQRT2) / 3) *
  depth *
  w *
  passesPerSpacing *
  Math.max(0, Math.log(peak / threshold) - 2 * (y / w) ** 2) ** 1.5;
const across = Float64Array.from({ length: 401 }, (_, i) => (i - 200) * 5e-8);
const model: SectionModel = (depth, threshold) => ({
  y: across,
  depth: across.map((y) => gaussian(y, depth, threshold)),
});
const start = { depthPerPulse: 40e-9, threshold: 3000 };

/** A section as measured: tilted, off the middle, with noise whose neighbours correlate by `alike`. */
function measured(seed: number, { alike = 0, noise = 40e-9, places = 241 } = {}) {
  const random = createRandom(seed);
  const depth = 20e-9 * Math.exp(0.3 * random.normal());
  const threshold = 2000 * Math.exp(0.3 * random.normal());
  const [centre, tilt, level] = [2e-6 * random.normal(), 0.02 * random.normal(), 1e-6 * random.normal()];
  const position = Array.from({ length: places }, (_, i) => ((i / (places - 1)) * 2 - 1) * 15e-6);
  let error = random.normal();
  const height = position.map((x) => {
    error = alike * error + Math.sqrt(1 - alike ** 2) * random.normal();
    return level + tilt * x - gaussian(x - centre, depth, threshold) + noise * error;
  });
  return { depth, threshold, centre, table: { position, height, named: 'height', missing: 0 } as const };
}

const count = cases(200, 60);
const rms = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);
const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;

describe('a groove fitted to a measured section', () => {
  it.each([0, 0.8])('finds what made it within its uncertainty, neighbours alike by %s', (alike) => {
    const found = Array.from({ length: count }, (_, seed) => {
      const made = measured(seed + 1, { alike });
      const fit = fitSection(levelSection(made.table), model, start);
      const apart = (found: { value: number; uncertainty: number }, true_: number) =>
        (found.value - true_) / found.uncertainty;
      return [apart(fit.depthPerPulse, made.depth), apart(fit.threshold, made.threshold)] as const;
    });
    for (const k of [0, 1] as const) {
      const scores = found.map((pair) => pair[k]);
      const within = scores.filter((score) => Math.abs(score) <= 3).length;
      expect(within / count).toBeGreaterThanOrEqual(0.95);
      // Three standard errors of a mean of normal deviates, and of a standard deviation of them about 1.
      expect(Math.abs(mean(scores))).toBeLessThan(3 / Math.sqrt(count));
      expect(rms(scores)).toBeLessThan(1 + 3 / Math.sqrt(2 * count));
      expect(rms(scores)).toBeGreaterThan(0.6);
    }
  });

  it('without noise gives back what made it', () => {
    const made = measured(7, { noise: 0 });
    const fit = fitSection(levelSection(made.table), model, start);
    // The model is read on straight lines between places 50 nm apart: h²/8 of the curvature, 1e-4 of the depth.
    expectClose(fit.depthPerPulse.value, made.depth, { relative: 1e-3 });
    expectClose(fit.threshold.value, made.threshold, { relative: 1e-3 });
  });

  it('leaves out a rim and counts it', () => {
    const made = measured(3);
    const height = made.table.height.map((h, i) => {
      const y = made.table.position[i]! - made.centre;
      const edge = w * Math.sqrt(Math.log(peak / made.threshold) / 2);
      return h + (Math.abs(y) > edge && Math.abs(y) < edge + 0.8e-6 ? 0.6e-6 : 0);
    });
    const section = levelSection({ ...made.table, height });
    const fit = fitSection(section, model, start);
    expect(fit.above).toBe(section.above);
    expect(fit.above).toBeGreaterThanOrEqual(10);
    expectClose(section.rim, 0.6e-6, { absolute: 4 * 40e-9 });
    expect(Math.abs(fit.depthPerPulse.value - made.depth)).toBeLessThan(3 * fit.depthPerPulse.uncertainty);
    expect(Math.abs(fit.threshold.value - made.threshold)).toBeLessThan(3 * fit.threshold.uncertainty);
  });

  it('says with a larger χ² and uncertainty that the floor is rougher than the surface', () => {
    const made = measured(5);
    const random = createRandom(99);
    const rough = made.table.height.map((h, i) => {
      const inside = gaussian(made.table.position[i]! - made.centre, made.depth, made.threshold) > 0;
      return h + (inside ? 200e-9 * random.normal() : 0);
    });
    const smooth = fitSection(levelSection(made.table), model, start);
    const fit = fitSection(levelSection({ ...made.table, height: rough }), model, start);
    expect(smooth.reducedChiSquare).toBeLessThan(2);
    // (200² + 40²)/40² = 26, the noise known to some 8 %.
    expect(fit.reducedChiSquare).toBeGreaterThan(15);
    expect(fit.reducedChiSquare).toBeLessThan(40);
    expect(fit.depthPerPulse.uncertainty).toBeGreaterThan(3 * smooth.depthPerPulse.uncertainty);
  });

  it('gives the length over which deviations are correlated', () => {
    // e-folding of a process of first order: −1/ln 0.9 = 9.5 samples of 0.125 µm.
    const lengths = Array.from({ length: cases(40, 10) }, (_, seed) => {
      const { table } = measured(seed + 500, { alike: 0.9 });
      return fitSection(levelSection(table), model, start).correlationLength;
    });
    // A fit takes the slow part off, so that less is left.
    expect(mean(lengths)).toBeGreaterThan(0.3 * 9.5 * 0.125e-6);
    expect(mean(lengths)).toBeLessThan(1.2 * 9.5 * 0.125e-6);
  });

  it.each([
    ['no groove in the model', 'absent', /cuts no groove/, () => ({ y: across, depth: across.map(() => 0) })],
    [
      'a model that cannot cut',
      'absent',
      /cuts no groove/,
      (): never => {
        throw new Problem('outside', 'Too deep.');
      },
    ],
    [
      'a model on which δ and the threshold do nothing',
      'impossible',
      /do not settle on this groove/,
      () => ({ y: across, depth: across.map((y) => gaussian(y, 20e-9, 2000)) }),
    ],
  ] as const)('%s: a problem that says so', (_name, kind, says, bad) => {
    const section = levelSection(measured(1).table);
    let problem: unknown;
    try {
      fitSection(section, bad, start);
    } catch (error) {
      problem = error;
    }
    expect(problem).toBeInstanceOf(Problem);
    expect((problem as Problem).kind).toBe(kind);
    expect((problem as Problem).message).toMatch(says);
  });

  it('too few places in the groove are refused', () => {
    const made = measured(1, { places: 31 });
    const outside = made.table.position
      .map((x, i) => [x, made.table.height[i]!] as const)
      .filter(([x], i) => Math.abs(x - made.centre) > 8e-6 || i % 3 === 0);
    const table = { ...made.table, position: outside.map(([x]) => x), height: outside.map(([, h]) => h) };
    expect(() => fitSection(levelSection(table), model, start)).toThrow(/places lie inside the groove/);
  });

  it('tells how far it is', () => {
    const parts: number[] = [];
    fitSection(levelSection(measured(2).table), model, start, (part) => parts.push(part));
    expect(parts.length).toBeGreaterThan(5);
    expect(parts.every((part, i) => part > 0 && part < 1 && part >= (parts[i - 1] ?? 0))).toBe(true);
  });
});
