import type { Case } from './sentenceCases.ts';

const uJ = 1e-6;
const open = { 'plate.stop': 'open' };
const window = (low: number, high: number) => ({ 'window.lowFluence': low, 'window.highFluence': high });

export const removalCases: readonly Case[] = [
  {
    says: 'craterSaid',
    text: /^One pulse with the plate removes [\d.]+\sµm³ and digs [\d.]+\snm deep where .*; without the plate it would be [\d.]+\snm\.$/,
    truth: (value) => value('removal.deepest') < value('unshaped.removal.deepest'),
  },
  {
    says: 'craterSaid',
    design: { 'laser.pulseEnergy': 0.3 * uJ },
    text: /^One pulse with the plate removes nothing here/,
    truth: (value) => value('removal.volume') === 0,
  },
  {
    says: 'craterSaid',
    design: { 'threshold.pulses': 50 },
    text: /^50 pulses on a place with the plate remove .* each and dig .* together .* if every pulse removes alike; without/,
    truth: (value) => value('removal.deepest') > 0,
  },
  {
    says: 'craterSaid',
    design: { 'workpiece.z': 0.55e-3, 'threshold.source': 'typed', 'threshold.typedFluence': 25e3 },
    text: /; without the plate there would be no crater here\.$/,
    truth: (value) => value('removal.deepest') > 0 && value('unshaped.removal.deepest') === 0,
  },
  {
    says: 'removalGainSaid',
    text: /times what a Gaussian does per energy: it loses\. Volume is no reason for this plate here\.$/,
    truth: (value) => value('removal.gain') < 0.95,
  },
  {
    says: 'removalGainSaid',
    design: open,
    text: /next to nothing is gained\. Volume is no reason for this plate\.$/,
    // 0.997 for κ = 1, no stop, in the focus (physics, computed).
    truth: (value) => Math.abs(value('removal.gain') - 0.997) < 1e-3,
  },
  {
    says: 'removalGainSaid',
    design: { ...open, 'expander.magnification': 2 / 1.4 },
    text: /per energy: a gain, and never more than the 1\.36/,
    // At most 1.066, near κ = 1.4 without a stop in the focus (physics, computed).
    truth: (value) => value('removal.gain') > 1.05 && value('removal.gain') < 1.067,
  },
  {
    says: 'windowGainSaid',
    text: /^Between 0\.2\sJ\/cm² and 0\.26\sJ\/cm², nothing above, .* With both peaks at the upper bound it is as much\.$/,
    truth: (value) =>
      value('window.gain') > 1.05 && Math.abs(value('window.gainAtTop') / value('window.gain') - 1) < 1e-3,
  },
  {
    says: 'windowGainSaid',
    pins: { 'window.gain': 1.95, 'window.gainAtTop': 1.9 },
    text: /With both peaks at the upper bound it is 1\.9 times\.$/,
    truth: (value) => value('window.gainAtTop') < value('window.gain'),
  },
  {
    says: 'windowGainSaid',
    design: { ...open, ...window(2000, 20000), 'workpiece.z': 47e-6 },
    text: /it would be [\d.]+ times: the peak is better chosen than taken to the top\.$/,
    truth: (value) => value('window.gainAtTop') < 0.95 * value('window.gain'),
  },
  {
    says: 'windowGainSaid',
    design: { 'losses.plateTransmission': 0.8, 'workpiece.z': 0.6e-3, ...window(2000, 6000) },
    text: /: here it loses\. Choose another plane or a narrower window\.$/,
    truth: (value) => value('window.gain') < 0.95,
  },
  {
    says: 'windowGainSaid',
    pins: { 'window.gain': 1.01 },
    text: /: next to nothing is gained here\.$/,
    truth: () => true,
  },
  {
    says: 'todayInWindowSaid',
    pins: { 'spot.peakFluence': 19570, 'window.lowFluence': 2000, 'window.highFluence': 2600 },
    text: /^Today’s peak with the plate, 1\.957\sJ\/cm², lies above the upper bound: a pulse/,
    truth: (value) => value('spot.peakFluence') > 2600,
  },
  {
    says: 'todayInWindowSaid',
    pins: { 'spot.peakFluence': 1000, 'window.lowFluence': 2000, 'window.highFluence': 2600 },
    text: /^Today’s peak with the plate, 0\.1\sJ\/cm², lies below the lower bound: /,
    truth: (value) => value('spot.peakFluence') < 2000,
  },
  {
    says: 'todayInWindowSaid',
    pins: { 'spot.peakFluence': 2300, 'window.lowFluence': 2000, 'window.highFluence': 2600 },
    text: /lies within these bounds\.$/,
    truth: (value) => value('spot.peakFluence') < 2600,
  },
];
