import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import type { ProfileComparisons } from '../../lib/design/profileComparisons.ts';
import type { MeasuredProfile } from '../../lib/design/profileFile.ts';
import {
  addProfile,
  fileOf,
  lookAtProfile,
  planeOf,
  profilesIn,
  renameProfile,
  takeOutProfile,
} from '../../lib/design/profileList.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import { Problem } from '../../lib/problem.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, read } from '../notebooks/designOutcomes.ts';
import { planes, predictedAsMeasured } from './profileFamily.ts';

type Inputs = Readonly<Record<string, unknown>>;
const start = initialState(designGraph).inputs;
const change = (inputs: Inputs, patch: Patch) =>
  applyPatch(designGraph, { inputs, revision: 0 }, patch).inputs;
const add = (inputs: Inputs, file: MeasuredProfile, z?: number) =>
  change(inputs, addProfile(inputs, file, z));
const family = (at: readonly number[]) =>
  planes.reduce<Inputs>((inputs, z, i) => add(inputs, predictedAsMeasured(z), at[i]), start);
const comparisons = (inputs: Inputs) =>
  (outcomesOf(inputs)('spot.profileComparisons') as { value: ProfileComparisons }).value;
const names = (inputs: Inputs) => profilesIn(inputs).map((item) => item && fileOf(item).name);

/** Rows 0.25 µm apart, linear between: an edge of 7 µm is misplaced by h²c/(8s) < 0.01 µm on either side. */
const widthError = { absolute: 0.01e-6, source: 'roundProfileAt' };

describe('predictions given as measured, each in its own plane', () => {
  const inputs = family(planes);
  const { compared, refused } = comparisons(inputs);

  it('agree with the prediction there, whatever the plane of the workpiece', () => {
    expect(refused).toEqual([]);
    expect(compared.map(({ z }) => z)).toEqual([planes[2], planes[1], planes[0]]);
    for (const one of compared) {
      const at = read({ 'workpiece.z': one.z });
      expectClose(one.width, at('spot.width'), widthError);
      expectClose(one.predictedWidth, at('spot.width'), { relative: 1e-9, source: 'spot.width' });
      expectClose(one.predictedDip, at('spot.dip'), { absolute: 1e-9, source: 'spot.dip' });
      expectClose(one.predictedPeak, at('spot.peakFluence'), { relative: 1e-9, source: 'spot.peakFluence' });
      // The samples are the prediction itself; the energy of linear pieces is the same for both.
      expect(one.deviation).toBeLessThan(1e-6);
    }
  });

  it('are counted as the one that is looked at closely', () => {
    const value = read(inputs);
    expectClose(compared[0]!.deviation, value('spot.measuredDeviation'), { absolute: 1e-12 });
    expect(compared[0]!.width).toBe(value('spot.measuredWidth'));
    expect(compared[0]!.predictedWidth).toBe(value('spot.predictedWidth'));
  });

  it('a wrong plane shows, in that profile alone', () => {
    const wrong = comparisons(family([planes[0], -2e-4, planes[2]])).compared;
    expect(wrong[1]!.deviation).toBeGreaterThan(0.1);
    for (const i of [0, 2]) expect(wrong[i]!.deviation).toBeLessThan(1e-6);
  });

  it('keep their planes when the workpiece moves, and follow it where they are said to', () => {
    const moved = { ...add(inputs, predictedAsMeasured(1e-4)), 'workpiece.z': 1e-4 };
    expect(comparisons(moved).compared.map(({ z }) => z)).toEqual([0, planes[2], planes[1], planes[0]]);
    const follow = { ...moved, 'spot.measuredProfilePlane': 'workpiece' };
    expect(planeOf(profilesIn(follow)[0]!, follow)).toBe(1e-4);
    expect(comparisons(follow).compared[0]!.deviation).toBeLessThan(1e-6);
  });

  it('each has a scale and a pitch of its own', () => {
    const half = predictedAsMeasured(planes[1]);
    const scaled = { ...half, fluence: half.fluence.map((F) => F / 2) };
    const own = change(add(inputs, scaled, planes[1]), { 'spot.measuredScaling': 'measured' });
    const [first, ...others] = comparisons(own).compared;
    expectClose(first!.peak, first!.predictedPeak / 2, { relative: 1e-6 });
    for (const one of others) expectClose(one.peak, one.predictedPeak, { relative: 1e-6 });
  });
});

describe('what cannot be compared', () => {
  it('is said with its reason, and the others stay', () => {
    const far = family([planes[0], 0.05, planes[2]]);
    const { compared, refused } = comparisons(far);
    expect(compared.map(({ place }) => place)).toEqual([0, 2]);
    expect(refused).toMatchObject(
      [{ place: 1, why: /^The z typed for the measured profile is too far/ }].map((one) => ({
        ...one,
        why: expect.stringMatching(one.why),
      })),
    );
  });

  it('a list is refused as a whole, and nothing changes', () => {
    const [first, second] = profilesIn(family(planes));
    const put = (items: unknown) => () => change(start, { 'spot.otherProfiles': items });
    expect(put([second, { ...first, 'spot.measuredProfileZ': 7 }])).toThrow(
      /z of the measured profile of 7000/i,
    );
    expect(put([{ ...first, 'spot.measuredProfile': null }])).toThrow(/has no file/);
    expect(put('line.csv')).toThrow(Problem);
    expect(put(Array(12).fill(first))).toThrow(/12 are too many; up to 11 fit/);
  });

  it('nothing given is a problem that names the file', () => {
    expect(outcomesOf()('spot.profileComparisons')).toMatchObject({
      problem: { kind: 'absent', parts: { input: 'spot.measuredProfile' } },
    });
  });
});

describe('the list', () => {
  const inputs = family(planes);
  const [first, second, third] = names(inputs);

  it('brings another one to look at, with its plane and scale, and back', () => {
    const other = change(inputs, lookAtProfile(inputs, 2));
    expect(names(other)).toEqual([third, second, first]);
    expect(other['spot.measuredProfileZ']).toBe(planes[0]);
    expect(change(other, lookAtProfile(other, 2))).toEqual(inputs);
    expect(lookAtProfile(inputs, 5)).toEqual({});
  });

  it('loses the one taken out; the next takes the place of the first', () => {
    expect(names(change(inputs, takeOutProfile(inputs, 1)))).toEqual([first, third]);
    const without = change(inputs, takeOutProfile(inputs, 0));
    expect(names(without)).toEqual([second, third]);
    expect(without['spot.measuredProfileZ']).toBe(planes[1]);
    const none = [0, 0, 0].reduce<Inputs>((now) => change(now, takeOutProfile(now, 0)), inputs);
    expect(names(none)).toEqual([undefined]);
  });

  it('takes a name of one line, and refuses none and a long one', () => {
    const renamed = change(inputs, renameProfile(inputs, 2, ' before \n cleaning '));
    expect(names(renamed)).toEqual([first, second, 'before cleaning']);
    expect(names(change(inputs, renameProfile(inputs, 0, 'new')))).toEqual(['new', second, third]);
    expect(() => renameProfile(inputs, 0, '  ')).toThrow(/The name of the profile is empty/);
    expect(() => renameProfile(inputs, 0, 'x'.repeat(61))).toThrow(/has 61 signs; up to 60/);
  });

  it('goes on where the one looked at was taken out by its field', () => {
    const cleared = change(inputs, { 'spot.measuredProfile': null });
    expect(names(cleared)).toEqual([undefined, second, third]);
    expect(comparisons(cleared).compared.map(({ place }) => place)).toEqual([1, 2]);
    expect(names(change(cleared, lookAtProfile(cleared, 2)))).toEqual([third, second]);
  });
});
