import { describe, expect, it } from 'vitest';
import { valueAt } from '../../lib/numerics/panelledFunction.ts';
import { depthFromSamples, depthOfPlane, discOf, plateauDeviation } from '../../lib/optics/depthOfFocus.ts';
import { sampleSearch } from '../../lib/optics/family.ts';
import { type Light, planeOfDefocus, rayleighLength } from '../../lib/optics/light.ts';
import { radiusScale, roundProfileAt } from '../../lib/optics/roundSpot.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';
import { lightOf } from './familyDesigns.ts';

interface FileDepth {
  readonly case: string;
  readonly zeta0: number;
  readonly tolerance: number;
  readonly disc: number;
  readonly deviationAtZeta0: number;
  readonly zetaMin: number | null;
  readonly zetaMax: number | null;
}
const { cases: plates, depth: depths } = reference('profiles');
const source = 'tests/reference/profiles.json, ζ to 1e-4 over 241 radii';
const step = (ratio: number, stop: number) =>
  lightOf({
    zones: [
      [ratio, Math.PI],
      [stop, 0],
    ],
    M2: 1,
  });

function discAt(light: Light, defocus: number): number {
  const z = planeOfDefocus(light, defocus);
  return discOf(roundProfileAt(light, z))! / radiusScale(light, z);
}

describe('depths of profiles.json, both ways', () => {
  it.each(depths as readonly FileDepth[])('$case at ζ = $zeta0, tolerance $tolerance', (file) => {
    const { zones } = plates.find(({ name }: { name: string }) => name === file.case);
    const light = lightOf({ zones, M2: 1 });
    const disc = discAt(light, file.zeta0);
    expectClose(disc, file.disc, { relative: 1e-8, source });
    const alone = depthOfPlane(light, file.zeta0, disc, file.tolerance);
    const searched = depthFromSamples(light, sampleSearch(light, 7), file.zeta0, file.tolerance)!;
    for (const { deviation, from, to, cut } of [alone, searched]) {
      // Half the spacing of 121 radii off a bend of the plateau: 1e-5 of its height.
      expectClose(deviation, file.deviationAtZeta0, { absolute: 2e-5, source });
      expectClose(from, file.zetaMin ?? file.zeta0, { absolute: 1e-4, source });
      expectClose(to, file.zetaMax ?? file.zeta0, { absolute: 1e-4, source });
      expect(cut).toBe(false);
    }
  });
});

it.each(depths as readonly FileDepth[])('unevenness of the plateau: $case at ζ = $zeta0', (file) => {
  const { zones } = plates.find(({ name }: { name: string }) => name === file.case);
  const light = lightOf({ zones, M2: 1 });
  const profile = roundProfileAt(light, planeOfDefocus(light, file.zeta0));
  expectClose(plateauDeviation(profile)!, file.deviationAtZeta0, { absolute: 2e-5, source });
});

describe('published values', () => {
  it('κ = 1, R/w = 1.4, in the focus at 5 %: |ζ| < 0.312, 82 µm of the lecture table', () => {
    const light = step(1, 1.4);
    const { from, to } = depthOfPlane(light, 0, discAt(light, 0), 0.05);
    expectClose(to, 0.312, { absolute: 5e-4, source: 'three digits, computed by another route' });
    expectClose(from, -0.312, { absolute: 5e-4 });
    expectClose(rayleighLength(light), 131e-6, { absolute: 0.5e-6, source: 'λf²/(πw²)' });
    const depth = planeOfDefocus(light, to) - planeOfDefocus(light, from);
    expectClose(depth, 82e-6, { absolute: 0.5e-6 });
  });

  it('open, κ = 1.05, ζ = 0.35: 0.349–0.400 at 5 %, 7 µm; 0.322–0.425 at 10 %', () => {
    const light = step(1.05, 6);
    const disc = discAt(light, 0.35);
    const five = depthOfPlane(light, 0.35, disc, 0.05);
    const ten = depthOfPlane(light, 0.35, disc, 0.1);
    const near = { absolute: 5e-4, source: 'three digits, computed by another route' };
    [five.from, five.to, ten.from, ten.to].forEach((end, i) => {
      expectClose(end, [0.349, 0.4, 0.322, 0.425][i]!, near);
    });
    const depth = planeOfDefocus(light, five.to) - planeOfDefocus(light, five.from);
    expectClose(depth, 7e-6, { absolute: 0.5e-6 });
  });
});

describe('by brute force', () => {
  /** Largest departure over 401 radii of the disc in metres, each plane with a kernel of its own. */
  function deviationIn(light: Light, z: number, z0: number, tolerance: number): boolean {
    const own = roundProfileAt(light, z0);
    const disc = discOf(own)!;
    const other = roundProfileAt(light, z);
    let mean = 0;
    const radii = Array.from({ length: 401 }, (_, i) => (disc * (i + 0.5)) / 401);
    for (const r of radii) mean += (2 * r * valueAt(own, r)) / (disc * 401);
    return [0, ...radii, disc].every((r) => Math.abs(valueAt(other, r) / mean - 1) <= tolerance);
  }

  it.each([
    [
      'plate off the focal plane, beam of 1 mm',
      step(1, 1.4),
      { plateDistance: 0.6, beamRadius: 0.5e-3 },
      0.3,
    ],
    ['M² = 1.3', step(1, 1.5), { beamPropagationRatio: 1.3 }, -0.1],
    ['wavefront curved', step(1, 1.4), { wavefrontCurvature: 0.05, plateDistance: 0.3 }, 0.2],
  ] as const)('%s: inside up to the ends, outside beyond them', (_, plain, changes, defocus) => {
    const scale = (changes as Partial<Light>).beamRadius ? 0.1 : 1;
    const plate = plain.plate.kind === 'round' ? plain.plate.zones : [];
    const zones = plate.map(({ outer, phase }) => ({ outer: outer * scale, phase }));
    const light: Light = { ...plain, ...changes, plate: { kind: 'round', zones } };
    const tolerance = 0.06;
    const { from, to } = depthOfPlane(light, defocus, discAt(light, defocus), tolerance);
    expect(to - from).toBeGreaterThan(0.05);
    const z0 = planeOfDefocus(light, defocus);
    const within = (zeta: number) => deviationIn(light, planeOfDefocus(light, zeta), z0, tolerance);
    expect(within(from + 5e-4)).toBe(true);
    expect(within(to - 5e-4)).toBe(true);
    expect(within(from - 5e-4)).toBe(false);
    expect(within(to + 5e-4)).toBe(false);
  });

  it('says where the depth goes on beyond what is computed', () => {
    // A stop of a tenth of the beam makes a focus ninety Rayleigh lengths deep.
    const light = lightOf({ zones: [[0.1, 0]], M2: 1 });
    expect(depthOfPlane(light, 0, discAt(light, 0), 0.05)).toMatchObject({ from: -12, to: 12, cut: true });
  });
});
