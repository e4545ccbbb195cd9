import { describe, expect, it } from 'vitest';
import { drawBeam, type SyntheticBeam } from '../../data/measured/drawBeam.ts';
import { type FoldedProfile, foldTable } from '../../lib/measured/foldedProfile.ts';
import type { ProfileTable } from '../../lib/measured/profileTable.ts';
import {
  highestSample,
  rmsDifference,
  sampledAreaAbove,
  sampledDip,
  sampledEnergy,
} from '../../lib/measured/sampledProfile.ts';
import { measureSpotPicture } from '../../lib/measured/spotPicture.ts';
import { expectClose } from '../close.ts';

/** 1/e² radius of the Gaussian that is measured, in metres, and the distance of the samples on it. */
const w = 10e-6;
const step = w / 10;
const gaussian = (r: number) => Math.exp((-2 * r * r) / (w * w));
/** Diameter of the disc with the Gaussian's area above half its peak: w √(2 ln 2). */
const trueWidth = w * Math.sqrt(2 * Math.LN2);
/** h²c/(8s) of both edges, for the Gaussian's slope 1.177/w at half the peak and its greatest curvature, 1.785/w². */
const widthError = (2 * step ** 2 * 1.785) / (8 * 1.177 * w);

const widthOf = (profile: FoldedProfile) =>
  2 * Math.sqrt(sampledAreaAbove(profile, highestSample(profile) / 2) / Math.PI);

function lineTable(value: (x: number) => number, from = -40, to = 40): ProfileTable {
  const position = Array.from({ length: to - from + 1 }, (_, i) => (from + i) * step);
  return { axis: 'line', position, value: position.map(value), absolute: false };
}

describe('a line across a Gaussian spot', () => {
  const middle = 2.3e-6;
  const folded = foldTable(lineTable((x) => 700 * gaussian(x - middle)));

  it('has its width, wherever the middle lies', () => {
    expectClose(widthOf(folded), trueWidth, { absolute: widthError, source: 'w √(2 ln 2)' });
  });

  it('is folded about its middle', () => {
    const [section] = folded.sections;
    const top = section!.value.indexOf(highestSample(section!));
    expect(Math.abs(section!.position[top]!)).toBeLessThan(step);
    // The Gaussian's fourth derivative is at most 48/w⁴.
    const most = (700 * 48 * 3 * step ** 4) / (128 * w ** 4);
    folded.radius.forEach((r, i) => {
      expectClose(folded.value[i]!, 700 * gaussian(r), { absolute: most, source: '3h⁴/128·f⁗' });
      expect(folded.spread[i]).toBeLessThan(most);
    });
  });

  it('has its energy', () => {
    const inside = 700 * ((Math.PI * w * w) / 2) * (1 - gaussian(folded.radius.at(-1)!));
    // Linear pieces lie h²/12·f″ above on average: over the plane π h²/6 of the value on the axis.
    const excess = (700 * Math.PI * step ** 2) / 6;
    expectClose(sampledEnergy(folded), inside + excess, { relative: 3e-4, source: 'π w²/2, fourth order' });
  });

  it('has no dip, a ring has its own', () => {
    expect(sampledDip(folded)).toBeLessThan(1e-3);
    const ring = (r: number) => gaussian(r) * (1 + 6 * (r / w) ** 2);
    const peak = Math.max(...Array.from({ length: 4001 }, (_, i) => ring((i * w) / 2000)));
    const found = sampledDip(foldTable(lineTable(ring)));
    // A sample lies within half a step of the crest: h²/8 of its curvature, about 5/w² here.
    expectClose(found, 1 - 1 / peak, { absolute: (step ** 2 * 5) / (8 * w * w) });
  });

  it('says how far the sides differ', () => {
    const top = 0.4 * w;
    const uneven = foldTable(
      lineTable((x) => gaussian(x) * (1 + (Math.abs(x) < top ? 0.1 * Math.sign(x) : 0))),
    );
    const at = Math.round(top / 2 / step);
    expectClose(uneven.spread[at]!, 0.1 * gaussian(top / 2), { relative: 0.01 });
    expect(uneven.spread[Math.round(w / step)]).toBeLessThan(1e-3);
  });

  it.each([
    ['one side only', lineTable((x) => gaussian(x), 0, 40)],
    ['no fall at all', lineTable(() => 1)],
  ])('is refused with %s', (_, table) => {
    expect(() => foldTable(table)).toThrow(/does not fall to half its peak on both sides/);
  });
});

describe('radii from the axis outward', () => {
  const radii = (from: number, value: (r: number) => number): ProfileTable => {
    const position = Array.from({ length: 40 }, (_, i) => (from + i) * step);
    return { axis: 'radius', position, value: position.map(value), absolute: false };
  };

  it('have the width of the Gaussian, with or without a sample on the axis', () => {
    for (const from of [0, 0.5, 1]) {
      const folded = foldTable(radii(from, gaussian));
      expect(folded.radius[0]).toBe(0);
      // What the parabola leaves of 1 − 2x² + 2x⁴ through two radii: 2x₁²x₂², here with samples a tenth apart.
      const axisError = 2 * (from * (from + 1) * 0.01) ** 2;
      expectClose(folded.value[0]!, 1, { absolute: 1.2 * axisError + 1e-12 });
      // Half of it moves the level, over the slope 1.177/w.
      const width = widthError + (axisError * w) / 1.177;
      expectClose(widthOf(folded), trueWidth, { absolute: width, source: 'w √(2 ln 2)' });
    }
  });

  it('are refused where they begin away from the axis', () => {
    expect(() => foldTable(radii(4, gaussian))).toThrow(/^The radii begin 4 µm from the axis/);
  });
});

describe('a camera picture', () => {
  const pitch = 0.5e-6;
  const drawn: SyntheticBeam = {
    width: 170,
    height: 160,
    x: 83.4,
    y: 81.7,
    radiusX: w / pitch,
    radiusY: w / pitch,
    angle: 0,
    peak: 0.8,
    noise: 0.004,
    offset: 0.03,
    gradientX: 0.006,
    gradientY: -0.004,
    fullScale: 4095,
    seed: 17,
  };
  const counts = drawn.peak * drawn.fullScale;
  const noise = drawn.noise * drawn.fullScale;

  it('of a Gaussian: its profile, without background, within the noise of each ring', () => {
    const folded = measureSpotPicture(drawBeam(drawn), pitch);
    expect(folded.notes).toEqual([]);
    folded.radius.forEach((r, i) => {
      const pixels = Math.max(3, 2 * Math.PI * (i - 0.5));
      // Five standard errors of the ring's mean, p²/24·f″, and the background plane of noise 0.4 % to a tenth of it.
      const allowed =
        (5 * noise) / Math.sqrt(pixels) + (counts * 4 * pitch ** 2) / (24 * w * w) + 0.1 * noise;
      expectClose(folded.value[i]!, counts * gaussian(r), { absolute: i === 0 ? 2 * allowed : allowed });
    });
    // Noise of the highest ring, 0.4 % of 3 pixels, moves half the peak by 0.2 %, and with it the width by 0.15 %.
    expectClose(widthOf(folded), trueWidth, { relative: 0.005, source: 'w √(2 ln 2)' });
  });

  it('has two lines through the centroid', () => {
    const { sections } = measureSpotPicture(drawBeam(drawn), pitch);
    expect(sections.map(({ along, position }) => [along, position.length])).toEqual([
      ['x', 170],
      ['y', 160],
    ]);
    for (const { position, value } of sections) {
      position.forEach((x, i) => {
        // A centroid off by a twentieth of a pixel changes the steepest part by 0.3 % of the peak.
        expectClose(value[i]!, counts * gaussian(x), { absolute: 5 * noise + 0.006 * counts });
      });
    }
  });

  it('of an elliptical spot: the spread around the circle tells', () => {
    const round = measureSpotPicture(drawBeam(drawn), pitch);
    const long = measureSpotPicture(drawBeam({ ...drawn, radiusX: 1.3 * (w / pitch) }), pitch);
    const at = Math.round(w / 2 / pitch);
    expect(long.spread[at]).toBeGreaterThan(5 * round.spread[at]!);
  });

  it('says what tells against it', () => {
    const { notes } = measureSpotPicture(drawBeam({ ...drawn, peak: 1.3 }), pitch);
    expect(notes[0]).toMatch(/^\d+ pixels stand at the full scale/);
  });

  it('is refused without a spot, and with one at the edge of the frame', () => {
    expect(() => measureSpotPicture(drawBeam({ ...drawn, peak: 0 }), pitch)).toThrow(/shows no beam/);
    const edge = drawBeam({ ...drawn, x: 2, radiusX: 3, radiusY: 3 });
    expect(() => measureSpotPicture(edge, pitch)).toThrow(/pixels from the edge of "synthetic"/);
  });
});

describe('the difference of two profiles', () => {
  const radius = Float64Array.from({ length: 31 }, (_, i) => i * step);
  const one = radius.map(gaussian);

  it('is 0 for equal ones and the offset for shifted ones', () => {
    expect(rmsDifference(radius, one, one)).toBe(0);
    const shifted = one.map((value) => value + 0.03);
    expectClose(rmsDifference(radius, one, shifted), 0.03, { relative: 1e-12 });
  });

  it('weighs by area, where either is above half its peak', () => {
    // A disc of radius 10 against none beyond 5: rings 5.5 to 10.5 of 10.5 steps differ by 1.
    const disc = (end: number) => radius.map((_, i) => (i <= end ? 1 : 0));
    expectClose(rmsDifference(radius, disc(10), disc(5)), Math.sqrt(1 - (5.5 / 10.5) ** 2), {
      relative: 1e-12,
    });
  });
});
