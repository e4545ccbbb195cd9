import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { encode } from 'fast-png';
import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { drawBeam, type SyntheticBeam } from './drawBeam.ts';
import { drawLadder, ladderTruth } from './drawLadder.ts';
import { drawMarkPicture, markPictureTruth } from './drawMarkPicture.ts';
import { drawMarks, marksTruth } from './drawMarks.ts';
import { drawEvenField, drawUnevenField, ripplesTruth } from './drawMicrographs.ts';
import { drawPeriods, periodsTruth } from './drawPeriods.ts';
import { drawSection, sectionHeader, sectionTruth } from './drawSection.ts';
import { drawSpotCaustic, drawSpotLine, drawSpotPicture, spotTruth } from './drawSpot.ts';

/** Peak and width of the wings over the core of the rain-gauge beam. */
const wings = { peak: 0.008, width: 2 };
/** Second-moment over core radius: √((1 + p s⁴)/(1 + p s²)), for wings of peak p and width s. */
const widening = Math.sqrt((1 + wings.peak * wings.width ** 4) / (1 + wings.peak * wings.width ** 2));
const withWings = (q: number) => Math.exp(-2 * q) + wings.peak * Math.exp((-2 * q) / wings.width ** 2);

/** Second-moment radii in pixels for a diameter in metres, an ellipticity and a pixel pitch in metres. */
function radii(diameter: number, ellipticity: number, pitch: number) {
  const radius = diameter / 2 / pitch;
  return { radiusX: radius / Math.sqrt(ellipticity), radiusY: radius * Math.sqrt(ellipticity) };
}

const rainGauge: SyntheticBeam = {
  width: 1400,
  height: 1400,
  x: 712.4,
  y: 689.8,
  ...radii(2.5e-3 / widening, 0.94, 5.5e-6),
  angle: 0.38,
  peak: 0.78,
  noise: 0.0006,
  offset: 0.016,
  gradientX: 0.006,
  gradientY: -0.004,
  profile: withWings,
  fullScale: 4095,
  seed: 20301,
};

const coldPlate: SyntheticBeam = {
  width: 960,
  height: 920,
  x: 471.3,
  y: 466.9,
  ...radii(1.6e-3, 0.97, 5.5e-6),
  angle: -0.25,
  peak: 0.82,
  noise: 0.004,
  offset: 0.03,
  gradientX: -0.008,
  gradientY: 0.005,
  fullScale: 255,
  seed: 51502,
};

const small = {
  ...rainGauge,
  width: 300,
  height: 280,
  noise: 0.002,
  profile: (q: number) => Math.exp(-2 * q),
};
const clipped: SyntheticBeam = { ...small, ...radii(0.5e-3, 0.95, 5.5e-6), x: 36.5, y: 141.2, seed: 30303 };
const saturated: SyntheticBeam = {
  ...small,
  ...radii(0.5e-3, 0.95, 5.5e-6),
  x: 148.7,
  y: 139.1,
  peak: 1.3,
  seed: 40404,
};

/** A caustic to draw, lengths in metres. */
interface DrawnCaustic {
  readonly waistPosition: number;
  readonly waistDiameter: number;
  readonly wavelength: number;
  readonly beamPropagationRatio: number;
  readonly seed: number;
}

const rainGaugeCaustic = {
  waistPosition: 0.1524,
  waistDiameter: 180e-6,
  wavelength: 1030e-9,
  beamPropagationRatio: 1.15,
  seed: 61,
};
const coldPlateCaustic = {
  waistPosition: 0.0487,
  waistDiameter: 90e-6,
  wavelength: 515e-9,
  beamPropagationRatio: 1.25,
  seed: 62,
};

/** Places in Rayleigh lengths from the waist: half within one, half beyond two (ISO 11146-1). */
const places = [-3, -2.6, -2.2, -0.9, -0.6, -0.3, 0, 0.3, 0.6, 0.9, 2.2, 2.6, 3];

/** Rows of z in millimetres and diameter in micrometres, with 0.8 % scatter of the diameter. */
function drawCaustic(caustic: DrawnCaustic): [string, string][] {
  const { waistPosition, waistDiameter, wavelength, beamPropagationRatio } = caustic;
  const rayleigh = (Math.PI * waistDiameter ** 2) / (4 * wavelength * beamPropagationRatio);
  const random = createRandom(caustic.seed);
  return places.map((place) => {
    const z = Math.round(1e4 * (waistPosition + place * rayleigh)) / 1e4;
    const diameter =
      waistDiameter * Math.hypot(1, (z - waistPosition) / rayleigh) * (1 + 0.008 * random.normal());
    return [(1e3 * z).toFixed(1), (1e6 * diameter).toFixed(1)];
  });
}

function writeTable(
  header: string,
  separator: string,
  rows: readonly (readonly string[])[],
  decimal: string,
): Uint8Array {
  const lines = rows.map((row) => row.map((cell) => cell.replace('.', decimal)).join(separator));
  return new TextEncoder().encode(`${[header, ...lines].join('\n')}\n`);
}

function writePng({ width, height, samples, fullScale }: CameraImage): Uint8Array {
  const eight = fullScale === 255;
  const data = eight ? Uint8Array.from(samples) : Uint16Array.from(samples);
  return encode({ width, height, data, depth: eight ? 8 : 16, channels: 1 }, { zlib: { level: 9 } });
}

/** A grey PNG of eight bits. */
function writePlainPng({ width, height, samples }: CameraImage): Uint8Array {
  const data = Uint8Array.from(samples);
  return encode({ width, height, data, depth: 8, channels: 1 }, { zlib: { level: 9 } });
}

/** A TIFF of one uncompressed 8-bit strip: header, samples, then eight tags in ascending order (TIFF 6.0, 1992). */
function writeTiff(beam: SyntheticBeam): Uint8Array {
  const { width, height, samples } = drawBeam(beam);
  const tags = [
    [256, width],
    [257, height],
    [258, 8],
    [259, 1],
    [262, 1],
    [273, 8],
    [278, height],
    [279, samples.length],
  ] as const;
  const directory = 8 + samples.length + (samples.length % 2);
  const file = new DataView(new ArrayBuffer(directory + 2 + 12 * tags.length + 4));
  file.setUint32(0, 0x49492a00);
  file.setUint32(4, directory, true);
  samples.forEach((value, i) => {
    file.setUint8(8 + i, value);
  });
  file.setUint16(directory, tags.length, true);
  tags.forEach(([tag, value], i) => {
    const at = directory + 2 + 12 * i;
    file.setUint16(at, tag, true);
    file.setUint16(at + 2, 4, true);
    file.setUint32(at + 4, 1, true);
    file.setUint32(at + 8, value, true);
  });
  return new Uint8Array(file.buffer);
}

/** The true values behind the invented files, in SI units, for tests and for the README beside them. */
export const truth = {
  pixelPitch: 5.5e-6,
  rainGauge: { equivalentDiameter: 2.5e-3, ellipticity: 0.94, angle: rainGauge.angle },
  coldPlate: { equivalentDiameter: 1.6e-3, ellipticity: 0.97, angle: coldPlate.angle },
  rainGaugeCaustic,
  coldPlateCaustic,
  spot: spotTruth,
  marks: marksTruth,
  markPicture: markPictureTruth,
  ladder: ladderTruth,
  ripples: ripplesTruth,
  periods: periodsTruth,
  section: sectionTruth,
};

const ladderHeader = 'plate;energy (µJ);z (mm);dx (µm);dy (µm)';

/** Name and bytes of every invented file, the same on every run. */
export function makeMeasured(): Record<string, Uint8Array> {
  return {
    'rain-gauge-beam.png': writePng(drawBeam(rainGauge)),
    'cold-plate-beam.tif': writeTiff(coldPlate),
    'clipped-beam.png': writePng(drawBeam(clipped)),
    'saturated-beam.png': writePng(drawBeam(saturated)),
    'rain-gauge-caustic.csv': writeTable('z (mm);d (µm)', ';', drawCaustic(rainGaugeCaustic), ','),
    'lecture-table-profile.csv': writeTable('x (µm),fluence (J/cm²)', ',', drawSpotLine(), '.'),
    'lecture-table-spot.png': writePng(drawSpotPicture()),
    'lecture-table-mark.png': writePng(drawMarkPicture()),
    'lecture-table-focus.csv': writeTable('z (mm);dx (µm);dy (µm)', ';', drawSpotCaustic(), ','),
    'rain-gauge-spots.csv': writeTable('energy (µJ);dx (µm);dy (µm);N;z (mm);remark', ';', drawMarks(), ','),
    'rain-gauge-ladder.csv': writeTable(ladderHeader, ';', drawLadder('own', 91), ','),
    'rain-gauge-thin-step-ladder.csv': writeTable(ladderHeader, ';', drawLadder('thin', 92), ','),
    'rain-gauge-periods.csv': writeTable('N;period (nm)', ';', drawPeriods(), ','),
    'cold-plate-section.csv': writeTable(sectionHeader, ',', drawSection(71), '.'),
    'even-ripples.png': writePlainPng(drawEvenField()),
    'uneven-ripples.png': writePlainPng(drawUnevenField()),
    'cold-plate-caustic.csv': writeTable('z (mm),d (µm)', ',', drawCaustic(coldPlateCaustic), '.'),
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const [name, bytes] of Object.entries(makeMeasured()))
    writeFileSync(new URL(name, import.meta.url), bytes);
}
