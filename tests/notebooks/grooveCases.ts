import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

/** One degree. */
export const degree = Math.PI / 180;
/** A groove that sentences are tried on. */
export const shape = {
  depth: 20e-6,
  centreDepth: 20e-6,
  meanDepth: 12e-6,
  topWidth: 30e-6,
  bottomWidth: 6e-6,
  wallAngle: 60 * degree,
  centreToMeanDepth: 1.7,
  besideDepth: 0,
};
const groove = {
  y: Float64Array.of(-1, 0, 1),
  depth: Float64Array.of(0, 20e-6, 0),
  deepest: Float64Array.of(0, 5e-6, 10e-6, 15e-6, 20e-6),
  area: Float64Array.of(0, 1e-10, 2e-10, 3e-10, 4e-10),
  lastPass: Float64Array.of(0, 5e-6, 0),
  stoppedPart: 0,
  shape,
  sections: [{ passes: 4, depth: Float64Array.of(0, 20e-6, 0) }],
  leftRange: 0,
};
type Groove = typeof groove;

const cut = (changes: Partial<Groove>, shapeChanges: Partial<typeof shape> = {}): Values => ({
  'groove.cut': { ...groove, ...changes, shape: { ...shape, ...shapeChanges } },
  'groove.lastPassDepth': Math.max(...(changes.lastPass ?? groove.lastPass)),
  'groove.besideDepth': shapeChanges.besideDepth ?? 0,
});

/** Kinds of the two planes. */
export const kinds = { 'groove.first.kind': 'flat-top', 'groove.second.kind': 'ring' };
/** Where the words themselves hold the numbers. */
export const yes = () => true;

/** Cases of the sentences about grooves. */
export const grooveCases: readonly Case[] = [
  {
    says: 'grooveSaid',
    pins: { 'groove.cut': groove },
    text: /^After 4 passes the groove is .* deep .* and a rounded floor: the middle is/,
    truth: (value) => value('groove.centreToMeanDepth') < 1.85,
  },
  {
    says: 'grooveSaid',
    design: { 'groove.passes': 1 },
    pins: cut({}, { centreToMeanDepth: 1.95 }),
    text: /^After one pass the groove is .* a pointed floor, as of a V: /,
    truth: (value) => value('groove.passes') === 1 && value('groove.centreToMeanDepth') > 1.85,
  },
  {
    says: 'grooveSaid',
    pins: cut({}, { bottomWidth: 20e-6 }),
    text: /a floor over more than half its width/,
    truth: (value) => value('groove.bottomWidth') > 0.5 * value('groove.topWidth'),
  },
  {
    says: 'grooveSaid',
    pins: cut({}, { centreDepth: 17e-6 }),
    text: /and a floor that rises in the middle: the middle is/,
    truth: (value) => 17e-6 < 0.97 * value('groove.depth'),
  },
  {
    says: 'stoppedSaid',
    pins: cut({ lastPass: Float64Array.of(0, 1e-8, 0) }),
    text: /^It has come to its end: /,
    truth: (value) => value('groove.lastPassDepth') < 0.01 * 5e-6,
  },
  {
    says: 'stoppedSaid',
    pins: cut({ stoppedPart: 0.25 }),
    text: /^Over 25\s% of its width the walls stand still/,
    truth: (value) => value('groove.stoppedPart') > 0.02,
  },
  {
    says: 'stoppedSaid',
    pins: cut({ lastPass: Float64Array.of(0, 2e-6, 0) }),
    text: /^The walls are not at their end, but slow it down: the last pass cut 2\sµm, the first 5\sµm\.$/,
    truth: (value) => value('groove.lastPassDepth') < 0.5 * 5e-6,
  },
  {
    says: 'stoppedSaid',
    pins: cut({ lastPass: Float64Array.of(0, 6e-6, 0) }),
    text: /^It goes faster from pass to pass: the last cut 6\sµm, the first 5\sµm\.$/,
    truth: (value) => value('groove.lastPassDepth') > 1.05 * 5e-6,
  },
  {
    says: 'stoppedSaid',
    pins: cut({}),
    text: /^It still deepens at nearly the pace of the first pass: the last cut 5\sµm/,
    truth: (value) => Math.abs(value('groove.lastPassDepth') / 5e-6 - 1) < 0.05,
  },
  {
    says: 'stoppedSaid',
    design: { 'groove.passes': 1 },
    pins: cut({ deepest: Float64Array.of(0, 5e-6), area: Float64Array.of(0, 1e-10) }),
    text: /^One pass only: /,
    truth: (value) => value('groove.passes') === 1,
  },
  {
    says: 'besideSaid',
    pins: cut({}, { besideDepth: 2e-6 }),
    text: /^Rings around the spot cut up to 2\sµm beside it\. That is 10\s% of its depth/,
    truth: (value) => value('groove.besideDepth') > 0.02 * value('groove.depth'),
  },
  {
    says: 'besideSaid',
    pins: cut({}),
    text: /is below 2\s% of its depth\.$/,
    truth: (value) => value('groove.besideDepth') < 0.02 * value('groove.depth'),
  },
  {
    says: 'farAboveSaid',
    text: /^$/,
    truth: (value) => value('spot.peakFluence') < 50 * value('threshold.fluence'),
  },
  {
    says: 'farAboveSaid',
    design: { 'laser.pulseEnergy': 100e-6 },
    text: /^The peak fluence is 177 times the threshold of one pulse\./,
    truth: (value) => value('spot.peakFluence') > 50 * value('threshold.fluence'),
  },
  {
    says: 'countingSaid',
    text: /^The threshold stays at 0\.144\sJ\/cm²/,
    truth: (value) => value('threshold.incubationExponent') === 1,
  },
  {
    says: 'countingSaid',
    design: { 'threshold.incubationExponent': 0.85 },
    text: /and falls with every pulse .* at least 0\.0195\sJ\/cm² /,
    truth: (value) => value('threshold.incubationExponent') < 1,
  },
  {
    says: 'countingSaid',
    design: { 'threshold.incubationExponent': 1.1 },
    text: /and rises with every pulse/,
    truth: (value) => value('threshold.incubationExponent') > 1,
  },
  { says: 'plainEnergySaid', text: /^Without the plate the pulse energy is lowered until/, truth: yes },
  {
    says: 'plainEnergySaid',
    design: { 'ripples.unshapedRuns': 'energy' },
    text: /^Without the plate the pulse energy stays/,
    truth: (value) => value('unshaped.groove.focusFluence') > 2 * value('spot.peakFluence'),
  },
  {
    says: 'sideSaid',
    pins: {
      ...kinds,
      'groove.cut': groove,
      'unshaped.groove.cut': { ...groove, shape: { ...shape, topWidth: 20e-6 } },
    },
    text: /^The first plane holds a flat-top profile, the second a ring one\. Today’s groove, where the workpiece stands now, is 1\.5 times as wide as/,
    truth: (value) => value('groove.topWidth') > value('unshaped.groove.topWidth'),
  },
  {
    says: 'sideSaid',
    pins: {
      ...kinds,
      'groove.second.kind': 'flat-top',
      'groove.cut': groove,
      'unshaped.groove.cut': { ...groove, shape: { ...shape, topWidth: 60e-6 } },
    },
    text: /^Both chosen planes hold the same kind of profile \(flat-top\)\. The groove of the plain beam .* is 2 times as wide/,
    truth: (value) => value('groove.topWidth') < value('unshaped.groove.topWidth'),
  },
  {
    says: 'sideSaid',
    pins: { ...kinds, 'groove.cut': groove, 'unshaped.groove.cut': groove },
    text: /Today’s groove, where the workpiece stands now, is about as wide as .*; at equal mean depth too they are compared below\.$/,
    truth: (value) => value('groove.topWidth') === value('unshaped.groove.topWidth'),
  },
];
