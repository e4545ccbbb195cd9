import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { createRandom } from '../../lib/numerics/random.ts';

/** A mark to draw; lengths in pixels, greys as a share of full scale. */
export interface DrawnMark {
  readonly width: number;
  readonly height: number;
  readonly x: number;
  readonly y: number;
  /** Half axes along x and y of an ellipse turned by `angle`, and the radius of a hole in its middle. */
  readonly halfX: number;
  readonly halfY: number;
  readonly angle?: number;
  readonly hole?: number;
  readonly background: number;
  readonly mark: number;
  readonly gradientX?: number;
  readonly gradientY?: number;
  readonly noise?: number;
  readonly fullScale: number;
  readonly seed?: number;
}

/** Area in pixels that a drawn mark has. */
export function trueArea({ halfX, halfY, hole = 0 }: DrawnMark): number {
  return Math.PI * (halfX * halfY - hole * hole);
}

/** Places along one side of a pixel at which it is asked what lies there: covered shares to 1 %. */
const samples = 8;

/** Draws the mark with edges covered in part, a background plane, normal noise, rounding and the camera's limits. */
export function drawMark(mark: DrawnMark): CameraImage {
  const { width, height, x, y, halfX, halfY, angle = 0, hole = 0, fullScale, noise = 0, seed = 1 } = mark;
  const random = createRandom(seed);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const covers = (u: number, v: number) => {
    const [along, across] = [(u * cos + v * sin) / halfX, (-u * sin + v * cos) / halfY];
    return along ** 2 + across ** 2 <= 1 && Math.hypot(u, v) >= hole;
  };
  const covered = (column: number, row: number) => {
    let count = 0;
    for (let i = 0; i < samples; i++)
      for (let j = 0; j < samples; j++)
        if (covers(column + (i + 0.5) / samples - x, row + (j + 0.5) / samples - y)) count++;
    return count / samples ** 2;
  };
  const grey = (_: unknown, i: number) => {
    const [column, row] = [i % width, Math.floor(i / width)];
    const { gradientX = 0, gradientY = 0, background } = mark;
    const plane = background + (gradientX * column) / width + (gradientY * row) / height;
    const value = plane + (mark.mark - background) * covered(column, row) + noise * random.normal();
    return Math.min(fullScale, Math.max(0, Math.round(value * fullScale)));
  };
  return {
    name: 'drawn.png',
    width,
    height,
    samples: Uint16Array.from({ length: width * height }, grey),
    fullScale,
  };
}
