import type { PlannedCoupon } from '../../lib/design/coupon.ts';
import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

/** In the focus, at a threshold typed: 3.07 µJ are below it, 4.71 µJ are above. */
const start: Values = {
  'threshold.source': 'typed',
  'threshold.typedFluence': 10000,
  'coupon.planeCount': 1,
  'coupon.firstZ': 0,
  'coupon.repeats': 1,
  'coupon.lowEnergy': 2e-6,
  'coupon.highEnergy': 40e-6,
};
const planOf = (value: (id: string) => number) => value('coupon.plan') as unknown as PlannedCoupon;
const marked = (value: (id: string) => number) =>
  planOf(value).spots.filter(({ mark }) => mark.area > 0).length;

/** Cases of the sentences about a coupon. */
export const couponCases: readonly Case[] = [
  {
    says: 'couponSizeSaid',
    design: start,
    text: /^The coupon has 8 spots and wants a clean surface of [\d.]+.mm by [\d.]+.[mµ]m\.$/,
    truth: (value) => planOf(value).spots.length === 8,
  },
  {
    says: 'couponSizeSaid',
    design: { ...start, 'coupon.energyCount': 1 },
    text: /^The coupon has 1 spot and/,
    truth: (value) => planOf(value).spots.length === 1,
  },
  {
    says: 'couponRangeSaid',
    design: { ...start, 'coupon.highEnergy': 2.1e-6 },
    text: /none of them leaves a mark: raise/,
    truth: (value) => marked(value) === 0,
  },
  {
    says: 'couponRangeSaid',
    design: { ...start, 'coupon.energyCount': 4, 'coupon.highEnergy': 10e-6 },
    text: /only [123] of 4 energies leaves? a mark in one of the rows/,
    truth: (value) => marked(value) > 0 && marked(value) < 4,
  },
  {
    says: 'couponRangeSaid',
    design: { ...start, 'coupon.lastZ': 0.6e-3, 'coupon.planeCount': 2, 'coupon.highEnergy': 9e-6 },
    text: /^As predicted no energy leaves a mark in one/,
    truth: (value) => planOf(value).spots.every(({ z, mark }) => z === 0 || mark.area === 0),
  },
  {
    says: 'couponRangeSaid',
    design: { ...start, 'coupon.lowEnergy': 20e-6 },
    text: /every energy leaves a mark in at least one/,
    truth: (value) => marked(value) === 8,
  },
  {
    says: 'couponRangeSaid',
    design: start,
    text: /^As predicted [4-7] of 8 energies leave a mark in each row/,
    truth: (value) => marked(value) >= 4 && marked(value) < 8,
  },
  {
    says: 'couponRangeSaid',
    design: { ...start, 'coupon.lastZ': 0.1e-3, 'coupon.planeCount': 2 },
    text: /^As predicted [4-7] to [4-7] of 8/,
    truth: (value) => marked(value) >= 8 && marked(value) < 16,
  },
  { says: 'couponSettingSaid', design: start, text: /average power that a meter/, truth: () => true },
  {
    says: 'couponSettingSaid',
    design: { ...start, 'coupon.setting': 'attenuator' },
    text: /part that the attenuator lets through, 100.µJ with it open/,
    truth: (value) => value('coupon.fullEnergy') === 100e-6,
  },
];
