import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { initialState } from '../../../lib/graph/state.ts';
import type { ProfileKind } from '../../../lib/optics/profileMetrics.ts';
import type { Sentence } from '../../../notebooks/prose.ts';
import { stretchesToSee } from '../../../notebooks/setUpSheet/seenTable.ts';
import * as sentences from '../../../notebooks/setUpSheet/setUpSentences.ts';
import { slotPieces } from '../../../notebooks/slotPieces.ts';
import { outcomesOf, read } from '../designOutcomes.ts';

type Stretch = Parameters<typeof stretchesToSee>[0][number];
const stretch = (zFrom: number, zTo: number, kind: ProfileKind) =>
  ({ zFrom, zTo, kind }) as unknown as Stretch;
const family = [
  stretch(-3, -1, 'peaked'),
  stretch(-1, 1, 'ring'),
  stretch(1, 3, 'flat-top'),
  stretch(3, 5, 'shallow ring'),
];

const said = (name: string, pins: Readonly<Record<string, unknown>> = {}, design = {}) => {
  const outcomeOf = outcomesOf(design, pins);
  const sentence = (sentences as unknown as Record<string, Sentence>)[name]!;
  return slotPieces(sentence, ({ id }) => outcomeOf(id))
    .map(({ text }) => text)
    .join('');
};
const at = (z: number, stretches: readonly Stretch[] = family) => ({
  'workpiece.z': z,
  'focus.family': stretches,
});

/** Planes of even fluence around the middle of the family. */
const even = (from: number, to: number) => ({
  ...at(0),
  'spot.depthEnds': { from, to },
});
const curved = { wavelength: 1e-6, beamRadius: 5e-3, focalLength: 0.1, plateDistance: 0.1 };

const reached = new Map<string, number>();
const rows: readonly (readonly [name: string, pins: Readonly<Record<string, unknown>>, text: RegExp])[] = [
  [
    'directionSaid',
    { 'workpiece.z': 0 },
    /away from the lens: moving .* makes z larger\. The surface stands at z = 0\smm, in the focal plane\.$/,
  ],
  ['directionSaid', { 'workpiece.z': 1e-3 }, /z = 1\smm, behind the focal plane, farther from the lens\.$/],
  ['directionSaid', { 'workpiece.z': -1e-3 }, /z = −1\smm, before the focal plane, nearer to the lens\.$/],
  [
    'centringSaid',
    { 'centring.rise': 0.031, 'centring.z': 3e-5, 'centring.offset': 2.5e-4 },
    /^At z = 0\.03\smm \(not in .* alike on all sides: 0\.25\smm beside its middle makes one side 3\.1\s% higher\.$/,
  ],
  [
    'centringSaid',
    { 'centring.rise': 0.004, 'centring.z': 3e-5, 'centring.offset': 2.5e-4 },
    /^The spot hardly tells: .* 0\.25\smm beside .* by more than 0\.4\s%\. Bring the step/,
  ],
  ['focusSeenSaid', at(0), /^in the focal plane it shows a bright ring about a dark middle \(ring\)\.$/],
  ['focusSeenSaid', at(0, [stretch(1, 2, 'ring')]), /^what it shows in the focal plane lies outside/],
  ['sidesSaid', at(0), /^Towards the lens follows a peaked spot, away from it a flat-top: the order tells/],
  [
    'sidesSaid',
    at(0, [stretch(-3, -1, 'ring'), stretch(-1, 1, 'peaked'), stretch(1, 3, 'ring')]),
    /^To both sides follows a ring: see both/,
  ],
  ['sidesSaid', at(-2), /^Away from the lens follows a ring; towards it the kind stays/],
  ['sidesSaid', at(4), /^Towards the lens follows a flat-top; away from it the kind stays/],
  ['sidesSaid', at(0, [stretch(-1, 1, 'ring')]), /^It stays of this kind throughout/],
  ['sidesSaid', at(9), /^This plane lies outside the range searched\.$/],
  [
    'fitToleranceSaid',
    {},
    /hence the two columns: 5\s% there changes the peak fluence by up to 8\.8\s% and the width by up to 2\.6\s%\.$/,
  ],
  ['firstMarkSaid', {}, /^Marks are expected from 0\.563\sµJ on; at 20\sµJ a mark is 42\.61\sµm wide\.$/],
  [
    'firstMarkSaid',
    { 'spot.peakFluence': 100 },
    /^At 20\sµJ the peak of 0\.01\sJ\/cm² does not exceed the threshold of 0\.144\sJ\/cm²: no mark is expected\.$/,
  ],
  [
    'depthMetSaid',
    {},
    /^The plane is good from −0\.00512\smm to 0\.00512\smm, where it stays a shallow ring; the fluence is even from −0\.04091\smm to 0\.04091\smm, but beyond on both sides the camera shows a flat-top\.$/,
  ],
  ['depthMetSaid', even(-0.5, 0.5), /^The plane is good from −500\smm to 500\smm\.$/],
  [
    'depthMetSaid',
    even(-2, 2),
    /but nearer to the lens the camera .* a peaked spot, farther .* a flat-top\.$/,
  ],
  ['depthMetSaid', even(-2, 0.5), /but nearer to the lens the camera shows a peaked spot\.$/],
  ['depthMetSaid', even(-0.5, 2), /stays a ring; .* farther from the lens the camera shows a flat-top\.$/],
  ['depthMetSaid', { ...even(-0.5, 0.5), 'workpiece.z': 7 }, /mm to 500\smm\.$/],
  [
    'focusOutSaid',
    {},
    /^The smallest spot is z = 0: a round peak with a diameter of 9\.199\sµm at half its height \(M² = 1, stop left in\)\.$/,
  ],
  ['focusOutSaid', { 'plate.stop': 'open' }, /\(M² = 1, no stop\)\.$/],
  [
    'focusOutSaid',
    { 'unshaped.focus.width': 8e-6, 'focus.light': { ...curved, wavefrontCurvature: 1e-2 } },
    /^The smallest spot is a round peak .* not collimated, so this spot stands at z = 0\.1\smm: count z from there\.$/,
  ],
];

describe('sentences of the set-up sheet', () => {
  for (const [name, pins, text] of rows) {
    it(`${name}: ${text.source}`, () => {
      expect(said(name, pins)).toMatch(text);
      reached.set(name, (reached.get(name) ?? 0) + 1);
    });
  }

  it('a plane without a depth says so, whatever the rest', () => {
    expect(said('depthMetSaid', {}, { 'plate.stop': 'open' })).toBe(
      'In this plane the fluence is not even enough for a depth of focus.',
    );
  });

  it('the energy at which marks begin leaves its peak at the threshold', () => {
    const value = read();
    const first =
      (value('laser.usedPulseEnergy') * value('threshold.fluenceAtN')) / value('spot.peakFluence');
    const there = read({ 'laser.pulseEnergy': first });
    expect(there('spot.peakFluence') / there('threshold.fluenceAtN')).toBeCloseTo(1, 9);
    expect(first * 1e6).toBeCloseTo(0.563, 3);
  });

  it('every sentence is tried', () => {
    const names = Object.entries(sentences).flatMap(([name, one]) => ('slot' in one ? [name] : []));
    expect([...reached.keys()].sort()).toEqual(names.sort());
  });
});

describe('stretches to see', () => {
  it('that of the workpiece, two to either side, and that of the focus', () => {
    const many = Array.from({ length: 11 }, (_, i) => stretch(i - 5.5, i - 4.5, 'ring'));
    const starts = (z: number) => stretchesToSee(many, z).map(({ zFrom }) => zFrom);
    expect(starts(0)).toEqual([-2.5, -1.5, -0.5, 0.5, 1.5]);
    expect(starts(5)).toEqual([-0.5, 2.5, 3.5, 4.5]);
    expect(starts(99)).toEqual([-0.5, 2.5, 3.5, 4.5]);
    expect(stretchesToSee([], 0)).toEqual([]);
    expect(initialState(designGraph).inputs['workpiece.z']).toBe(0);
  });
});
