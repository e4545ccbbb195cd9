import { describe, expect, it } from 'vitest';
import { depthOfPlane, discOf } from '../../lib/optics/depthOfFocus.ts';
import { findFamily, numbersInPlane, sampleSearch } from '../../lib/optics/family.ts';
import { planeOfDefocus } from '../../lib/optics/light.ts';
import { findZeroCurvaturePlanes } from '../../lib/optics/onAxis.ts';
import { judgeProfile, type PlaneNumbers } from '../../lib/optics/planeNumbers.ts';
import type { PlaneGoal, PlaneWish } from '../../lib/optics/planeScores.ts';
import { radiusScale, roundProfileAt } from '../../lib/optics/roundSpot.ts';
import { findUsablePlanes } from '../../lib/optics/usablePlanes.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { familyDesigns, lightOf } from './familyDesigns.ts';

const wish = (goal: PlaneGoal, changes: Partial<PlaneWish> = {}): PlaneWish => ({
  goal,
  largestDip: 0.02,
  leastContrast: 0.1,
  tolerance: 0.05,
  ...changes,
});

function open(index: number) {
  const design = familyDesigns[index]!;
  const light = lightOf(design);
  const samples = sampleSearch(light, 7);
  const family = findFamily(light, samples);
  const zones = design.zones.map(([outer, phase]) => ({ outer, phase }));
  const flat = findZeroCurvaturePlanes(zones);
  const find = (asked: PlaneWish) => findUsablePlanes(light, samples, family, asked, flat);
  return { light, samples, family, find };
}

const [openPlate, stopped, blurred, , sixFlat] = [0, 1, 2, 3, 4].map(open);
const byDesign = [openPlate!, stopped!, blurred!, sixFlat!].map(
  (made, i) => [['open', 'stop 1.4', 'M² 1.2', 'stop 1.6'][i]!, made] as const,
);

describe.each(byDesign)('planes by what is asked: %s', (_, { light, samples, family, find }) => {
  it('every kind: one plane of each stretch, along z, and the profile there is of that kind', () => {
    const planes = find(wish('all'));
    expect(planes.map(({ kind }) => kind)).toEqual(family.map(({ kind }) => kind));
    planes.forEach(({ defocus, z, kind }, i) => {
      expect(defocus).toBeGreaterThanOrEqual(family[i]!.from);
      expect(defocus).toBeLessThanOrEqual(family[i]!.to);
      expectClose(z, planeOfDefocus(light, defocus), { relative: 1e-12 });
      expect(judgeProfile(roundProfileAt(light, z)).kind).toBe(kind);
    });
  });

  /** Each goal with what it wants most of, by a plain scan. */
  const wants: readonly [PlaneGoal, readonly string[], (plane: PlaneNumbers) => number, number][] = [
    ['flatEdge', ['flat-top'], ({ edgeWidth }) => -edgeWidth!, 0.02],
    ['flatArea', ['flat-top'], ({ areaRatio, width }) => areaRatio * width ** 2, 0.02],
    ['ring', ['ring', 'shallow ring'], ({ dip }) => dip, 1],
    ['ringWidth', ['ring', 'shallow ring'], ({ ringWidth }) => -ringWidth, 1],
    ['smallest', ['ring', 'shallow ring', 'flat-top', 'peaked'], ({ width }) => -width, 1],
  ];
  it.each(wants)(
    '%s: no plane of a scan does better, and the best comes first',
    (goal, kinds, value, most) => {
      const planes = find(wish(goal));
      const best = planes.map(value);
      expect(
        [...best].sort((a, b) => b - a).map((x, i) => Math.abs(x - best[i]!) <= 2e-5 * Math.abs(x)),
      ).toEqual(best.map(() => true));
      for (const { from, to, kind } of family.filter((stretch) => kinds.includes(stretch.kind))) {
        const count = cases(300, 60);
        const least = goal.startsWith('ring') ? 0.1 : 0;
        const scan = Array.from({ length: count }, (_, i) => from + ((to - from) * (i + 0.5)) / count)
          .map((defocus) => numbersInPlane(light, samples, defocus))
          .filter(({ dip }) => dip <= most && dip >= least);
        const own = planes.find(({ defocus }) => from <= defocus && defocus <= to);
        if (scan.length === 0) continue;
        const highest = Math.max(...scan.map(value));
        // Golden section to 1e-4 in ζ; a scan may stand nearer to an end by as much.
        expect(value(own!), kind).toBeGreaterThan(highest - 2e-3 * Math.abs(highest));
      }
    },
  );

  it('flat-tops by least dip have none where there is one without, then come by depth', () => {
    const planes = find(wish('flat'));
    expect(planes.length).toBe(family.filter(({ kind }) => kind === 'flat-top').length);
    for (const { dip } of planes) expect(dip).toBeLessThan(6e-4);
    planes.slice(1).forEach(({ depth }, i) => {
      expect(depth).toBeLessThanOrEqual(planes[i]!.depth + 1e-9);
    });
  });

  it('the depth shown is that of the plane by itself', () => {
    for (const { defocus, z, depthFrom, depthTo, depth } of find(wish('deepest'))) {
      const disc = discOf(roundProfileAt(light, z))! / radiusScale(light, z);
      const { from, to } = depthOfPlane(light, defocus, disc, 0.05);
      // Ends move with the disc, which samples give to 1e-7.
      expectClose(depthFrom, planeOfDefocus(light, from), { absolute: 1e-9 });
      expectClose(depthTo, planeOfDefocus(light, to), { absolute: 1e-9 });
      expect(depth).toBeGreaterThan(0);
      expectClose(depth, depthTo - depthFrom, { relative: 1e-12 });
    }
  });
});

describe('a plane in the focus', () => {
  const peaked = { ...lightOf(familyDesigns[1]!), beamPropagationRatio: 4 };

  it('lies at z = 0 exactly where both sides mirror each other', () => {
    const samples = sampleSearch(peaked, 7);
    const family = findFamily(peaked, samples);
    expect(family.map(({ kind }) => kind)).toEqual(['peaked']);
    const planes = findUsablePlanes(peaked, samples, family, wish('all'), []);
    expect(planes.map(({ z, defocus }) => [Math.abs(z), Math.abs(defocus)])).toEqual([[0, 0]]);
  });

  it('keeps its place where the sides differ and it is better there', () => {
    for (const { planes } of [sixFlat!, openPlate!].map(({ find }) => ({ planes: find(wish('all')) })))
      for (const { defocus } of planes) if (defocus !== 0) expect(Math.abs(defocus)).toBeGreaterThan(1e-3);
  });
});

describe('what is asked is kept to', () => {
  it('dips and contrasts stay within their limits', () => {
    for (const goal of ['flat', 'flatEdge', 'flatArea'] as const)
      for (const { dip, kind } of sixFlat!.find(wish(goal, { largestDip: 0.01 }))) {
        expect(kind).toBe('flat-top');
        expect(dip).toBeLessThanOrEqual(0.01);
      }
    for (const goal of ['ring', 'ringWidth'] as const)
      for (const { dip } of sixFlat!.find(wish(goal, { leastContrast: 0.5 })))
        expect(dip).toBeGreaterThanOrEqual(0.5);
    expect(sixFlat!.find(wish('ring', { leastContrast: 0.5 })).length).toBe(2);
    expect(openPlate!.find(wish('ring', { leastContrast: 0.99 }))).toEqual([]);
  });

  it('a tolerance too tight leaves no depth anywhere', () => {
    expect(openPlate!.find(wish('deepest', { tolerance: 0.001 }))).toEqual([]);
    for (const { depth, depthFrom, depthTo, z } of openPlate!.find(wish('flat', { tolerance: 0.001 }))) {
      expect(depth).toBe(0);
      expect([depthFrom, depthTo]).toEqual([z, z]);
    }
  });

  it('no curvature on the axis is told apart from a flat-top', () => {
    // physics: open, κ = 1: ±0.3631 and ±5.5667 lie in rings; R/w = 1.4: ±0.4231 in the flat-tops, ±5.1587 in rings.
    const marked = (made: typeof openPlate) =>
      made!
        .find(wish('all'))
        .filter(({ zeroCurvature }) => zeroCurvature)
        .map(({ kind }) => kind);
    expect(marked(openPlate)).toEqual(['ring', 'ring', 'ring']);
    expect(marked(stopped)).toEqual(['ring', 'flat-top', 'flat-top', 'ring']);
  });
});
