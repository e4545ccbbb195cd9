import { describe, expect, it } from 'vitest';
import { createRandom } from '../../lib/numerics/random.ts';
import { findFamily, numbersInPlane, sampleSearch, searchedEnds } from '../../lib/optics/family.ts';
import { profileFromSamples } from '../../lib/optics/familySamples.ts';
import { focusRadius, type Light, planeOfDefocus } from '../../lib/optics/light.ts';
import { judgeProfile } from '../../lib/optics/planeNumbers.ts';
import { clipNumbers, edgeOf } from '../../lib/optics/profileMetrics.ts';
import { peakOf } from '../../lib/optics/radialProfile.ts';
import { roundProfileAt, transmissionOf } from '../../lib/optics/roundSpot.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { type FamilyDesign, familyDesigns, lightOf } from './familyDesigns.ts';

const source = 'tests/reference/family.json';

describe.each(familyDesigns)('kinds through the focus: $name', (design) => {
  const light = lightOf(design);
  const samples = sampleSearch(light, 7);
  const found = findFamily(light, samples);

  it('kinds, in order', () => {
    expect(found.map(({ kind }) => kind)).toEqual(design.intervals.map(({ kind }) => kind));
  });

  it('ends within one grid step of the file, and no gap between', () => {
    const grid = design.M2 > 1 ? 0.05 : 0.02;
    design.intervals.forEach(({ from, to }, i) => {
      expectClose(found[i]!.from, from, { absolute: grid, source });
      expectClose(found[i]!.to, to, { absolute: grid, source });
      if (i > 0) expect(found[i]!.from).toBe(found[i - 1]!.to);
      expectClose(found[i]!.zFrom, planeOfDefocus(light, found[i]!.from), { relative: 1e-12 });
    });
  });

  it('dip, plateau ratio, peak and width at the planes of the file, to 1e-3', () => {
    for (const { at, kind, dip, ratio90to50, peak, fullWidthHalfMaximum } of design.intervals) {
      const numbers = numbersInPlane(light, samples, at);
      expect(numbers.kind).toBe(kind);
      expectClose(numbers.dip, dip, { absolute: 1e-3, source });
      expectClose(numbers.areaRatio, ratio90to50, { absolute: 1e-3, source });
      expectClose(numbers.relativePeak, peak, { relative: 1e-3, source });
      expectClose(numbers.width / focusRadius(light), fullWidthHalfMaximum, { relative: 1e-3, source });
    }
  });
});

describe('another route: one plane at a time, with a kernel of its own', () => {
  const random = createRandom(77);
  const plates: [string, Light][] = [
    ['open, κ = 1', lightOf(familyDesigns[0]!)],
    ['stop, plate off the focal plane', lightOf(familyDesigns[4]!, { plateDistance: 0.2 })],
    ['M² = 1.6, curved wavefront', lightOf({ ...familyDesigns[3]!, M2: 1.6 }, { wavefrontCurvature: 0.02 })],
    [
      'narrow stop',
      lightOf({
        zones: [
          [0.3, 2],
          [0.5, 0],
        ],
        M2: 1,
      }),
    ],
  ];
  it.each(plates)('%s: kinds and numbers in seeded planes', (_, light) => {
    const samples = sampleSearch(light, 7);
    const found = findFamily(light, samples);
    for (let i = 0; i < cases(60, 4); i++) {
      const defocus = random.between(-7, 7);
      const profile = roundProfileAt(light, planeOfDefocus(light, defocus));
      const { kind, dip, areaRatio } = judgeProfile(profile);
      const stretch = found.find(({ from, to }) => from <= defocus && defocus <= to)!;
      const nearEnd = Math.min(defocus - stretch.from, stretch.to - defocus) < 1e-4;
      if (!nearEnd) expect(stretch.kind).toBe(kind);
      const numbers = numbersInPlane(light, samples, defocus);
      const peak = peakOf(profile);
      const half = clipNumbers(profile, peak, 0.5);
      const total = (transmissionOf(light) * Math.PI * focusRadius(light) ** 2) / 2;
      // Samples hold 1e-7 of the unshaped peak; the dimmest planes have a hundredth of it.
      const near = { relative: 1e-4, source: 'roundProfileAt, 1e-9' };
      expectClose(numbers.dip, dip, { absolute: 1e-4 });
      expectClose(numbers.areaRatio, areaRatio, near);
      expectClose(numbers.relativePeak, peak.irradiance, near);
      expectClose(numbers.width, 2 * Math.sqrt(half.area / Math.PI), near);
      expectClose(numbers.energyInHalf, half.energy / total, near);
      expectClose(numbers.edgeWidth!, edgeOf(profile, peak)!.width, near);
    }
  });

  it('the profile itself, out to where it is sampled', () => {
    const light = lightOf(familyDesigns[0]!);
    const profile = profileFromSamples(sampleSearch(light, 7), 1.234);
    const scale = focusRadius(light);
    const exact = roundProfileAt(light, planeOfDefocus(light, 1.234));
    expectClose(peakOf(profile).irradiance, peakOf(exact).irradiance, { absolute: 1e-7 });
    expect(profile.nodes.at(-1)!).toBeGreaterThan(3 + 1.234);
    expect(exact.nodes.at(-1)! / scale).toBeGreaterThan(profile.nodes.at(-1)!);
  });
});

describe('where the search ends', () => {
  const plate: Pick<FamilyDesign, 'zones' | 'M2'> = { zones: [[6, 0]], M2: 1 };
  it('at the range asked for where the plate stands one focal length before the lens', () => {
    expect(searchedEnds(lightOf(plate), 7)).toEqual([-7, 7]);
  });

  it('nearer where the light runs parallel or the image of the plate comes first', () => {
    // zR = 0.1 m and B = f − 2z: the image of the plate lies 50 mm behind the focus.
    const light = lightOf(plate, { beamRadius: 0.181e-3, plateDistance: 0.3 });
    const [low, high] = searchedEnds(light, 7);
    for (const [defocus, spread] of [
      [low, 10],
      [high, 0.1],
    ] as const) {
      const z = planeOfDefocus(light, defocus);
      expectClose(1 + z / 0.1 - (0.3 * z) / 0.01, spread, { relative: 1e-9, source: 'B/f of Collins' });
    }
    for (const { z, kind } of findFamily(light, sampleSearch(light, 7))) {
      expect(kind).toBe('peaked');
      expect(Number.isFinite(z)).toBe(true);
    }
  });

  it('nowhere with light that comes to no focus, in words', () => {
    const light = lightOf(plate, { wavefrontCurvature: -20, plateDistance: 0.3, beamRadius: 5e-3 });
    expect(() => sampleSearch(light, 0.1)).toThrow(/comes to no focus behind the lens/);
  });
});
