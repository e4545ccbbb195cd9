import { expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { light as lightQuantity } from '../../../lib/design/focus.ts';
import { createEngine } from '../../../lib/graph/engine.ts';
import { valueOrThrow } from '../../../lib/graph/outcome.ts';
import type { Patch } from '../../../lib/graph/state.ts';
import { decentredCut, rimsOf, riseOverMean } from '../../../lib/optics/decentredCut.ts';
import type { Light } from '../../../lib/optics/light.ts';
import { alignment } from '../../../notebooks/lessons/alignment.ts';
import { otherSideFigure, rimsFigure } from '../../../notebooks/lessons/alignmentFigures.ts';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { missed, missedCut } from '../../../notebooks/lessons/missedMiddle.ts';
import { cases } from '../../cases.ts';
import { expectClose } from '../../close.ts';
import { caseWith, chosenBy, figureOf } from './byHand.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(alignment);

/** κ = 1, open, w = 5 mm, f = 100 mm: z_R = 131.1 µm, and z = 47.6 µm is ζ = 0.363. 0.25 mm is 0.05 w. */
const opened = caseWith(alignment, {
  'laser.beamDiameter': 5e-3,
  'plate.stepDiameter': 10e-3,
  'plate.stop': 'open',
  'lens.focalLength': 0.1,
  'workpiece.z': 47.6e-6,
});

const lightOf = (inputs: Patch): Light =>
  valueOrThrow(createEngine(designGraph, inputs).evaluate([lightQuantity.id])[lightQuantity.id]!) as Light;

/**
 * |U(ξ, 0)|², the double integral added up on squares of w/40 over the beam, no symmetry used:
 * U = (1/π)∬ t e^{−(x−x0)²−y²−iζ(x²+y²)−2iξx} dx dy, t = −1 within the step and 1 outside.
 */
function addedUp(xi: number, zeta: number, x0: number): number {
  const step = 1 / 40;
  let [re, im] = [0, 0];
  for (let i = -140; i < 140; i++) {
    for (let j = -140; j < 140; j++) {
      const [x, y] = [(i + 0.5) * step, (j + 0.5) * step];
      const square = x * x + y * y;
      const size = (square < 1 ? -1 : 1) * Math.exp(-((x - x0) ** 2) - y * y);
      const phase = -zeta * square - 2 * xi * x;
      re += size * Math.cos(phase);
      im += size * Math.sin(phase);
    }
  }
  return ((re * re + im * im) * step ** 4) / Math.PI ** 2;
}

it('by hand: in the focus left is as bright as right', () => {
  // t is real and ζ = 0: U(−ξ) is the complex conjugate of U(ξ), of the same size, whatever the beam.
  expect(opened.at('in-focus').right).toBe('alike');
  expect(chosenBy(opened, 'in-focus')).toEqual({ 'same-side': 'right', 'crossed-over': 'left' });
  expectClose(addedUp(1, 0, 0.05), addedUp(-1, 0, 0.05), { relative: 1e-12 });
});

it('by hand: rims added up square by square', () => {
  // One unit of ξ is w0 = 6.557 µm; rims near ±0.9. Brightest of a few places, a parabola through the three highest.
  const highest = (side: number) => {
    const values = [0.85, 0.9, 0.95].map((xi) => addedUp(side * xi, 0.363, 0.05));
    const [a, b, c] = values as [number, number, number];
    const move = (0.5 * (a - c)) / (a - 2 * b + c);
    return { xi: side * (0.9 + 0.05 * move), height: b - 0.25 * (a - c) * move };
  };
  const [left, right] = [highest(-1), highest(1)];
  const imbalance = (right.height - left.height) / ((right.height + left.height) / 2);
  // Squares on the round step's edge leave a part in a thousand or two of the rims.
  const found = opened.at('imbalance');
  expectClose(found.right as number, imbalance, { absolute: 4e-3, source: 'double sum' });
  expectClose(found.right as number, 0.08, { absolute: 0.005, source: '8 % at ζ = 0.363, x0 = 0.05 w' });
  const answers = Object.fromEntries(found.errors.map(({ error, answer }) => [error.id, answer as number]));
  expectClose(answers['over-sum']!, imbalance / 2, { absolute: 2e-3 });
  expectClose(answers['ratio']!, right.height / left.height, { absolute: 4e-3 });
  expectClose(answers['ratio-turned']!, left.height / right.height, { absolute: 4e-3 });
  const place = opened.at('highest');
  expectClose(place.right as number, 6.557 * right.xi, { absolute: 0.4, source: 'double sum' });
  const others = Object.fromEntries(place.errors.map(({ error, answer }) => [error.id, answer as number]));
  expectClose(others['lower-rim']!, 6.557 * left.xi, { absolute: 0.4, source: 'double sum' });
  expect(others['axis']).toBe(0);
});

it('by hand: on the other side of the focus the sides swap', () => {
  // Real t: I(ξ, −ζ) = I(−ξ, ζ), so the rim that is brighter behind the focus on the right is brighter before it on the left.
  expect(opened.at('other-side').right).toBe('left');
  expect(chosenBy(opened, 'other-side')).toEqual({ 'same-rim': 'right', 'as-in-focus': 'alike' });
  expectClose(addedUp(0.9, 0.363, 0.05), addedUp(-0.9, -0.363, 0.05), { relative: 1e-12 });
});

it('by hand: 8 % away from the focus against 0 in it', () => {
  expect(opened.at('judged').right).toBe('away');
  expect(chosenBy(opened, 'judged')).toEqual({ 'smallest-spot': 'focus', 'no-difference': 'either' });
});

it('the cut is that of the double sum, and grows in step with the decentring', () => {
  const light = lightOf(opened.inputs);
  const { x, irradiance } = missedCut(light, 47.6e-6);
  for (const i of [10, 30, 44, 60, 75]) {
    const xi = x[i]! / 6.5571e-6;
    // B = f for a plate in the front focal plane: irradiance is |U|².
    expectClose(irradiance[i]!, addedUp(xi, 0.3631, 0.05), { absolute: 1e-3, source: 'double sum' });
  }
  const half = riseOverMean(decentredCut(light, 47.6e-6, missed / 2));
  expectClose(2 * half, riseOverMean(missedCut(light, 47.6e-6)), { relative: 0.03 });
  expect(Math.abs(riseOverMean(decentredCut(light, 47.6e-6, 0)))).toBeLessThan(1e-12);
});

it('what the charts say holds in every case', () => {
  for (let seed = 1; seed <= cases(40, 10); seed++) {
    const { inputs } = openCase(alignment, seed);
    const light = lightOf(inputs);
    const z = inputs['workpiece.z'] as number;
    // In the focus alike, to rounding, and before and behind it mirrored.
    expect(Math.abs(riseOverMean(missedCut(light, 0)))).toBeLessThan(1e-9);
    expectClose(riseOverMean(missedCut(light, -z)), -riseOverMean(missedCut(light, z)), {
      relative: 1e-9,
    });
    const { left, right } = rimsOf(missedCut(light, z));
    expect(Math.sign(right.irradiance - left.irradiance)).toBe(Math.sign(z));
    const [first, second] = figureOf(rimsFigure, inputs).marks!;
    expect(first!.x!).toBeLessThan(0);
    expect(second!.x!).toBeGreaterThan(0);
    expect(figureOf(otherSideFigure, inputs).title).toContain(z < 0 ? 'behind' : 'before');
  }
});
