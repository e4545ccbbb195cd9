import { expect, it } from 'vitest';
import {
  besideFocusSaid,
  crossingSaid,
  deviationSaid,
  missedSaid,
  waveIndexSaid,
} from '../../../notebooks/lessons/toldNumbers.ts';
import type { Sentence } from '../../../notebooks/prose.ts';
import { slotPieces } from '../../../notebooks/slotPieces.ts';
import { outcomesOf } from '../designOutcomes.ts';

const said = (sentence: Sentence, design: Record<string, unknown> = {}) => {
  const outcomeOf = outcomesOf(design);
  return slotPieces(sentence, ({ id }) => outcomeOf(id))
    .map(({ text }) => text)
    .join('');
};

it('the threshold energy of four marks of a Gaussian of 20 µm', () => {
  const rows = [3, 6, 12, 24].map((energy, i) => ({
    row: i + 2,
    energy: energy * 1e-6,
    // D² = 800 µm² ln(E/1.5 µJ)
    area: (Math.PI / 4) * 800e-12 * Math.log(energy / 1.5),
    pulses: 1,
  }));
  const table = { name: 'four', rows, bad: [], unmeasured: [], ignored: [] };
  expect(said(crossingSaid, { 'threshold.spotTable': table })).toBe('1.5\u202fµJ');
});

it('before or behind the focus', () => {
  expect(said(besideFocusSaid, { 'workpiece.z': -47e-6 })).toBe('47\u202fµm before');
  expect(said(besideFocusSaid, { 'workpiece.z': 47e-6 })).toBe('47\u202fµm behind');
});

it('the index of the wave on stainless steel in air, and how far the beam is off', () => {
  // 1030 nm/1026.2 nm
  expect(said(waveIndexSaid)).toBe('1.004');
  expect(said(missedSaid)).toBe('250\u202fµm');
});

it('σ is half of the 1/e² radius', () => {
  // λf/(πw) = 1.03 µm · 100 mm/(π · 5 mm) = 6.557 µm
  expect(said(deviationSaid)).toBe('3.28\u202fµm');
});
