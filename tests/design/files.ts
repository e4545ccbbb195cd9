import fc from 'fast-check';
import { drawBeam, type SyntheticBeam } from '../../data/measured/drawBeam.ts';
import { type MeasuredProfile, profileOfPicture } from '../../lib/design/profileFile.ts';
import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import type { NamedCaustic, NamedFocusCaustic } from '../../lib/measured/causticTable.ts';
import type { NamedRipples } from '../../lib/measured/rippleTable.ts';
import type { NamedSpots } from '../../lib/measured/spotTable.ts';
import { type DrawnMark, drawMark } from '../measured/drawMark.ts';
import { drawCaustic, isoPlaces } from '../measured/syntheticCaustic.ts';

const round: SyntheticBeam = {
  width: 90,
  height: 84,
  x: 44.3,
  y: 41.8,
  radiusX: 13,
  radiusY: 12.4,
  angle: 0.3,
  peak: 0.8,
  noise: 0.002,
  offset: 0.02,
  gradientX: 0.004,
  gradientY: -0.003,
  fullScale: 4095,
  seed: 71,
};

function named(name: string, changes: Partial<SyntheticBeam> = {}): CameraImage {
  const image = { ...drawBeam({ ...round, ...changes }), name };
  // A counterexample shows the name, not thousands of pixels.
  return Object.defineProperty(image, fc.toStringMethod, { value: () => `the ${name} image` });
}

/** A ring: no Gaussian fits it. */
const ring = (q: number) => Math.exp(-8 * (Math.sqrt(q) - 1) ** 2);

/** Small camera images: two that measure well, then one for each way in which an image can be poor. */
export const images: readonly CameraImage[] = [
  named('round'),
  named('elliptical', { radiusX: 16, radiusY: 11, seed: 72 }),
  named('clipped', { x: 6 }),
  named('saturated', { peak: 1.3 }),
  named('ring', { profile: ring, radiusX: 14, radiusY: 14 }),
  named('noisy', { peak: 0.1, noise: 0.01 }),
  named('dark', { peak: 0 }),
];

const plain = { waistPosition: 0.2, waistDiameter: 3e-3, wavelength: 1.03e-6, scatter: 0.005, seed: 73 };

/** Tables of caustics: two that measure well, then one for each way in which a table can be poor. */
export const tables: readonly NamedCaustic[] = [
  drawCaustic({ ...plain, ratio: 1.1, places: isoPlaces }),
  drawCaustic({ ...plain, ratio: 1.6, places: isoPlaces, waistDiameter: 0.2e-3 }),
  drawCaustic({ ...plain, ratio: 1, places: isoPlaces, scatter: 0.03, seed: 1 }),
  drawCaustic({ ...plain, ratio: 1.3, places: [-1, 0, 0.5, 1, 1.5, 2.5], scatter: 0.06 }),
  drawCaustic({ ...plain, ratio: 0.4, places: isoPlaces }),
  drawCaustic({ ...plain, ratio: 9, places: isoPlaces }),
  drawCaustic({ ...plain, ratio: 1.2, places: [0, 1, 2] }),
  { name: 'flat.csv', z: isoPlaces, diameter: isoPlaces.map(() => 1e-3) },
];

/** Log-uniform between two positive ends. */
const between = (low: number, high: number) =>
  fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);

const seed = fc.integer({ min: 1, max: 1e6 });

/** Caustics with a waist at a wavelength, their true M² between the ends. */
export function caustics(wavelength: number, ratios: readonly [number, number]): fc.Arbitrary<NamedCaustic> {
  const position = fc.double({ min: -2, max: 2, noNaN: true });
  const parts = fc.record({ waistDiameter: between(20e-6, 20e-3), ratio: between(...ratios), seed });
  const scatter = fc.constantFrom(0, 0.003, 0.01);
  return fc
    .tuple(parts, position, scatter)
    .map(([beam, waistPosition, scatter]) =>
      drawCaustic({ ...beam, waistPosition, scatter, wavelength, places: isoPlaces }),
    );
}

const poorlyPlaced = fc
  .tuple(fc.array(fc.double({ min: -4, max: 6, noNaN: true }), { maxLength: 14 }), between(1e-3, 0.3), seed)
  .map(([places, scatter, seed]) =>
    drawCaustic({
      waistDiameter: 0.3e-3,
      waistPosition: 0.1,
      ratio: 1.1,
      wavelength: 1.03e-6,
      places,
      scatter,
      seed,
    }),
  );

const absurd = fc
  .array(fc.tuple(fc.double({ noNaN: true, noDefaultInfinity: true }), between(1e-200, 1e200)), {
    maxLength: 12,
  })
  .map(
    (points): NamedCaustic => ({
      name: 'absurd.csv',
      z: points.map(([z]) => z),
      diameter: points.map(([, diameter]) => diameter),
    }),
  );

/** Tables of every quality: with M² below 1 and above what the model covers, badly placed points, and nonsense. */
export const allowedCaustics: fc.Arbitrary<NamedCaustic> = fc.oneof(
  { arbitrary: caustics(1.03e-6, [1, 1.3]), weight: 4 },
  { arbitrary: caustics(1.03e-6, [0.5, 8]), weight: 2 },
  { arbitrary: poorlyPlaced, weight: 1 },
  { arbitrary: absurd, weight: 1 },
);

const line = Array.from({ length: 61 }, (_, i) => (i - 30) * 0.8e-6);
/** A flat-topped spot, 18 µm wide, a little off the middle. */
const flat = (x: number) => Math.exp(-((Math.abs(x - 1e-6) / 9e-6) ** 6));

/** A table of the flat-topped spot, changed. */
function spotTable(name: string, changes: Partial<MeasuredProfile>): MeasuredProfile {
  return { name, axis: 'line', position: line, fluence: [], counts: line.map(flat), image: null, ...changes };
}

/** Measured spots: two tables and a picture that measure well, then one for each way in which they can be poor. */
export const spots: readonly MeasuredProfile[] = [
  spotTable('counts.csv', {}),
  spotTable('fluence.csv', { counts: [], fluence: line.map((x) => 5e3 * flat(x)) }),
  spotTable('radius.csv', {
    axis: 'radius',
    position: line.slice(30),
    counts: line.slice(30).map((x) => 0.9 * flat(x)),
  }),
  ...images.map(profileOfPicture),
  spotTable('half.csv', { counts: line.map((x) => (x > 0 ? 1 : 0.1)) }),
  spotTable('hollow.csv', { axis: 'radius', position: line.slice(33), counts: line.slice(33).map(flat) }),
  spotTable('wide.csv', { axis: 'radius', position: line.slice(30), counts: line.slice(30).map(() => 1) }),
  spotTable('below.csv', { counts: line.map((x) => (Math.abs(x) < 2e-6 ? 1 : -1)) }),
  spotTable('huge.csv', { position: line.map((x) => 1e6 * x) }),
  spotTable('tiny.csv', { position: line.map((x) => 1e-9 * x) }),
];

/** Caustics of any quality as caustics of a focus, some with a second axis. */
export const focusCaustics: fc.Arbitrary<NamedFocusCaustic> = fc
  .tuple(allowedCaustics, fc.boolean(), between(1e-4, 1))
  .map(([{ name, z, diameter }, both, shrink]) => ({
    name,
    z: z.map((place) => (place - 0.2) * shrink * 1e-3),
    diameter: diameter.map((d) => 0.01 * d),
    diameterY: both ? diameter.map((d) => 0.012 * d) : [],
  }));

const marks = [4, 6, 9, 14, 20].map((energy, i) => ({
  row: i + 2,
  energy: energy * 1e-6,
  area: i * 90e-12,
  pulses: 1,
}));
const spotsOf = (name: string, changes: Partial<NamedSpots> = {}): NamedSpots => ({
  name,
  rows: marks,
  bad: [],
  unmeasured: [],
  ignored: [],
  ...changes,
});

/** Tables of spots: one that has everything, one of powers, then one for each way in which they can be poor. */
export const spotTables: readonly NamedSpots[] = [
  spotsOf('full.csv', {
    rows: marks.map((mark) => ({
      ...mark,
      diameters: [1e-5, 1.2e-5],
      areaUncertainty: 4e-12,
      pulses: 3,
      z: 1e-5,
    })),
  }),
  spotsOf('power.csv', { rows: marks.map(({ energy, ...mark }) => ({ ...mark, power: energy * 1e5 })) }),
  spotsOf('bad.csv', { bad: [{ row: 3, column: 'd (um)', problem: 'Row 3, column d (um) is empty.' }] }),
  spotsOf('short.csv', { rows: marks.slice(0, 2) }),
  spotsOf('unmeasured.csv', { rows: [], unmeasured: [2, 3] }),
  spotsOf('unmarked.csv', { rows: marks.map((mark) => ({ ...mark, area: 0 })) }),
  spotsOf('absurd.csv', {
    rows: marks.map((mark, i) => ({
      ...mark,
      area: 10 ** (150 * (i - 2)),
      energy: 10 ** (150 * (i - 2)),
      z: i,
    })),
  }),
];

/** A ring of 20 by 18 pixels with a hole of radius 8. */
export const drawnMark: DrawnMark = {
  width: 80,
  height: 72,
  x: 41.3,
  y: 35.8,
  halfX: 20,
  halfY: 18,
  hole: 8,
  background: 0.6,
  mark: 0.2,
  noise: 0.01,
  fullScale: 255,
};

function markNamed(name: string, changes: Partial<DrawnMark> = {}): CameraImage {
  const image = { ...drawMark({ ...drawnMark, ...changes }), name };
  return Object.defineProperty(image, fc.toStringMethod, { value: () => `the ${name} mark` });
}

/** Small pictures of marks: a ring and a disc that measure well, then one for each way in which a picture can be poor. */
export const markPictures: readonly CameraImage[] = [
  markNamed('ring'),
  markNamed('disc', { hole: 0, halfX: 24, halfY: 15 }),
  markNamed('edge', { x: 15 }),
  markNamed('empty', { mark: 0.6 }),
  markNamed('faint', { mark: 0.5, noise: 0.07 }),
  markNamed('tiny', { halfX: 4, halfY: 4, hole: 0 }),
];

/** A ladder of the initial design without the plate, z in Rayleigh lengths about 12 mm: what a Gaussian would leave. */
const rungs = [-2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2].map((zeta, i) => ({
  row: i + 2,
  energy: 4e-7,
  area: 9e-11 * Math.max(0, 1 - (zeta / 2) ** 2 + 0.02 * Math.sin(7 * i)),
  pulses: 1,
  z: 12e-3 + zeta * 131e-6,
  plate: false,
}));

/** Tables of ladders: one without energies that measures well, then one for each way in which they can be poor. */
export const ladderTables: readonly NamedSpots[] = [
  spotsOf('ladder.csv', { rows: rungs.map(({ energy: _, ...rung }) => rung) }),
  spotsOf('short.csv', { rows: rungs.slice(3, 6) }),
  spotsOf('wide.csv', { rows: rungs.map((rung) => ({ ...rung, z: 1e4 * rung.z })) }),
  spotsOf('bad.csv', {
    rows: rungs,
    bad: [{ row: 3, column: 'd (um)', problem: 'Row 3, column d (um) is empty.' }],
  }),
  spotsOf('unmeasured.csv', { rows: [], unmeasured: [2, 3] }),
  spotsOf('unmarked.csv', { rows: rungs.map((rung) => ({ ...rung, area: 0 })) }),
];

/** Series of measured ripple periods against either. */
export const rippleTables: readonly NamedRipples[] = [
  { name: 'pulses.csv', against: 'pulses', setting: [5, 20, 80], period: [960e-9, 930e-9, 880e-9] },
  { name: 'fluence.csv', against: 'fluence', setting: [2000, 3000], period: [400e-9, 1100e-9] },
];
