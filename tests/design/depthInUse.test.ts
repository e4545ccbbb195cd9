import { describe, expect, it } from 'vitest';
import { hasValue } from '../../lib/graph/outcome.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, type Values } from '../notebooks/designOutcomes.ts';

function result<T>(id: string, design: Values = {}, pins: Values = {}): T {
  const outcome = outcomesOf(design, pins)(id);
  if (!hasValue(outcome)) throw new Error(outcome.problem.message);
  return outcome.value as T;
}

const um = 1e-6;
const field = { 'scan.fieldWidth': 20e-3 };
const all = {
  ...field,
  'workpiece.tilt': 1e-3,
  'workpiece.heightError': 3 * um,
  'scan.fieldCurvature': 5 * um,
  'lens.thermalShift': -7 * um,
};

describe('what the surface reaches over the field', () => {
  it('sums tilt over the whole field, twice the height error, and both shifts', () => {
    expectClose(result('workpiece.zSpread', all), (20 + 6 + 5 + 7) * um, {
      relative: 1e-6,
      source: 'by hand',
    });
  });

  it('tilt and height error go either way, a focus further off leaves the surface nearer', () => {
    const { from, to } = result<{ from: number; to: number }>('workpiece.zReached', {
      ...all,
      'workpiece.z': 50 * um,
    });
    expectClose(from, (50 - 10 - 3 - 5) * um, { relative: 1e-6, source: 'by hand' });
    expectClose(to, (50 + 10 + 3 + 7) * um, { relative: 1e-6, source: 'by hand' });
  });
});

describe('whether the plane survives', () => {
  /** Lecture table in the focus: 82 µm deep, −41 to 41 µm. */
  const judge = (design: Values) =>
    result<{ verdict: string; room: number; move: number }>('workpiece.survives', design);

  it('in the middle of its depth', () => {
    expect(judge({}).verdict).toBe('survives');
    const tilted = judge({ ...field, 'workpiece.tilt': 4e-3 });
    expect(tilted.verdict).toBe('survives');
    expectClose(tilted.room, 2 * um, { absolute: 0.5 * um, source: '82 µm less 80 µm' });
    expect(judge({ ...field, 'workpiece.tilt': 4.2e-3 }).verdict).toBe('does not survive');
  });

  it('when moved, where the shifts go one way', () => {
    const { verdict, move } = judge({ 'lens.thermalShift': 60 * um });
    expect(verdict).toBe('survives when moved');
    // The focus goes 60 µm further off: half of that, 30 µm, is where to follow it.
    expectClose(move, 30 * um, { absolute: 0.1 * um, source: 'by hand' });
    expect(judge({ 'lens.thermalShift': 60 * um, 'workpiece.z': 30 * um }).move).toBeLessThan(50 * um);
  });

  it('not at all where the plateau leaves the tolerance in the plane itself', () => {
    expect(judge({ 'plate.stop': 'open' }).verdict).toBe('no depth');
  });

  it('leaves a tilt of depth over field, less what else takes', () => {
    const depth = result<number>('spot.depthOfFocus');
    expectClose(result('workpiece.allowedTilt', field), Math.atan(depth / 20e-3), { relative: 1e-12 });
    const less = { ...field, 'workpiece.heightError': 3 * um, 'lens.thermalShift': 10 * um };
    expectClose(result('workpiece.allowedTilt', less), (depth - 16 * um) / 20e-3, { relative: 1e-5 });
    expect(result('workpiece.allowedTilt', { 'workpiece.heightError': 50 * um })).toBe(0);
    const { verdict } = judge({
      ...less,
      'workpiece.tilt': 0.999 * ((depth - 16 * um) / 20e-3),
      'workpiece.z': 5 * um,
    });
    expect(verdict).toBe('survives');
  });
});

describe('depth of focus of the design', () => {
  it('82 µm in the focus of the lecture table, 7 µm in the open plane', () => {
    expectClose(result('spot.depthOfFocus'), 82 * um, {
      absolute: 0.5 * um,
      source: 'two digits, another route',
    });
    const zeta = 0.35;
    // κ = 1.05: the beam is narrower, zR longer.
    const open = { 'plate.stop': 'open', 'expander.magnification': 2 / 1.05 };
    const z = zeta * result<number>('focus.rayleighLength', open);
    const depth = result<number>('spot.depthOfFocus', { ...open, 'workpiece.z': z });
    expectClose(depth / result<number>('focus.rayleighLength', open), 0.4 - 0.349, { absolute: 1e-3 });
    expectClose(depth, 7 * um, { absolute: 0.5 * um });
  });

  it('none at all says by how much the plateau is uneven, and what to change', () => {
    const outcome = outcomesOf({ 'plate.stop': 'open' })('spot.depthOfFocus');
    expect(hasValue(outcome)).toBe(false);
    if (!hasValue(outcome)) {
      expect(outcome.problem.message).toMatch(/departs by 57\.4\s% .* tolerance of 5\s%/);
      expect(outcome.problem.parts.input).toBe('focus.depthTolerance');
    }
  });

  it('none at all of a peaked spot says nothing of a plateau, which it does not have', () => {
    const peaked = { 'laser.beamPropagationRatio': 4, 'focus.depthTolerance': 0.01 };
    expect(outcomesOf(peaked)('spot.kind')).toMatchObject({ value: 'peaked' });
    const { problem } = outcomesOf(peaked)('spot.depthEnds') as { problem: { message: string } };
    expect(problem.message).toMatch(
      /departs by 2\.\d+\s% from its mean over the disc out to 95\s% of its peak, more than the tolerance of 1\s%/,
    );
    expect(problem.message).not.toContain('plateau');
  });
});

interface Plane {
  readonly defocus: number;
  readonly dip: number;
  readonly kind: string;
}

describe('planes without curvature are not yet flat-tops', () => {
  const near = (absolute: number) => ({ absolute, source: 'computed by another route, two to four digits' });
  it.each([
    [
      'open, κ = 1',
      { 'plate.stop': 'open' },
      [
        [-5.5667, 0.71, 'ring'],
        [-0.3631, 0.18, 'ring'],
        [0.3631, 0.18, 'ring'],
        [5.5667, 0.71, 'ring'],
      ],
    ],
    [
      'R/w = 1.4',
      {},
      [
        [-5.1587, 0.54, 'ring'],
        [-0.4231, 0, 'flat-top'],
        [0.4231, 0, 'flat-top'],
        [5.1587, 0.54, 'ring'],
      ],
    ],
  ] as const)('%s', (_, design, expected) => {
    const planes = result<readonly Plane[]>('focus.zeroCurvatureKinds', design);
    expect(planes.length).toBe(expected.length);
    planes.forEach(({ defocus, dip, kind }, i) => {
      expectClose(defocus, expected[i]![0], near(5e-5));
      expectClose(dip, expected[i]![1], near(5e-3));
      expect(kind).toBe(expected[i]![2]);
    });
  });

  it('κ = 1.05, 0.9π, R/w = 1.6: the outer four are deep rings', () => {
    // A beam of 10 mm: step 10.5 mm, stop 16 mm.
    const design = {
      'plate.stepDiameter': 10.5e-3,
      'plate.apertureDiameter': 16e-3,
      'plate.designPhase': 0.9 * Math.PI,
    };
    const planes = result<readonly Plane[]>('focus.zeroCurvatureKinds', design);
    [-6.25, -5.0211, -0.177, 0.6799, 5.3133, 6.5201].forEach((zeta, i) => {
      expectClose(planes[i]!.defocus, zeta, near(5e-5));
      const outer = Math.abs(zeta) > 1;
      expect(planes[i]!.kind === 'ring').toBe(outer);
      if (outer) expectClose(planes[i]!.dip, 0.64, { absolute: 0.055, source: '59–69 %' });
    });
  });

  it('M² does not move them: they are of coherent light', () => {
    const zetas = (design: Values) =>
      result<readonly Plane[]>('focus.zeroCurvatureKinds', design).map(({ defocus, dip }) => [defocus, dip]);
    expect(zetas({ 'laser.beamPropagationRatio': 1.3 })).toEqual(zetas({}));
  });
});

describe('usable planes of the design', () => {
  it('one of each stretch, with the tilt its depth allows over the field', () => {
    const planes = result<readonly (Plane & { depth: number; allowedTilt: number })[]>(
      'focus.usablePlanes',
      field,
    );
    expect(planes.length).toBe(11);
    for (const { depth, allowedTilt } of planes)
      expectClose(allowedTilt, Math.atan(depth / 20e-3), { relative: 1e-12 });
  });

  it('where no plane serves, says within which range', () => {
    const outcome = outcomesOf({ 'focus.planeGoal': 'ring', 'focus.searchedRange': 0.3 })(
      'focus.usablePlanes',
    );
    if (hasValue(outcome)) throw new Error('found');
    expect(outcome.problem.message).toMatch(/^Within 0\.3 Rayleigh lengths of the focus no plane serves/);
    expect(outcome.problem.kind).toBe('absent');
  });
});
