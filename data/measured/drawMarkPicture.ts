import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import type { Mark } from '../../lib/process/marks.ts';

/** The true values behind the invented microscope picture of a mark, SI units; greys as a share of full scale. */
export const markPictureTruth = {
  /** What differs from the Lecture table: close above the threshold the dip stays unmarked. */
  patch: { 'laser.pulseEnergy': 0.58e-6 },
  pixelPitch: 0.1e-6,
  /** Middle of the mark in pixels. */
  x: 172.4,
  y: 118.7,
  barLength: 10e-6,
  background: 0.62,
  mark: 0.24,
  noise: 0.025,
  /** Standard deviation of the edge in pixels, from the microscope’s resolution. */
  edge: 1.8,
};

/** The mark that the design predicts. */
export function predictedMark(): Mark {
  const { inputs } = applyPatch(designGraph, initialState(designGraph), markPictureTruth.patch);
  return valueOrThrow<Mark>(createEngine(designGraph, inputs).evaluate(['spot.mark'])['spot.mark'] as never);
}

/** Share of an edge that is passed at a distance from it, by the logistic curve of that standard deviation. */
const passed = (distance: number, deviation: number) =>
  1 / (1 + Math.exp((-distance * Math.PI) / (deviation * Math.sqrt(3))));

/** Eight bits: the predicted ring under uneven light with noise, a speck of dust, and a black scale bar. */
export function drawMarkPicture(): CameraImage {
  const { pixelPitch, x, y, barLength, background, mark, noise, edge } = markPictureTruth;
  const [width, height] = [340, 260];
  const { outerDiameter, innerDiameter } = predictedMark();
  const [outer, inner] = [outerDiameter, innerDiameter].map((length) => length / 2 / pixelPitch) as [
    number,
    number,
  ];
  const bar = { left: 20, top: 230, width: barLength / pixelPitch, height: 14 };
  const random = createRandom(92);
  const grey = (_: unknown, i: number) => {
    const [u, v] = [(i % width) + 0.5, Math.floor(i / width) + 0.5];
    const inBar = u > bar.left && u < bar.left + bar.width && v > bar.top && v < bar.top + bar.height;
    const radius = Math.hypot(u - x, v - y);
    const marked = passed(outer - radius, edge) * passed(radius - inner, edge);
    const dust = passed(5 - Math.hypot(u - 296, v - 46), 1.2);
    const plane = background + 0.06 * (u / width) - 0.04 * (v / height);
    const value = plane + (mark - background) * Math.max(marked, dust) + noise * random.normal();
    return Math.round(255 * Math.min(1, Math.max(0, inBar ? 0.02 : value)));
  };
  return {
    name: 'drawn',
    width,
    height,
    samples: Uint16Array.from({ length: width * height }, grey),
    fullScale: 255,
  };
}
