import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { valueAt } from '../../lib/numerics/panelledFunction.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import type { Light } from '../../lib/optics/light.ts';
import { peakOf } from '../../lib/optics/radialProfile.ts';
import { roundProfileAt } from '../../lib/optics/roundSpot.ts';
import { spotRadiusAt } from '../../lib/optics/spotRadius.ts';

/** The true values behind the invented spots of the Lecture table, SI units: ζ = 0.42, and what was added to the design’s own. */
export const spotTruth = {
  z: 55e-6,
  /** Noise of the table and of the picture's pixels, as a part of the peak. */
  lineNoise: 0.015,
  pictureNoise: 0.006,
  pixelPitch: 0.4e-6,
  /** Scatter of the caustic's diameters, and how much wider than predicted it is along x and narrower along y. */
  causticScatter: 0.01,
  causticAspect: 0.02,
};

/** The initial design, which is the Lecture table’s. */
function lectureTable(): { light: Light; unshapedPeak: number } {
  const outcomes = createEngine(designGraph).evaluate(['focus.light', 'focus.unshapedPeakFluence']);
  return {
    light: valueOrThrow<Light>(outcomes['focus.light'] as never),
    unshapedPeak: valueOrThrow<number>(outcomes['focus.unshapedPeakFluence'] as never),
  };
}

/** Rows of x in micrometres and fluence in J/cm² across the spot, its middle at 0.6 µm. */
export function drawSpotLine(): [string, string][] {
  const { light, unshapedPeak } = lectureTable();
  const profile = roundProfileAt(light, spotTruth.z);
  const noise = spotTruth.lineNoise * peakOf(profile).irradiance;
  const random = createRandom(71);
  return Array.from({ length: 61 }, (_, i) => {
    const x = i - 30;
    const irradiance = valueAt(profile, Math.abs(x - 0.6) * 1e-6) + noise * random.normal();
    return [String(x), (irradiance * unshapedPeak * 1e-4).toFixed(3)];
  });
}

/** A picture of the spot with twelve bits, a background plane and noise, its middle off the frame’s. */
export function drawSpotPicture(): CameraImage {
  const { light } = lectureTable();
  const { z, pixelPitch, pictureNoise } = spotTruth;
  const [width, height, x, y] = [320, 300, 158.7, 153.2];
  const profile = roundProfileAt(light, z, 100e-6);
  const counts = 3300 / peakOf(profile).irradiance;
  const random = createRandom(72);
  const samples = Uint16Array.from({ length: width * height }, (_, i) => {
    const [u, v] = [(i % width) + 0.5 - x, Math.floor(i / width) + 0.5 - y];
    const light = counts * valueAt(profile, Math.hypot(u, v) * pixelPitch);
    const plane = 90 + 12 * (u / width) - 8 * (v / height);
    return Math.min(4095, Math.max(0, Math.round(light + plane + 3300 * pictureNoise * random.normal())));
  });
  return { name: 'drawn', width, height, samples, fullScale: 4095 };
}

/** Rows of z in millimetres and second-moment diameters along x and y in micrometres. */
export function drawSpotCaustic(): [string, string, string][] {
  const { light } = lectureTable();
  const random = createRandom(73);
  const { causticScatter, causticAspect } = spotTruth;
  return [-0.4, -0.3, -0.22, -0.15, -0.1, -0.05, 0, 0.05, 0.1, 0.15, 0.22, 0.3, 0.4].map((z) => {
    const diameter = 2e6 * spotRadiusAt(light, z * 1e-3, 'moment');
    const show = (factor: number) => (diameter * factor * (1 + causticScatter * random.normal())).toFixed(2);
    return [z.toFixed(2), show(1 + causticAspect), show(1 - causticAspect)];
  });
}
