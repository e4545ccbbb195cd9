import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { truth } from '../../data/measured/make.ts';
import type { MeasuredProfile } from '../../lib/design/profileFile.ts';
import { valueAt } from '../../lib/numerics/panelledFunction.ts';
import type { Light } from '../../lib/optics/light.ts';
import { roundProfileAt } from '../../lib/optics/roundSpot.ts';
import { measuredFiles } from '../../notebooks/measuredFiles.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, read, type Values } from '../notebooks/designOutcomes.ts';
import { here } from '../notebooks/runCommand.ts';

const z = 55e-6;
const plane = { 'spot.measuredProfilePlane': 'typed', 'spot.measuredProfileZ': z };
const valueIn = (id: string, design: Values = {}) => (outcomesOf(design)(id) as { value: unknown }).value;
const light = valueIn('focus.light') as Light;
const unshapedPeak = valueIn('focus.unshapedPeakFluence') as number;
const predicted = roundProfileAt(light, z);
const step = 0.4e-6;

/** The prediction itself as a measured line of fluences, `factor` times as high. */
function line(factor: number, absolute: boolean, stretch = 1): MeasuredProfile {
  const position = Array.from({ length: 121 }, (_, i) => (i - 60) * step * stretch);
  const value = position.map((x) => factor * unshapedPeak * valueAt(predicted, Math.abs(x) / stretch));
  return {
    name: 'line.csv',
    axis: 'line',
    position,
    fluence: absolute ? value : [],
    counts: absolute ? [] : value,
    image: null,
  };
}

const numbers = ['measuredWidth', 'measuredDip', 'measuredDeviation', 'measuredPeakFluence'] as const;
function numbersOf(file: MeasuredProfile, more: Values = {}) {
  const value = read({ 'spot.measuredProfile': file, ...plane, ...more });
  return Object.fromEntries(numbers.map((name) => [name, value(`spot.${name}`)])) as Record<
    (typeof numbers)[number],
    number
  >;
}

describe('the prediction given as measured', () => {
  const at = read({ 'workpiece.z': z });

  it.each([
    ['energy', false, 17],
    ['peak', false, 17],
    ['measured', true, 1],
  ])('at equal %s agrees with itself', (scaling, absolute, factor) => {
    const found = numbersOf(line(factor as number, absolute as boolean), { 'spot.measuredScaling': scaling });
    // h²c/(8s) at edges some 7 µm wide: c/s is below 1/(2 µm), so 0.01 µm each.
    expectClose(found.measuredWidth, at('spot.width'), { absolute: 0.02e-6, source: 'spot.width' });
    expectClose(found.measuredDip, at('spot.dip'), { absolute: 1e-3, source: 'spot.dip' });
    expectClose(found.measuredPeakFluence, at('spot.peakFluence'), {
      relative: 1e-3,
      source: 'spot.peakFluence',
    });
    expect(found.measuredDeviation).toBeLessThan(1e-3);
  });

  it('is compared in the plane of the workpiece unless another is typed', () => {
    const file = { 'spot.measuredProfile': line(1, true) };
    const away = read({ ...file, 'workpiece.z': -0.3e-3 });
    expect(away('spot.measuredPlane')).toBe(-0.3e-3);
    expect(away('spot.measuredDeviation')).toBeGreaterThan(0.1);
    expectClose(away('spot.predictedWidth'), read({ 'workpiece.z': -0.3e-3 })('spot.width'), {
      relative: 1e-9,
    });
    const typed = read({ ...file, ...plane, 'workpiece.z': -0.3e-3 });
    expect(typed('spot.measuredDeviation')).toBeLessThan(1e-3);
    expectClose(typed('spot.predictedWidth'), at('spot.width'), { relative: 1e-9 });
    expectClose(typed('spot.predictedPeakFluence'), at('spot.peakFluence'), { relative: 1e-9 });
  });

  it('keeps a fluence as measured, whatever the prediction', () => {
    const found = numbersOf(line(0.7, true), { 'spot.measuredScaling': 'measured' });
    expectClose(found.measuredPeakFluence, 0.7 * at('spot.peakFluence'), { relative: 1e-3 });
    // Everywhere 30 % low: rms over mean square of the plateau.
    const flatness = Math.hypot(at('spot.flatness'), at('spot.flatness') * at('spot.uniformity'));
    expectClose(found.measuredDeviation, 0.3 * flatness, { relative: 0.02, source: 'F and U of ISO 13694' });
  });

  it('stretched by a tenth reads a tenth wider', () => {
    expectClose(numbersOf(line(1, false, 1.1)).measuredWidth, 1.1 * at('spot.width'), { absolute: 0.02e-6 });
  });

  it('overlays columns from side to side, each place with its opposite', () => {
    const overlay = valueIn('spot.measuredOverlay', {
      'spot.measuredProfile': line(1, true),
      ...plane,
    }) as Record<string, Float64Array>;
    const { x, measured, predicted: column, low, high } = overlay;
    expect(x).toEqual(x!.map((place) => 0 - place).reverse());
    x!.forEach((place, i) => {
      expectClose(column![i]!, unshapedPeak * valueAt(predicted, Math.abs(place)), {
        absolute: 1e-8 * unshapedPeak,
        source: 'roundProfileAt',
      });
      expect(low![i]! <= measured![i]! && measured![i]! <= high![i]!).toBe(true);
    });
  });
});

describe('what cannot be compared', () => {
  const problem = (id: string, design: Values) =>
    (outcomesOf(design)(id) as { problem: { message: string; parts: { input?: string } } }).problem;

  it.each([
    ['nothing', {}, /^No measured profile of the spot has been given yet/, 'spot.measuredProfile'],
    [
      'counts as fluence',
      { 'spot.measuredProfile': line(1, false), 'spot.measuredScaling': 'measured' },
      /gives no fluence with its unit/,
      'spot.measuredScaling',
    ],
    [
      'a plane far away',
      { 'spot.measuredProfile': line(1, false), ...plane, 'spot.measuredProfileZ': 0.05 },
      /^The z typed for the measured profile is too far from the focus/,
      'spot.measuredProfileZ',
    ],
  ])('%s', (_, design, says, input) => {
    const { message, parts } = problem('spot.measuredDeviation', design as Values);
    expect(message).toMatch(says);
    expect(parts.input).toBe(input);
  });
});

describe('the invented spots of the Lecture table', () => {
  const file = (id: string, name: string) =>
    measuredFiles[id]!.read(readFileSync(here(`data/measured/${name}`)), name);
  const lecture = { ...plane, 'spot.measuredPixelPitch': truth.spot.pixelPitch };

  it('the line: width within its noise, deviation no more than that', () => {
    const value = read({ ...file('spot.measuredProfile', 'lecture-table-profile.csv'), ...lecture });
    // Noise of 1.5 %, halved by two sides, moves half the peak by 2 % at most, and an edge of 7 µm by 0.2 µm.
    expectClose(value('spot.measuredWidth'), value('spot.predictedWidth'), { absolute: 0.5e-6 });
    expect(value('spot.measuredDeviation')).toBeLessThan(1.5 * truth.spot.lineNoise);
  });

  it('the picture: width to half a per cent', () => {
    const value = read({ ...file('spot.measuredProfile', 'lecture-table-spot.png'), ...lecture });
    expectClose(value('spot.measuredWidth'), value('spot.predictedWidth'), { relative: 0.005 });
    // The halo beyond the frame's middle counts as background for a part: up to a per cent of the peak.
    expect(value('spot.measuredDeviation')).toBeLessThan(0.01);
  });

  it('the caustic: radii as predicted, within their scatter', () => {
    const value = read(file('focus.measuredCaustic', 'lecture-table-focus.csv'));
    const places = 13;
    expectClose(value('focus.measuredCausticExcess'), 0, {
      absolute: (3 * truth.spot.causticScatter) / Math.sqrt(2 * places),
      source: 'data/measured/README.md',
    });
    expectClose(value('focus.measuredCausticDeviation'), truth.spot.causticScatter / Math.SQRT2, {
      relative: 0.5,
    });
  });
});
