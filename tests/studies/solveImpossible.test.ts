import { expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import type { Patch } from '../../lib/graph/state.ts';
import { solve } from '../../lib/studies/solve.ts';
import type { Blocked, Move, NamedPatch, Want } from '../../lib/studies/solveRequest.ts';

const value = (id: string, wanted: number, tolerance?: number): Want => ({
  id,
  kind: 'value',
  value: wanted,
  ...(tolerance === undefined ? {} : { tolerance }),
});
const atLeast = (id: string, wanted: number): Want => ({ id, kind: 'atLeast', value: wanted });
const atMost = (id: string, wanted: number): Want => ({ id, kind: 'atMost', value: wanted });
const magnification: Move = { id: 'expander.magnification', from: 0.5, to: 5 };
const step = (from: number, to: number): Move => ({ id: 'plate.stepDiameter', from, to });
const lenses: Move = { id: 'lens.focalLength', values: [0.1, 0.163, 0.254] };
const plates: readonly NamedPatch[] = [8e-3, 12e-3].map((d) => ({
  name: `${d * 1e3}`,
  patch: { 'plate.stepDiameter': d },
}));

interface Impossible {
  readonly why: string;
  readonly today?: Patch;
  readonly wants: readonly Want[];
  readonly moves: readonly Move[];
  readonly patches?: readonly NamedPatch[];
  readonly blocked: Partial<Blocked> | object;
}

const limit = (id: string, end: 'from' | 'to', at: number, want = 0) => ({
  reason: 'limits',
  want,
  limits: [{ id, end, value: at }],
});
const outsideStop = {
  reason: 'problem',
  input: 'plate.stepDiameter',
  problem: { at: 'plate.zones', kind: 'impossible' },
};

/** Wants that no design there can meet, each with its reason, worked out beforehand from what is beside it. */
const impossible: readonly Impossible[] = [
  {
    why: 'irradiance is never below 0; behind the stop it falls on as the beam grows',
    wants: [atMost('explain.axisIrradianceInFocus', -1)],
    moves: [magnification],
    blocked: limit('expander.magnification', 'to', 5),
  },
  {
    why: 'a dip is a part of the peak, never twice; behind the stop it deepens as the beam grows',
    wants: [value('spot.dip', 2)],
    moves: [magnification],
    blocked: limit('expander.magnification', 'to', 5),
  },
  {
    why: 'width grows with the focal length: 1 µm needs some 5 mm',
    wants: [atMost('spot.width', 1e-6)],
    moves: [{ id: 'lens.focalLength', from: 0.05, to: 0.2 }],
    blocked: limit('lens.focalLength', 'from', 0.05),
  },
  {
    why: 'with one plate R/w over a/w is R/a = 1.4, not 2/1.05',
    wants: [value('match.stepRatio', 1.05), value('match.stopRatio', 2)],
    moves: [magnification],
    blocked: { reason: 'contradiction', wants: [0, 1] },
  },
  {
    why: 'the lens does not enter the step ratio',
    wants: [value('match.stepRatio', 1.05)],
    moves: [lenses],
    blocked: { reason: 'unmoved', want: 0 },
  },
  {
    why: 'κ = 1 needs a step of 10 mm',
    wants: [value('match.stepRatio', 1)],
    moves: [step(12e-3, 13.9e-3)],
    blocked: limit('plate.stepDiameter', 'from', 12e-3),
  },
  {
    why: 'without a stop there is no stop ratio',
    today: { 'plate.stop': 'open' },
    wants: [value('match.stopRatio', 1.4)],
    moves: [magnification],
    blocked: { reason: 'problem', input: 'plate.stop', part: 1, problem: { at: 'match.stopRatio' } },
  },
  {
    why: 'every step lies outside the stop',
    wants: [value('spot.width', 30e-6)],
    moves: [step(15e-3, 20e-3)],
    blocked: { ...outsideStop, part: 1 },
  },
  {
    why: 'fluence is in proportion to the energy: 0.13 J/mm² at 50 µJ',
    wants: [atLeast('spot.peakFluence', 1e7)],
    moves: [{ id: 'laser.pulseEnergy', from: 1e-6, to: 50e-6 }],
    blocked: limit('laser.pulseEnergy', 'to', 50e-6),
  },
  {
    why: 'no stop lets more through than there is',
    wants: [value('plate.transmission', 1.1)],
    moves: [{ id: 'plate.apertureDiameter', from: 10.1e-3, to: 30e-3 }],
    blocked: limit('plate.apertureDiameter', 'to', 30e-3),
  },
  {
    why: 'the three lenses give 20, 32 and 50 µm',
    wants: [value('spot.width', 10e-6, 1e-6)],
    moves: [lenses],
    blocked: { reason: 'reach', want: 0 },
  },
  {
    why: 'the two plates have κ = 0.8 and 1.2',
    wants: [value('match.stepRatio', 1.05)],
    moves: [],
    patches: plates,
    blocked: { reason: 'gap', want: 0, below: 0.8, above: 1.2 },
  },
  {
    why: 'a stop of 1.4 step diameters, below √2, never lets the centre be dark, whatever the other wants',
    wants: [
      value('match.stepRatio', 1.05),
      value('explain.axisIrradianceInFocus', 0),
      value('spot.width', 20e-6),
    ],
    moves: [magnification, { id: 'lens.focalLength', from: 0.02, to: 0.5 }],
    blocked: { reason: 'limits', want: 1 },
  },
  {
    why: 'nothing is wider than 40 µm and narrower than 30 µm',
    wants: [atLeast('spot.width', 40e-6), atMost('spot.width', 30e-6)],
    moves: [{ id: 'lens.focalLength', from: 0.05, to: 0.5 }],
    blocked: { reason: 'contradiction', wants: [0, 1] },
  },
  {
    why: 'the index of fused silica grows towards short waves: 1.47 at 400 nm',
    wants: [atLeast('plate.refractiveIndex', 2)],
    moves: [{ id: 'laser.wavelength', from: 400e-9, to: 1100e-9 }],
    blocked: limit('laser.wavelength', 'from', 400e-9),
  },
  {
    why: '50 µJ at 1 MHz are 50 W',
    wants: [atLeast('laser.averagePower', 100)],
    moves: [
      { id: 'laser.pulseEnergy', from: 1e-6, to: 50e-6 },
      { id: 'laser.repetitionRate', from: 1e3, to: 1e6 },
    ],
    blocked: {
      reason: 'limits',
      limits: [
        { id: 'laser.pulseEnergy', end: 'to', value: 50e-6 },
        { id: 'laser.repetitionRate', end: 'to', value: 1e6 },
      ],
    },
  },
  {
    why: 'the dark ratio grows with the stop to √ln 2 = 0.83',
    wants: [value('match.darkRatio', 1.5)],
    moves: [{ id: 'plate.apertureDiameter', from: 10.1e-3, to: 40e-3 }],
    blocked: limit('plate.apertureDiameter', 'to', 40e-3),
  },
  {
    why: 'the load on the plate falls with the area of the beam: 0.15 % at twice',
    wants: [atMost('plate.damageShare', 1e-6)],
    moves: [{ id: 'expander.magnification', from: 0.5, to: 2 }],
    blocked: limit('expander.magnification', 'to', 2),
  },
  {
    why: 'the axis brightens with the step until it meets the stop, where no design goes on',
    wants: [value('explain.axisIrradianceInFocus', 5)],
    moves: [step(9e-3, 20e-3)],
    blocked: outsideStop,
  },
  {
    why: 'curvature over the beam turns round',
    wants: [atLeast('explain.axisCurvatureInFocus', 1)],
    moves: [magnification],
    blocked: { reason: 'reach', want: 0 },
  },
  {
    why: 'a burst has whole pulses',
    wants: [value('laser.burstPulses', 2.5)],
    moves: [{ id: 'laser.pulsesPerBurst', from: 1, to: 10 }],
    blocked: { reason: 'gap', want: 0, below: 2, above: 3 },
  },
  {
    why: 'of three wants the first and the last exclude each other',
    wants: [
      value('match.stepRatio', 1.05),
      atLeast('laser.averagePower', 1),
      value('plate.beamDiameter', 11e-3),
    ],
    moves: [magnification, { id: 'laser.pulseEnergy', from: 1e-6, to: 50e-6 }],
    blocked: { reason: 'contradiction', wants: [0, 2] },
  },
];

it.each(impossible)('$why', ({ today = {}, wants, moves, patches = [], blocked }) => {
  const result = solve(designGraph, { ...designGraph.initial, ...today }, { wants, moves, patches });
  expect(result.met).toBe(false);
  expect(result.others).toEqual([]);
  expect(result.complete).toBe(true);
  expect(result.blocked).toMatchObject(blocked);
  expect(result.missed.length > 0).toBe(result.patch !== undefined);
  for (const { index, wanted, reached, by } of result.missed) {
    expect(wanted).toBe(
      wants[index]!.kind === 'between' ? wanted : (wants[index] as { value: number }).value,
    );
    expect(by).toBe(reached - wanted);
  }
});

it('there are twenty of them at least', () => {
  expect(impossible.length).toBeGreaterThanOrEqual(20);
});

it('what further limits would meet is told', () => {
  const { blocked } = solve(designGraph, designGraph.initial, {
    wants: [value('match.stepRatio', 1)],
    moves: [step(12e-3, 13.9e-3)],
  });
  const beyond = blocked?.reason === 'limits' ? blocked.beyond : undefined;
  expect(beyond?.patch['plate.stepDiameter']).toBeCloseTo(10e-3, 12);
});
