import { expect, it } from 'vitest';
import type { CuttingLaw } from '../../lib/process/cuttingLaw.ts';
import { sampleCuttingLight } from '../../lib/process/cuttingLight.ts';
import { gaussianSpot } from '../../lib/process/gaussianSpot.ts';
import { cutGroove } from '../../lib/process/groove.ts';
import { PassHistory } from '../../lib/process/passHistory.ts';

const gaussian = gaussianSpot(10e-6);
/** A light that is known down to 60 µm, so that deep grooves leave it. */
const light = sampleCuttingLight({
  spotAtDepth: (depth) => (depth < 60e-6 ? gaussian : undefined),
  planeStep: 1e-6,
  level: 0.01,
  depth: 1e-6,
  direction: 0,
  mirrored: true,
  steps: { across: 48, along: 32 },
});

function trainOf(exponent: number, depth: number) {
  const law: CuttingLaw = { depth, incubation: { first: 2000, exponent, floor: 400 } };
  return { unit: 20e3, pulseSpacing: 0.5e-6, pulsesPerBurst: 1, law };
}

it.each([
  ['one threshold', trainOf(1, 20e-9)],
  ['incubation', trainOf(0.85, 20e-9)],
  ['a groove deeper than the light is known', trainOf(0.85, 200e-9)],
])('whatever was cut before, a groove is the same to the last bit: %s', (_words, train) => {
  const history = new PassHistory(light, train);
  // Above 500 passes several go together, and the sections asked for lie between.
  for (const passes of [60, 3, 0.5, 60, 61.25, 1200, 117, 1200, 1]) {
    const cut = { ...train, passes, keep: [2, 50, 777].filter((pass) => pass <= passes) };
    const again = cutGroove(light, cut, undefined, history);
    expect(again).toEqual(cutGroove(light, cut));
    expect([...again.kept.keys()]).toEqual(cut.keep);
  }
});

it('a groove is cut further, not over again', () => {
  let chords = 0;
  const counted = {
    ...light,
    plane: (index: number) => {
      chords++;
      return light.plane(index);
    },
  };
  const train = trainOf(1, 20e-9);
  const history = new PassHistory(counted, train);
  const cut = (passes: number) => {
    chords = 0;
    cutGroove(counted, { ...train, passes }, undefined, history);
    return chords;
  };
  const fifty = cut(50);
  // One pass reads four planes for each of the 49 places across.
  expect(cut(51)).toBe(4 * 49);
  expect(cut(40)).toBe(0);
  expect(fifty).toBe(50 * 4 * 49);
});
