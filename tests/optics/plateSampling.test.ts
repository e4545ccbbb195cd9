import { describe, expect, test } from 'vitest';
import { type PlateBeam, type SampledField, sampleShapedBeam } from '../../lib/optics/plateSampling.ts';
import { expectClose } from '../close.ts';

const beam: PlateBeam = { wavelength: 1030e-9, radiusX: 5e-3, radiusY: 5e-3 };

function integrate(field: SampledField, part: 0 | 1): number {
  let sum = 0;
  for (let i = part; i < field.data.length; i += 2) sum += field.data[i]!;
  return sum * field.pitch ** 2;
}

describe('beam behind a plate, averaged over pixels', () => {
  test.each([
    [5e-3, 64],
    [5.123e-3, 64],
    [2.5e-3, 32],
    [7e-3, 256],
  ])('the disc of radius %d m on %d pixels holds its integral', (radius, size) => {
    const field = sampleShapedBeam(beam, [{ outer: radius, phase: 0 }], { size, extent: 20e-3 });
    const expected = Math.PI * 25e-6 * (1 - Math.exp(-(radius ** 2) / 25e-6));
    // Where the circle is steep, beside the axes, the strips end in a square root: at most 4e-5 of a pixel,
    // at four places.
    expectClose(integrate(field, 0), expected, {
      absolute: 1.6e-4 * field.pitch ** 2,
      source: 'closed form',
    });
    expectClose(integrate(field, 1), 0, { absolute: 1e-20, source: 'no phase' });
  });

  test('steps and wavefront: 2π∫ t e^{−r²/w² + ikr²/2R} r dr', () => {
    const curvature = 1 / 40;
    const zones = [
      { outer: 4e-3, phase: 2 },
      { outer: 7e-3, phase: 0.5 },
    ];
    const k = (2 * Math.PI) / beam.wavelength;
    const shaped = { ...beam, curvatureX: curvature, curvatureY: curvature };
    const field = sampleShapedBeam(shaped, zones, { size: 256, extent: 20e-3 });
    // ∫_0^r = (π/g)(1 − e^{−g r²}), g = 1/w² − ik/2R.
    const gRe = 1 / 25e-6;
    const gIm = (-k * curvature) / 2;
    const disc = (r: number): [number, number] => {
      const size = Math.exp(-gRe * r * r);
      const re = 1 - size * Math.cos(gIm * r * r);
      const im = size * Math.sin(gIm * r * r);
      const scale = Math.PI / (gRe * gRe + gIm * gIm);
      return [scale * (re * gRe + im * gIm), scale * (im * gRe - re * gIm)];
    };
    const inner = disc(4e-3);
    const outer = disc(7e-3).map((value, i) => value - inner[i]!) as [number, number];
    const turn = (phase: number, [re, im]: [number, number]) => [
      Math.cos(phase) * re - Math.sin(phase) * im,
      Math.sin(phase) * re + Math.cos(phase) * im,
    ];
    const expected = turn(2, inner).map((value, i) => value + turn(0.5, outer)[i]!);
    expectClose(integrate(field, 0), expected[0]!, { absolute: 1e-6 * 25e-6, source: 'closed form' });
    expectClose(integrate(field, 1), expected[1]!, { absolute: 1e-6 * 25e-6, source: 'closed form' });
  });

  test('an open plate fills the grid; a stop larger than the grid is refused', () => {
    const open = [{ outer: Number.POSITIVE_INFINITY, phase: Math.PI }];
    const field = sampleShapedBeam(beam, open, { size: 64, extent: 60e-3 });
    expectClose(integrate(field, 0), -Math.PI * 25e-6, { relative: 1e-13, source: 'whole Gaussian' });
    expect(() => sampleShapedBeam(beam, [{ outer: 7e-3, phase: 0 }], { size: 64, extent: 10e-3 })).toThrow(
      /Widen the grid/,
    );
  });
});
