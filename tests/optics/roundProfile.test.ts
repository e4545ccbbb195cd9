import { describe, expect, it } from 'vitest';
import { integrateOver, valueAt } from '../../lib/numerics/panelledFunction.ts';
import { energyOutside, energyThroughStop } from '../../lib/optics/farTail.ts';
import { focusRadius, planeOfDefocus } from '../../lib/optics/light.ts';
import { clipNumbers, edgeOf, edgeSteepness } from '../../lib/optics/profileMetrics.ts';
import { peakOf } from '../../lib/optics/radialProfile.ts';
import {
  planRoundProfile,
  prepareRoundProfile,
  type RoundFocus,
  roundProfile,
} from '../../lib/optics/roundProfile.ts';
import { roundProfileAt } from '../../lib/optics/roundSpot.ts';
import type { Zone } from '../../lib/optics/zones.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';
import { lightBehind } from './lightBehind.ts';

/** Zones in units of w as [outer, phase] pairs, as a focus in units of the first zone. */
function focusOf(pairs: [number, number][], defocus: number, beamPropagationRatio = 1): RoundFocus {
  const first = pairs[0]![0];
  const zones: Zone[] = pairs.map(([outer, phase]) => ({ outer: outer / first, phase }));
  return { zones, stepRatio: first, defocus, beamPropagationRatio };
}

describe('numbers of a profile', () => {
  const source = 'tests/reference/profiles.json, contours by root finding, 1e-9';
  for (const item of reference('profiles').cases) {
    for (const plane of item.planes) {
      it(`${item.name} at ζ = ${plane.zeta}: to 1e-6`, () => {
        const profile = roundProfile(focusOf(item.zones, plane.zeta));
        const peak = peakOf(profile);
        const near = { relative: 1e-6, source };
        expectClose(valueAt(profile, 0), plane.onAxis, near);
        expectClose(peak.irradiance, plane.peak, near);
        // A maximum is flat: a value good to 1e-10 fixes its radius only to 1e-5.
        expectClose(peak.radius, plane.rhoPeak, { absolute: 1e-4, source });
        for (const clip of plane.clips) {
          const numbers = clipNumbers(profile, peak, clip.eta);
          expectClose(numbers.area, clip.area, near);
          expectClose(numbers.mean, clip.mean, near);
          expectClose((numbers.energy * 2) / Math.PI, clip.fIncident, near);
          expectClose(numbers.energy / ((Math.PI / 2) * item.transmitted), clip.f, near);
          expectClose(numbers.flatness, clip.F, near);
          expectClose(numbers.uniformity, clip.U, near);
        }
        const edge = edgeOf(profile, peak)!;
        expectClose(edge.inner, plane.edge.r90, near);
        expectClose(edge.outer, plane.edge.r10, near);
        expectClose(edge.width, plane.edge.width, near);
        expectClose(edgeSteepness(profile, peak), plane.s, near);
      });
    }
  }
});

describe('M² by the Schell-model convolution', () => {
  const source = 'tests/reference/schell.json, sum over Laguerre–Gauss modes, 1e-11';
  for (const item of reference('schell').cases) {
    it(`${item.name}, M² = ${item.M2}, ζ = ${item.zeta}: to 1e-5 of the unshaped peak`, () => {
      const profile = roundProfile(focusOf(item.zones, item.zeta, item.M2));
      item.rho.forEach((rho: number, i: number) => {
        expectClose(valueAt(profile, rho), item.irradiance[i], { absolute: 1e-5, source });
        expectClose(valueAt(profile, rho), item.irradiance[i], { absolute: 1e-9, relative: 1e-7, source });
      });
    });
  }
});

describe('energy', () => {
  const plates: [string, [number, number][]][] = [
    [
      'open, matched',
      [
        [1, Math.PI],
        [5.6, 0],
      ],
    ],
    [
      'stop 1.4',
      [
        [1, Math.PI],
        [1.4, 0],
      ],
    ],
    ['stop 1, no step', [[1, 0]]],
    [
      '0.9π, stop 1.6',
      [
        [1.05, 0.9 * Math.PI],
        [1.6, 0],
      ],
    ],
  ];
  for (const [name, pairs] of plates) {
    for (const defocus of [0, 0.4, -1, 3, -5]) {
      it(`${name}, ζ = ${defocus}: radii to 30 and the tail hold what the stop lets through`, () => {
        const focus = focusOf(pairs, defocus);
        const profile = roundProfile(focus, prepareRoundProfile(focus, planRoundProfile(focus, 30)));
        const inside = integrateOver(profile, 0, 30, (h, r) => 4 * h * r);
        const zones = pairs.map(([outer, phase]) => ({ outer, phase }));
        const total = inside + energyOutside(zones, 30, defocus);
        // The tail formula is asymptotic: 2e-3 for |ζ| ≤ 1, 2e-2 for |ζ| ≤ 5.
        expectClose(total, energyThroughStop(pairs.at(-1)![0]), {
          absolute: Math.abs(defocus) <= 1 ? 2e-3 : 2e-2,
        });
      });
    }
  }

  it('15.9 % of the energy lies outside 2 w0 in the focus of the open, matched plate', () => {
    const profile = roundProfile(focusOf(plates[0]![1], 0));
    const inside = integrateOver(profile, 0, 2, (h, r) => 4 * h * r);
    expectClose(1 - inside, 0.16, { absolute: 0.005, source: 'two digits, computed by another route' });
  });
});

describe('plates at the edge of what can be', () => {
  it('one zone without end is the Gaussian beam', () => {
    const light = lightBehind([{ outer: Number.POSITIVE_INFINITY, phase: 1 }]);
    const w0 = focusRadius(light);
    for (const defocus of [0, 0.7, -5]) {
      const width = 1 + defocus ** 2;
      const profile = roundProfileAt(light, planeOfDefocus(light, defocus));
      for (const r of [0, 0.5, 1.3, 3]) {
        const expected = Math.exp((-2 * r * r) / width) / width;
        expectClose(valueAt(profile, r * w0), expected, { absolute: 1e-9, source: 'closed form' });
      }
    }
  });

  for (const zones of [
    [],
    [{ outer: 0, phase: 0 }],
    [{ outer: Number.NaN, phase: 0 }],
    [
      { outer: 1, phase: 1 },
      { outer: 0.8, phase: 0 },
    ],
  ]) {
    it(`zones ending at ${zones.map(({ outer }) => outer).join(', ') || 'none'} are a problem in words`, () => {
      expect(() => roundProfileAt(lightBehind(zones), 0)).toThrowError(/zones.*above 0.*ascending.*\.$/);
    });
  }
});
