import { drawBeam, type SyntheticBeam } from '../../data/measured/drawBeam.ts';
import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { createRandom } from '../../lib/numerics/random.ts';

/** A beam of the accuracy trial: see measureBeam.test.ts for the ranges. */
export function drawTrial(seed: number, elliptical: boolean): { beam: SyntheticBeam; image: CameraImage } {
  const random = createRandom(seed);
  const radius = 8 * 25 ** random.uniform();
  const frame = Math.ceil(2 * radius * random.between(3, 4));
  const turn = 2 * Math.PI * random.uniform();
  const gradient = random.between(0, 0.02);
  const beam: SyntheticBeam = {
    width: frame,
    height: frame,
    x: frame / 2 + 0.2 * radius * random.between(-1, 1),
    y: frame / 2 + 0.2 * radius * random.between(-1, 1),
    radiusX: radius,
    radiusY: elliptical ? 0.9 * radius : radius,
    angle: random.between(-Math.PI / 4, Math.PI / 4),
    peak: random.between(0.6, 0.95) - 0.04,
    noise: 0.002,
    offset: random.between(0.015, 0.03),
    gradientX: gradient * Math.cos(turn),
    gradientY: gradient * Math.sin(turn),
    fullScale: 4095,
    seed: seed + 1_000_000,
  };
  return { beam, image: drawBeam(beam) };
}
