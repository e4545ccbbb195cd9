import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { createRandom } from '../../lib/numerics/random.ts';

/** A beam to draw; lengths in pixels, light as a share of full scale. */
export interface SyntheticBeam {
  readonly width: number;
  readonly height: number;
  readonly x: number;
  readonly y: number;
  /** 1/e² radii along the axis at `angle` to x and across it. */
  readonly radiusX: number;
  readonly radiusY: number;
  readonly angle: number;
  readonly peak: number;
  readonly noise: number;
  readonly offset: number;
  readonly gradientX: number;
  readonly gradientY: number;
  /** Light at squared distance q (1 on the 1/e² ellipse) over the peak; a Gaussian by default. */
  readonly profile?: (q: number) => number;
  readonly fullScale: number;
  readonly seed: number;
}

const gaussian = (q: number) => (q > 20 ? 0 : Math.exp(-2 * q));

/** Draws a beam sampled at the pixel centres, with a background plane, normal noise, rounding and the camera's limits. */
export function drawBeam(beam: SyntheticBeam): CameraImage {
  const { width, height, profile = gaussian, fullScale } = beam;
  const random = createRandom(beam.seed);
  const samples = new Uint16Array(width * height);
  const [cos, sin] = [Math.cos(beam.angle), Math.sin(beam.angle)];
  for (let row = 0, k = 0; row < height; row++) {
    const dy = row + 0.5 - beam.y;
    for (let column = 0; column < width; column++, k++) {
      const dx = column + 0.5 - beam.x;
      const u = (dx * cos + dy * sin) / beam.radiusX;
      const v = (dy * cos - dx * sin) / beam.radiusY;
      const plane =
        beam.offset +
        beam.gradientX * ((column + 0.5) / width - 0.5) +
        beam.gradientY * ((row + 0.5) / height - 0.5);
      const light = beam.peak * profile(u * u + v * v) + plane + beam.noise * random.normal();
      samples[k] = Math.min(Math.max(Math.round(light * fullScale), 0), fullScale);
    }
  }
  return { name: 'synthetic', width, height, samples, fullScale };
}
