import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import type { Patch } from '../../lib/graph/state.ts';
import { solve } from '../../lib/studies/solve.ts';
import type { Move, Solution, SolveResult, Want } from '../../lib/studies/solveRequest.ts';
import { expectClose } from '../close.ts';

/** An answer from the initial design with some inputs changed: raw beam 5 mm, step 10 mm, stop 14 mm, half a wave. */
function answer(today: Patch, wants: readonly Want[], moves: readonly Move[]): SolveResult {
  return solve(designGraph, { ...designGraph.initial, ...today }, { wants, moves });
}

const dark: Want = { id: 'explain.axisIrradianceInFocus', kind: 'value', value: 0 };
const level: Want = { id: 'explain.axisCurvatureInFocus', kind: 'value', value: 0 };

/** Values of one moved number in all solutions, the one nearest to today first. */
function valuesOf(result: SolveResult, id: string): number[] {
  expect(result.met).toBe(true);
  expect(result.complete).toBe(true);
  return [result as Solution, ...result.others].map(({ patch }) => patch[id] as number);
}

describe('the special ratios are found again', () => {
  const magnification: Move = { id: 'expander.magnification', from: 0.5, to: 5 };
  const ratios = (result: SolveResult) => valuesOf(result, magnification.id).map((m) => 10 / (5 * m));
  // A value that touches 0 without crossing is found by its slope, to the rounding of four differences.
  const touched = { relative: 1e-9, source: 'closed form: κ² = ln 2' };

  it('without a stop, by the magnification', () => {
    const [darkest, ...more] = ratios(answer({ 'plate.stop': 'open' }, [dark], [magnification]));
    expectClose(darkest!, Math.sqrt(Math.log(2)), touched);
    expect(more).toEqual([]);
    // Curvature and amplitude are 0 together in the dark centre; the flattest is the other root.
    const flat = ratios(answer({ 'plate.stop': 'open' }, [level], [magnification])).sort();
    expect(flat).toHaveLength(2);
    expectClose(flat[0]!, Math.sqrt(Math.log(2)), { relative: 1e-9, source: 'κ² = ln 2' });
    expectClose((1 + flat[1]! ** 2) * Math.exp(-(flat[1]! ** 2)), 0.5, {
      relative: 1e-9,
      source: 'closed form',
    });
    expectClose(flat[1]!, 1.29551, { absolute: 5e-7, source: 'physics.md §1, six decimals' });
  });

  it.each([
    [14e-3, 0.749244, 1.036457],
    [10e-3, 0.616349, 0.794185],
  ])('with a stop of %d m about a beam of 10 mm, by the step', (aperture, darkest, flattest) => {
    const step: Move = { id: 'plate.stepDiameter', from: 1e-3, to: 0.99 * aperture };
    const today = { 'plate.apertureDiameter': aperture, 'plate.stepDiameter': 8e-3 };
    const six = { absolute: 5e-7, source: 'physics.md §1 and apertures.json, six decimals' };
    const found = valuesOf(answer(today, [dark], [step]), step.id).map((d) => d / 10e-3);
    expect(found).toHaveLength(1);
    expectClose(found[0]!, darkest, six);
    const flat = valuesOf(answer(today, [level], [step]), step.id).map((d) => d / 10e-3);
    expect(flat).toHaveLength(2);
    expectClose(Math.max(...flat), flattest, six);
    expectClose(Math.min(...flat), darkest, six);
  });

  it('with a stop twice the step, by the magnification', () => {
    const today = { 'plate.apertureDiameter': 20e-3 };
    const edge = (x: number) => Math.exp(-((2 * x) ** 2));
    for (const kappa of ratios(answer(today, [dark], [magnification]))) {
      expectClose(2 * Math.exp(-(kappa ** 2)), 1 + edge(kappa), { relative: 1e-9, source: 'closed form' });
    }
    const flat = Math.max(...ratios(answer(today, [level], [magnification])));
    expectClose(2 * (1 + flat ** 2) * Math.exp(-(flat ** 2)), 1 + (1 + (2 * flat) ** 2) * edge(flat), {
      relative: 1e-9,
      source: 'closed form',
    });
  });
});

describe('two wants with a lens from a list of three', () => {
  const magnification: Move = { id: 'expander.magnification' };
  const lens: Move = { id: 'lens.focalLength', values: [50e-3, 100e-3, 163e-3] };
  const ratio: Want = { id: 'match.stepRatio', kind: 'value', value: 1.05 };
  const width = (value: number): Want => ({ id: 'spot.width', kind: 'value', value, tolerance: 1e-6 });

  it('takes the lens that gives the width', () => {
    const result = answer({}, [ratio, width(31e-6)], [magnification, lens]);
    expect(result.met).toBe(true);
    expect(result.patch!['lens.focalLength']).toBe(163e-3);
    expectClose(result.patch!['expander.magnification'] as number, 2 / 1.05, {
      relative: 1e-9,
      source: 'a/w',
    });
    expect(Math.abs(result.values!['spot.width']! - 31e-6)).toBeLessThan(1e-6);
    expect(result.others).toEqual([]);
  });

  it('says that the two contradict where no lens gives it, with the nearest', () => {
    const result = answer({}, [ratio, width(25e-6)], [magnification, lens]);
    expect(result.met).toBe(false);
    expect(result.patch!['lens.focalLength']).toBe(163e-3);
    expect(result.missed.map(({ id }) => id)).toContain('spot.width');
    expect(result.blocked).toEqual({ reason: 'contradiction', wants: [0, 1] });
  });
});

it('looks all over the plane of two numbers and three lenses before it says that there is none', () => {
  const wants: readonly Want[] = [
    { id: 'match.stepRatio', kind: 'value', value: 1.05, tolerance: 0.005 },
    { id: 'spot.width', kind: 'value', value: 33e-6, tolerance: 1e-6 },
  ];
  const result = answer({}, wants, [
    { id: 'expander.magnification' },
    { id: 'workpiece.z', from: -0.5e-3, to: 0.5e-3 },
    { id: 'lens.focalLength', values: [100e-3, 163e-3, 254e-3] },
  ]);
  // At κ = 1.05 the three are 19, 31 and 48 µm wide in the focus and narrower beside it, down to 43 µm for the longest.
  expect(result.met).toBe(false);
  expect(result.complete).toBe(true);
  expect(result.patch!['lens.focalLength']).toBe(163e-3);
  expect(result.blocked).toEqual({ reason: 'contradiction', wants: [0, 1] });
});

describe('parts of one’s own', () => {
  it('one of the list is taken, by name, and the design of today stands first where it will do', () => {
    const patches = [50e-3, 100e-3, 163e-3].map((f) => ({
      name: `f ${f * 1e3}`,
      patch: { 'lens.focalLength': f },
    }));
    const width = (value: number): Want => ({ id: 'spot.width', kind: 'value', value, tolerance: 2e-6 });
    const moves: readonly Move[] = [{ id: 'expander.magnification', from: 1, to: 3 }];
    const wants = [width(20e-6), { id: 'spot.dip', kind: 'atMost', value: 0.06 } as const];
    const result = solve(designGraph, designGraph.initial, { wants, moves, patches });
    expect(result.met).toBe(true);
    expect(result.part).toBe('f 100');
    expect(result.patch!['lens.focalLength']).toBe(100e-3);
  });
});

it('a result that takes long can be wanted, with fewer designs tried', () => {
  const told: number[] = [];
  const wants: readonly Want[] = [{ id: 'workpiece.highestPeakMet', kind: 'atLeast', value: 1.5 }];
  const moves: readonly Move[] = [{ id: 'workpiece.heightError', from: 0, to: 200e-6 }];
  const result = solve(designGraph, designGraph.initial, { wants, moves }, (part) => told.push(part));
  expect(result.met).toBe(true);
  expectClose(result.values!['workpiece.highestPeakMet']!, 1.5, {
    relative: 1e-6,
    source: 'the bound itself',
  });
  // 60 is the usual bound where a design takes long.
  expect(result.tried).toBeLessThanOrEqual(60);
  expect([...told].sort((a, b) => a - b)).toEqual(told);
});

it('a list of planes is no number that could be wanted, though it has a unit', () => {
  const planes: Want = { id: 'focus.zeroCurvaturePlanes', kind: 'atMost', value: 1e-3 };
  const { met, blocked } = answer({}, [planes], [{ id: 'expander.magnification', from: 1, to: 3 }]);
  expect(met).toBe(false);
  expect(blocked).toMatchObject({
    reason: 'problem',
    problem: { message: 'The zero-curvature planes is no single number, so no value of it can be wanted.' },
  });
});
