import { describe, expect, it } from 'vitest';
import { createRandom } from '../../lib/numerics/random.ts';
import { fieldAt } from '../../lib/optics/focalField.ts';
import { spaced } from '../../lib/optics/focusMaps.ts';
import { throughFocusMap } from '../../lib/optics/throughFocusMap.ts';
import type { Zone } from '../../lib/optics/zones.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';

const source = 'fieldAt, 24 nodes a panel, 1e-12';

/** Largest deviation from the field at single points, at the corners and at `count` seeded places. */
function expectMap(zones: readonly Zone[], ratio: number, reach: number, depth: number, count: number): void {
  const radii = spaced(0, reach, 41);
  const planes = spaced(-depth, depth, 33);
  const map = throughFocusMap(zones, ratio, radii, planes);
  const random = createRandom(7);
  const seeded = Array.from({ length: count }, () => [
    Math.floor(random.between(0, 33)),
    Math.floor(random.between(0, 41)),
  ]);
  const inBeamRadii = zones.map(({ outer, phase }) => ({ outer: outer * ratio, phase }));
  for (const [row, column] of [[0, 0], [0, 40], [32, 0], [32, 40], [16, 0], [16, 40], ...seeded]) {
    const { re, im } = fieldAt(inBeamRadii, radii[column!]! / (2 * ratio), planes[row!]!);
    expectClose(map[row! * 41 + column!]!, re * re + im * im, { absolute: 1e-6, source });
  }
}

describe('map through the focus', () => {
  const phases = [Math.PI, 0.8 * Math.PI, 1.3];
  for (const phase of phases) {
    for (const ratio of [0.5, 1, 1.6]) {
      it(`phase ${phase.toFixed(2)}, step ratio ${ratio}, with and without a stop: to 1e-6`, () => {
        for (const last of [1.4, 1e3]) {
          const zones = [
            { outer: 1, phase },
            { outer: last, phase: 0 },
          ];
          expectMap(zones, ratio, 33.6, 7, cases(60, 12));
          expectMap(zones, ratio, 5, 0.2, cases(20, 6));
        }
      });
    }
  }

  it('holds for seeded plates of three zones', () => {
    const random = createRandom(31);
    for (let i = 0; i < cases(60, 12); i++) {
      const zones = [
        { outer: 1, phase: random.between(-7, 7) },
        { outer: random.between(1.05, 2), phase: random.between(-7, 7) },
        { outer: random.between(2.1, 6), phase: random.between(-7, 7) },
      ];
      expectMap(zones, random.between(0.3, 2), random.between(0, 80), random.between(0, 15), 8);
    }
  });

  it('holds between many planes, which are interpolated', () => {
    const random = createRandom(32);
    for (const ratio of [0.4, 1, 1.6]) {
      for (const last of [1.4, 2.5, 1e3]) {
        const zones = [
          { outer: 1, phase: random.between(0.5, 6) },
          { outer: last, phase: 0 },
        ];
        const radii = spaced(0, 30, 16);
        const planes = spaced(-7, 6, 401);
        const map = throughFocusMap(zones, ratio, radii, planes);
        const inBeamRadii = zones.map(({ outer, phase }) => ({ outer: outer * ratio, phase }));
        for (let i = 0; i < cases(600, 150); i++) {
          const [row, column] = [Math.floor(random.between(0, 401)), Math.floor(random.between(0, 16))];
          const { re, im } = fieldAt(inBeamRadii, radii[column]! / (2 * ratio), planes[row]!);
          expectClose(map[row * 16 + column]!, re * re + im * im, { absolute: 1e-6, source });
        }
      }
    }
  });

  it('takes any count of radii and planes, one included', () => {
    const zones = [
      { outer: 1, phase: 2 },
      { outer: 1.4, phase: 0 },
    ];
    const whole = throughFocusMap(zones, 1, spaced(0, 20, 5), spaced(-3, 3, 5));
    for (const plane of [0, 1, 4]) {
      const one = throughFocusMap(zones, 1, spaced(0, 20, 5), Float64Array.of(-3 + 1.5 * plane));
      expect(one).toHaveLength(5);
      for (const [i, value] of one.entries()) {
        expectClose(value, whole[plane * 5 + i]!, { absolute: 1e-6, source: 'itself' });
      }
    }
  });

  it('mirrors the planes only where the plate does', () => {
    const planes = spaced(-2, 2, 6);
    const map = (phase: number) =>
      throughFocusMap(
        [
          { outer: 1, phase },
          { outer: 1.4, phase: 0 },
        ],
        1,
        Float64Array.of(0, 3),
        planes,
      );
    expect(map(Math.PI)[0]).toBe(map(Math.PI)[10]);
    expect(Math.abs(map(2)[0]! - map(2)[10]!)).toBeGreaterThan(0.01);
  });
});
