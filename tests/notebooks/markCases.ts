import type { Case } from './sentenceCases.ts';

const energy = (pulseEnergy: number, more = {}) => ({ 'laser.pulseEnergy': pulseEnergy, ...more });
const uJ = 1e-6;
/** Step ratio √(ln 2) without a stop: the axis is dark in the focus (physics, closed form). */
const dark = { 'plate.stop': 'open', 'expander.magnification': 2 / Math.sqrt(Math.LN2) };

/** The lecture table in its focus: marks from 0.563 µJ on, a dip of 5.07 %; without the plate from 0.132 µJ on. */
export const markCases: readonly Case[] = [
  {
    says: 'markSaid',
    design: energy(0.3 * uJ),
    text: /^With the plate one pulse leaves no mark: nowhere is the fluence above 0\.144\sJ\/cm²\.$/,
    truth: (value) => value('spot.markArea') === 0,
  },
  {
    says: 'markSaid',
    design: energy(0.58 * uJ),
    text: /a mark 11\.33\sµm wide, .* It is a ring: its centre, 4\.143\sµm wide, stays unmarked, because the dip goes below/,
    truth: (value) => value('spot.markInnerDiameter') > 0,
  },
  {
    says: 'markSaid',
    design: energy(0.7 * uJ),
    text: /^With the plate one pulse leaves a mark 15\.39\sµm wide, 186\.1\sµm² in area\.$/,
    truth: (value) => value('spot.markInnerDiameter') === 0,
  },
  {
    says: 'markSaid',
    design: energy(0.7 * uJ, { 'threshold.pulses': 100, 'threshold.incubationExponent': 0.9 }),
    text: /^With the plate 100 pulses leave a mark/,
    truth: (value) => value('spot.markArea') > 0,
  },
  {
    says: 'markSaid',
    text: /42\.61\sµm wide.* A ring of it lies apart from the middle: side lobes/,
    truth: (value) => value('spot.markArea') < (Math.PI / 4) * value('spot.markDiameter') ** 2 * 0.9,
  },
  {
    says: 'markSaid',
    design: energy(400 * uJ),
    text: /\d+ rings of it lie apart from the middle/,
    truth: (value) => value('spot.markArea') < (Math.PI / 4) * value('spot.markDiameter') ** 2,
  },
  {
    says: 'markSaid',
    pins: { 'spot.mark': { area: 2e-9, outerDiameter: 60e-6, innerDiameter: 0, cut: true } },
    text: /^With the plate one pulse leaves a mark at least [\d.]+\sµm wide: it goes on further out than the light is computed\./,
    truth: () => true,
  },
  {
    says: 'unshapedMarkSaid',
    pins: { 'unshaped.spot.mark': { area: 2e-9, outerDiameter: 60e-6, innerDiameter: 0, cut: true } },
    text: /^With the plate taken out the mark is at least [\d.]+\sµm wide, and goes on further out than the light is computed\.$/,
    truth: () => true,
  },
  {
    says: 'unshapedMarkSaid',
    pins: { 'spot.mark': { area: 2e-9, outerDiameter: 60e-6, innerDiameter: 0, cut: true } },
    text: /^With the plate taken out the mark is [\d.]+\sµm wide\.$/,
    truth: () => true,
  },
  {
    says: 'unshapedMarkSaid',
    text: /^With the plate taken out it is 21\.61\sµm wide, 0\.51 times as wide\.$/,
    truth: (value) =>
      Math.abs(value('unshaped.spot.markDiameter') / value('spot.markDiameter') - 0.507) < 1e-3,
  },
  {
    says: 'unshapedMarkSaid',
    design: energy(0.3 * uJ),
    text: /^With the plate taken out the mark is [\d.]+\sµm wide\.$/,
    truth: (value) => value('spot.markArea') === 0 && value('unshaped.spot.markArea') > 0,
  },
  {
    says: 'unshapedMarkSaid',
    design: energy(0.1 * uJ),
    text: /^With the plate taken out nothing is marked in this plane\.$/,
    truth: (value) => value('unshaped.spot.markArea') === 0,
  },
  {
    says: 'unshapedMarkSaid',
    pins: { 'unshaped.spot.markInnerDiameter': 3e-6 },
    text: /21\.61\sµm wide, with an unmarked centre of 3\sµm, 0\.51 times as wide\.$/,
    truth: () => true,
  },
  {
    says: 'dipMarkSaid',
    text: /^The dip of 5\.07\s% stays unmarked while the peak is below 1\.05 times the threshold/,
    truth: (value) => Math.abs(1 / (1 - value('spot.dip')) - 1.0534) < 1e-3,
  },
  {
    says: 'dipMarkSaid',
    design: { 'plate.designPhase': 1e-6 },
    text: /^The spot is highest on its axis here/,
    truth: (value) => value('spot.dip') < 5e-4,
  },
  {
    says: 'dipMarkSaid',
    design: dark,
    text: /^The axis is dark here, so that the centre stays unmarked at any energy\.$/,
    truth: (value) => value('spot.dip') > 0.999,
  },
];
