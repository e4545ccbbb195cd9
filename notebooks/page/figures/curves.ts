/** From values to px inside the frame: (value − origin) · scale. */
export interface Scale {
  readonly xOrigin: number;
  readonly xScale: number;
  readonly yOrigin: number;
  readonly yScale: number;
}

export function scaleOf(
  x: readonly [number, number],
  y: readonly [number, number],
  frameWidth: number,
  frameHeight: number,
): Scale {
  return {
    xOrigin: x[0],
    xScale: frameWidth / (x[1] - x[0]),
    yOrigin: y[1],
    yScale: frameHeight / (y[0] - y[1]),
  };
}

/** Beyond this many px a curve has long left the frame; renderers lose precision near 1e6. */
const far = 1e4;
/** Radius of the ring that stands for a value without neighbours, px. */
export const ring = 3;

function toPixel(value: number, origin: number, scale: number): number {
  const pixel = (value - origin) * scale;
  return Math.round(Math.min(far, Math.max(-far, pixel)) * 10) / 10;
}

/**
 * Path of a curve in px of the frame. NaN or an infinite value leaves a gap; a value between two gaps becomes a ring,
 * so that single measurements show.
 */
export function linePath(x: Float64Array, y: Float64Array, scale: Scale): string {
  const { xOrigin, xScale, yOrigin, yScale } = scale;
  const count = Math.min(x.length, y.length);
  let path = '';
  let run = 0;
  let [lastX, lastY] = [0, 0];
  for (let i = 0; i <= count; i++) {
    const sum = i < count ? x[i]! + y[i]! : Number.NaN;
    if (sum - sum === 0) {
      lastX = toPixel(x[i]!, xOrigin, xScale);
      lastY = toPixel(y[i]!, yOrigin, yScale);
      path += `${run === 0 ? 'M' : 'L'}${lastX},${lastY}`;
      run++;
    } else {
      if (run === 1)
        path += `m${-ring},0a${ring},${ring} 0 1 0 ${2 * ring},0a${ring},${ring} 0 1 0 ${-2 * ring},0`;
      run = 0;
    }
  }
  return path;
}

/** Whether no two values are neighbours, so that the curve is rings alone. */
export function isScattered(x: Float64Array, y: Float64Array): boolean {
  let [before, any] = [false, false];
  for (let i = 0; i < x.length; i++) {
    const here = Number.isFinite(x[i]! + y[i]!);
    if (here && before) return false;
    before = here;
    any ||= here;
  }
  return any;
}

/** Closed path of a band between two curves, one piece for each run of finite values. */
export function bandPath(x: Float64Array, y: Float64Array, y2: Float64Array, scale: Scale): string {
  const { xOrigin, xScale, yOrigin, yScale } = scale;
  const count = Math.min(x.length, y.length, y2.length);
  let path = '';
  let back = '';
  for (let i = 0; i <= count; i++) {
    const sum = i < count ? x[i]! + y[i]! + y2[i]! : Number.NaN;
    if (sum - sum === 0) {
      const pixelX = toPixel(x[i]!, xOrigin, xScale);
      path += `${back === '' ? 'M' : 'L'}${pixelX},${toPixel(y[i]!, yOrigin, yScale)}`;
      back = `L${pixelX},${toPixel(y2[i]!, yOrigin, yScale)}${back}`;
    } else if (back !== '') {
      path += `${back}Z`;
      back = '';
    }
  }
  return path;
}
