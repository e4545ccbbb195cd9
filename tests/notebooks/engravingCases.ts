import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const radians = (degrees: number) => (degrees * Math.PI) / 180;
/** A tenth of the energy and pulses 5 µm apart: layers of a micrometre and less. */
export const fine: Values = { 'laser.pulseEnergy': 2e-6, 'scan.speed': 0.25 };
/** Too little for any pulse. */
export const none: Values = { 'laser.pulseEnergy': 0.1e-6 };
const layers = (depth: number, first: number, mean: number): Values => ({
  'engraving.depth': depth,
  'engraving.depthPerLayer': { first, mean },
});
const turned = (roughness: readonly number[]): Values => ({
  'engraving.turns': {
    turn: Float64Array.from([0, 45, 60, 67, 90], radians),
    roughness: Float64Array.from(roughness),
    highestToLowest: Float64Array.from(roughness),
  },
});
const perLayer = (value: (id: string) => number) =>
  value('engraving.depthPerLayer') as unknown as { first: number; mean: number };
const roughnesses = (value: (id: string) => number) =>
  (value('engraving.turns') as unknown as { roughness: Float64Array }).roughness;
const floor = (depth: number, roughness: number, slope: number): Values => ({
  'engraving.depth': depth,
  'engraving.roughness': roughness,
  'engraving.highestToLowest': 4 * roughness,
  'engraving.contrast': (2 * roughness) / depth,
  'engraving.slope': slope,
});

/** Cases of the sentences about engraving a field. */
export const engravingCases: readonly Case[] = [
  {
    says: 'engravedDepthSaid',
    design: none,
    text: /^Nothing is engraved: no pulse reaches the threshold\.$/,
    truth: (value) =>
      value('spot.peakFluence') < value('threshold.fluence') && value('engraving.depth') === 0,
  },
  {
    says: 'engravedDepthSaid',
    design: { ...fine, 'engraving.layers': 1 },
    text: /^One layer takes the floor down by 0?\.?\d+(\.\d+)?\sµm on the mean\.$/,
    truth: (value) => Math.abs(value('engraving.depth') / perLayer(value).first - 1) < 1e-12,
  },
  {
    says: 'engravedDepthSaid',
    text: /^After 10 layers the floor lies 234\sµm deep on the mean\. The first removes 23\.2\sµm, the mean of all is 23\.4\sµm: all remove about as much\.$/,
    truth: (value) => Math.abs(value('engraving.depth') - 234.1e-6) < 0.1e-6,
  },
  {
    says: 'engravedDepthSaid',
    design: { ...fine, 'threshold.incubationExponent': 0.85 },
    text: /: later layers remove more\.$/,
    truth: (value) => perLayer(value).mean > perLayer(value).first,
  },
  {
    says: 'engravedDepthSaid',
    pins: layers(5e-6, 1e-6, 0.5e-6),
    text: /^After 10 layers .* The first removes 1\sµm, the mean of all is 0\.5\sµm: later layers remove less\.$/,
    truth: (value) => perLayer(value).mean < perLayer(value).first,
  },
  {
    says: 'floorPlaneSaid',
    design: none,
    text: /^$/,
    truth: (value) => value('engraving.depth') === 0,
  },
  {
    says: 'floorPlaneSaid',
    pins: { 'engraving.depth': 1e-6 },
    text: /^So little below the fresh surface the spot is still nearly what it was there\.$/,
    truth: (value) => value('engraving.depth') < 0.05 * value('focus.rayleighLength'),
  },
  {
    says: 'floorPlaneSaid',
    pins: { 'engraving.depth': 1e-4, 'engraving.depthPerLayer': { first: 1e-5, mean: 1e-5 } },
    text: /^A spot changes .* 1\.41 times as wide as in its focus\. The last layer leaves the floor 0\.\d+ such lengths below the fresh surface; each layer is worked out with the spot of the plane it begins in\.$/,
    truth: (value) => value('engraving.depth') > 0.05 * value('focus.rayleighLength'),
  },
  {
    says: 'floorPlaneSaid',
    text: /The last layer leaves the floor 1\.8 such lengths below the fresh surface; each layer is .* begins in\. The first takes 0\.\d+ Rayleigh lengths at once, .* nearer to this picture\.$/,
    truth: (value) => Math.abs(value('engraving.depth') / value('focus.rayleighLength') - 1.8) < 0.05,
  },
  {
    says: 'plainEngravingSaid',
    design: none,
    text: /^With the plate taken out, at the same peak fluence, nothing is engraved either\.$/,
    truth: (value) => value('engraving.depth') === 0 && value('unshaped.engraving.depth') === 0,
  },
  {
    says: 'plainEngravingSaid',
    text: /^With the plate taken out, at the same peak fluence and scanned alike, it comes to 74\.6\sµm, less deep\.$/,
    truth: (value) => value('unshaped.engraving.depth') < value('engraving.depth'),
  },
  {
    says: 'plainEngravingSaid',
    pins: { 'engraving.depth': 5e-6, 'unshaped.engraving.depth': 6e-6 },
    design: { 'ripples.unshapedRuns': 'energy' },
    text: /at the same pulse energy and scanned alike, it comes to 6\sµm, deeper\.$/,
    truth: (value) => value('unshaped.engraving.depth') > value('engraving.depth'),
  },
  {
    says: 'plainEngravingSaid',
    pins: { 'engraving.depth': 5e-6, 'unshaped.engraving.depth': 5.05e-6 },
    text: /it comes to 5\.05\sµm, as deep\.$/,
    truth: (value) => Math.abs(value('unshaped.engraving.depth') / value('engraving.depth') - 1) < 0.02,
  },
  {
    says: 'plainFloorSaid',
    pins: { 'engraving.roughness': 1e-7, 'unshaped.engraving.roughness': 2e-7 },
    text: /^With the plate taken out and scanned alike the roughness is 200\snm against 100\snm with the plate\.$/,
    truth: (value) => value('unshaped.engraving.roughness') > value('engraving.roughness'),
  },
  {
    says: 'floorSaid',
    pins: floor(10e-6, 50e-9, 0.1),
    text: /^Its roughness from overlap is 50\snm \(Sq, root mean square\), 0\.5\s% of the depth, and 200\snm lie between highest and lowest point, a contrast of 1\s%: an even floor, as far as overlap goes\.$/,
    truth: (value) => value('engraving.roughness') < 0.01 * value('engraving.depth'),
  },
  {
    says: 'floorSaid',
    pins: floor(10e-6, 2e-6, 1),
    text: /20\s% of the depth, .* a contrast of 40\s%: a rough floor\. Lines or pulses closer together,/,
    truth: (value) => value('engraving.roughness') > 0.1 * value('engraving.depth'),
  },
  {
    says: 'floorSaid',
    text: /1\.17\s% of the depth, .* a contrast of 1\.72\s%\.$/,
    truth: (value) => Math.abs(value('engraving.roughness') / value('engraving.depth') - 0.01175) < 1e-4,
  },
  {
    // Little roughness for so much depth, but steep all the same: not called even.
    says: 'floorSaid',
    pins: floor(100e-6, 0.5e-6, 2),
    text: /0\.5\s% of the depth, .* a contrast of 1\s%\.$/,
    truth: (value) => value('engraving.slope') > 0.3,
  },
  {
    says: 'floorSlopeSaid',
    pins: { 'engraving.slope': 0 },
    text: /^$/,
    truth: (value) => value('engraving.slope') === 0,
  },
  {
    says: 'floorSlopeSaid',
    pins: { 'engraving.slope': 0.2 },
    text: /^Slopes of the floor stay below 0\.2 \(height over width\), so that light falls onto them nearly as onto level ground: at most 1\.9\s% weaker\.$/,
    truth: () => Math.abs(1 - Math.cos(Math.atan(0.2)) - 0.0194) < 1e-4,
  },
  {
    says: 'floorSlopeSaid',
    pins: { 'engraving.slope': 1 },
    text: /^Slopes of the floor reach 1 \(height over width\)\. There the light falls aslant and is up to 29\s% weaker, which the model leaves out/,
    truth: () => Math.abs(1 - Math.SQRT1_2 - 0.29) < 0.005,
  },
  {
    says: 'turnsSaid',
    design: none,
    text: /^Nothing is engraved: no pulse reaches the threshold\.$/,
    truth: (value) => Math.max(...roughnesses(value)) === 0,
  },
  {
    says: 'turnsSaid',
    pins: turned([100e-9, 97e-9, 96e-9, 95e-9, 99e-9]),
    text: /^The turn from layer to layer hardly matters here/,
    truth: (value) => Math.min(...roughnesses(value)) > 0.9 * Math.max(...roughnesses(value)),
  },
  {
    says: 'turnsSaid',
    pins: turned([30e-9, 97e-9, 96e-9, 95e-9, 99e-9]),
    text: /^Of these the turn that is set, 0\s?°, leaves the least roughness\.$/,
    truth: (value) => roughnesses(value)[0] === Math.min(...roughnesses(value)),
  },
  {
    says: 'turnsSaid',
    text: /^Of these a turn of 67\s?° leaves the least roughness, 970\snm, against 2\.75\sµm with the 0\s?° that is set\.$/,
    truth: (value) => roughnesses(value)[3] === Math.min(...roughnesses(value)),
  },
];
