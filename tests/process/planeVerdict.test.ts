import { describe, expect, it } from 'vitest';
import { createRandom } from '../../lib/numerics/random.ts';
import { focusRadius, type Light } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { Problem } from '../../lib/problem.ts';
import { markOf } from '../../lib/process/marks.ts';
import {
  type CouponMark,
  judgePlanes,
  type PlaneFit,
  type PlaneQuestions,
} from '../../lib/process/planeVerdict.ts';
import { crossedStep, roundStep } from './spots.ts';

const threshold = 2000;
const planes = [-40e-6, 0, 40e-6];
const energies = Array.from({ length: 9 }, (_, i) => 0.4e-6 * 1.6 ** i);

/** Fluence of relative irradiance 1 a joule. */
const unitOf = (light: Light) => 2 / (Math.PI * focusRadius(light) ** 2);

/**
 * Stands in for the fit of a profile: the threshold with the least squares of the areas' roots on a fine grid, its
 * uncertainty from their scatter, and a verdict by that scatter.
 */
function questionsFor(light: Light): PlaneQuestions {
  const spots = new Map(planes.map((z) => [z, spotAt(light, z)]));
  const predict: PlaneQuestions['predict'] = (energy, z, F) =>
    markOf(spots.get(z)!, F / (energy * unitOf(light)));
  // Areas of straight steps take milliseconds each: their roots are kept on 160 levels, linear between.
  const roots = new Map(
    [...spots].map(([z, spot]) => {
      const at = (i: number) => (i === 0 ? 0 : Math.sqrt(spot.areaAbove(spot.peak * 300 ** (-i / 160))));
      return [z, Float64Array.from({ length: 161 }, (_, i) => at(i))];
    }),
  );
  const root = (energy: number, z: number, F: number) => {
    const place = (160 * Math.log((spots.get(z)!.peak * energy * unitOf(light)) / F)) / Math.log(300);
    if (place <= 0) return 0;
    const [low, part] = [Math.min(159, Math.floor(place)), place - Math.floor(place)];
    const kept = roots.get(z)!;
    return kept[low]! + part * (kept[low + 1]! - kept[low]!);
  };
  const fitPlane = (marks: readonly CouponMark[], z: number): PlaneFit => {
    const seen = marks.filter(({ area }) => area > 0);
    if (seen.length < 3) throw new Problem('impossible', `${seen.length} marks are not enough.`);
    const misfit = (F: number) =>
      seen.reduce((sum, { energy, area }) => sum + (Math.sqrt(area) / root(energy, z, F) - 1) ** 2 || 1e3, 0);
    const tried = Array.from({ length: 400 }, (_, i) => threshold * 2 ** ((i - 200) / 100));
    const best = tried.reduce((one, other) => (misfit(other) < misfit(one) ? other : one));
    const scatter = Math.sqrt(misfit(best) / seen.length);
    const steepness = Math.abs(Math.log(root(8e-6, z, 1.1 * best) / root(8e-6, z, best)) / Math.log(1.1));
    const uncertainty = (best * scatter) / steepness / Math.sqrt(seen.length);
    const verdict = scatter < 0.06 ? 'describes' : 'does not describe';
    return {
      thresholdFluence: best,
      uncertainties: { thresholdFluence: Math.max(uncertainty, 0.004 * best) },
      verdict,
      reason: `Scatter ${scatter.toFixed(3)}.`,
    };
  };
  return { fitPlane, predict };
}

/** Marks of the coupon as the light would make them, with 2 % scatter of their diameters; `change` makes some otherwise. */
function couponOf(
  { predict }: PlaneQuestions,
  change: (mark: CouponMark) => CouponMark = (mark) => mark,
): CouponMark[] {
  const random = createRandom(17);
  return planes.flatMap((z) =>
    energies.flatMap((energy) =>
      [0, 1, 2].map((_, i): CouponMark => {
        const { area, innerDiameter } = predict(energy, z, threshold);
        const scattered = area * (1 + 0.04 * random.normal());
        const hollow = innerDiameter > 0 ? { innerDiameter } : {};
        return change({ row: i + 2, energy, area: scattered, pulses: 1, z, ...hollow });
      }),
    ),
  );
}

describe.each([
  ['round', roundStep(1, 1.4)],
  ['crossed', crossedStep(1.09)],
] as const)('the planes of a coupon behind a %s step', (_kind, light) => {
  const questions = questionsFor(light);

  it('are confirmed where the marks are as predicted', () => {
    const verdicts = judgePlanes(couponOf(questions).reverse(), questions);
    expect(verdicts.map(({ z }) => z)).toEqual(planes);
    for (const { verdict, threshold: found, seen, unmarked } of verdicts) {
      expect(verdict).toBe('confirmed');
      expect(seen + unmarked).toBe(27);
      expect(Math.abs(found!.value - threshold)).toBeLessThan(4 * found!.uncertainty);
    }
  });

  it('are not where the marks of one are smaller than predicted: its threshold is another', () => {
    const other = couponOf(questions, (mark) => {
      if (mark.z !== 0) return mark;
      return { ...mark, area: questions.predict(mark.energy / 1.4, 0, threshold).area };
    });
    const [, middle] = judgePlanes(other, questions);
    expect(middle!.verdict).toBe('not confirmed');
    expect(middle!.reasons.join(' ')).toMatch(
      /is 1\.[34]\d? times higher than that of the other planes.*smaller than predicted/,
    );
  });

  it('are not where the fit says that the profile does not describe the marks', () => {
    const other = couponOf(questions, (mark) =>
      mark.z > 0 ? { ...mark, area: mark.area * (mark.energy / 3e-6) ** 0.3 } : mark,
    );
    const last = judgePlanes(other, questions)[2]!;
    expect(last.verdict).toBe('not confirmed');
    expect(last.reasons[0]).toMatch(/^Scatter 0\.[1-9]|^Scatter 0\.0[6-9]/);
  });

  it('are too few to tell where there are hardly any marks', () => {
    const few = couponOf(questions).filter(({ z, energy }) => z !== 0 || energy < 0.5e-6);
    const [, middle] = judgePlanes(few, questions);
    expect(middle).toMatchObject({
      verdict: 'undecided',
      threshold: null,
      reasons: [expect.stringMatching(/not enough/)],
    });
  });
});

describe('hollow marks', () => {
  // No stop and κ = 0.9: a ring in the focus with a dip of 60 %.
  const light = roundStep(0.9);
  const questions = questionsFor(light);
  const whole = ({ innerDiameter: _, ...mark }: CouponMark) => mark;

  it('are predicted in the focus, and confirmed where they are seen', () => {
    const marks = couponOf(questions);
    expect(
      marks.filter(({ z, innerDiameter }) => z === 0 && innerDiameter !== undefined).length,
    ).toBeGreaterThan(5);
    expect(judgePlanes(marks, questions).map(({ verdict }) => verdict)).toEqual(Array(3).fill('confirmed'));
  });

  it('are missed where others of the table are noted, and looked for where none are', () => {
    const missed = judgePlanes(
      couponOf(questions, (mark) => (mark.z === 0 ? whole(mark) : { ...mark, innerDiameter: 1e-9 })),
      questions,
    )[1]!;
    expect(missed.verdict).toBe('not confirmed');
    expect(missed.reasons.join(' ')).toMatch(/have no unmarked centre where one is predicted/);
    const silent = judgePlanes(couponOf(questions, whole), questions)[1]!;
    expect(silent.verdict).toBe('confirmed');
    expect(silent.reasons.join(' ')).toMatch(/the table gives no inner diameter: look for it/);
  });

  it('are against a prediction that has none', () => {
    const flat = roundStep(1.2, 1.4);
    const asked = questionsFor(flat);
    const holed = couponOf(asked, (mark) =>
      mark.z === 0 && mark.area > 0 ? { ...mark, innerDiameter: 6e-6 } : mark,
    );
    const middle = judgePlanes(holed, asked)[1]!;
    expect(middle.reasons.join(' ')).toMatch(/have an unmarked centre where none is predicted/);
  });
});
