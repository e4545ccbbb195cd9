import { blur2 } from 'd3';
import { smoothSurface } from '../../data/measured/drawRipples.ts';
import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { createRandom, type Random } from '../../lib/numerics/random.ts';

/** Surfaces without ripples, by what is seen on them. */
export const plainKinds = [
  'blank',
  'noise',
  'scratches',
  'parallel scratches',
  'grain',
  'coarse grain',
  'blur',
  'fine blur',
  'one edge',
  'drawn wire',
] as const;
export type PlainKind = (typeof plainKinds)[number];

type Painter = (width: number, height: number, random: Random) => Float64Array;

const painters: Readonly<Record<PlainKind, Painter>> = {
  blank: (width, height, random) => {
    const [slope, noise] = [random.between(0, 0.2), random.uniform() < 0.5 ? 0 : 0.002];
    return paint(width, height, (x) => 0.4 + (slope * x) / width + noise * random.normal());
  },
  noise: (width, height, random) => paint(width, height, () => 0.45 + 0.1 * random.normal()),
  scratches: (width, height, random) => scratched(width, height, random, () => random.between(0, Math.PI)),
  'parallel scratches': (width, height, random) => {
    const direction = random.between(0, Math.PI);
    return scratched(width, height, random, () => direction + 0.02 * random.normal());
  },
  grain: (width, height, random) => grains(width, height, random.between(6, 14), random),
  'coarse grain': (width, height, random) => grains(width, height, random.between(20, 45), random),
  blur: (width, height, random) =>
    smoothSurface(width, height, random.between(6, 30), 0.12, random).map((value) => 0.45 + value),
  'fine blur': (width, height, random) => blurred(width, height, random.between(1, 4), random),
  'one edge': (width, height, random) => {
    const [angle, at, soft] = [random.between(0, 6.3), random.between(-0.3, 0.3), random.between(0.3, 6)];
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const place = (x: number, y: number) => (x - width / 2) * cos + (y - height / 2) * sin - at * width;
    return paint(
      width,
      height,
      (x, y) => 0.45 + 0.2 * Math.tanh(place(x, y) / soft) + 0.02 * random.normal(),
    );
  },
  // Streaks of every width along one direction, as rolling and drawing leave them.
  'drawn wire': (width, height, random) => {
    const long = smoothSurface(width, height, 40, 0.03, random);
    const rows = blurred(1, height, random.between(0.5, 3), random);
    return paint(width, height, (x, y) => rows[y]! + long[y * width + x]! + 0.03 * random.normal());
  },
};

/** Draws a surface without ripples. */
export function drawPlain(kind: PlainKind, width: number, height: number, seed: number): CameraImage {
  const random = createRandom(seed);
  const values = painters[kind](width, height, random);
  const samples = Uint16Array.from(values, (value) => Math.min(255, Math.max(0, Math.round(255 * value))));
  return { name: `${kind}.png`, width, height, samples, fullScale: 255 };
}

function paint(width: number, height: number, grey: (x: number, y: number) => number): Float64Array {
  return Float64Array.from({ length: width * height }, (_, i) => grey(i % width, Math.floor(i / width)));
}

function blurred(width: number, height: number, radius: number, random: Random): Float64Array {
  const data = paint(width, height, () => random.normal());
  const smooth = blur2({ data, width, height }, width === 1 ? 0 : radius, radius).data as Float64Array;
  const scatter = Math.sqrt(smooth.reduce((sum, value) => sum + value * value, 0) / smooth.length);
  return smooth.map((value) => 0.45 + (0.12 * value) / scatter);
}

/** Forty to eighty straight scratches of random place, depth and width. */
function scratched(width: number, height: number, random: Random, direction: () => number): Float64Array {
  const values = paint(width, height, () => 0.45 + 0.02 * random.normal());
  const count = Math.round(random.between(40, 80));
  for (let n = 0; n < count; n++) {
    const angle = direction();
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const reach = Math.hypot(width, height) / 2;
    const [at, soft, depth] = [
      random.between(-reach, reach),
      random.between(0.6, 2),
      random.between(-0.3, 0.2),
    ];
    for (let i = 0; i < values.length; i++) {
      const place = ((i % width) - width / 2) * cos + (Math.floor(i / width) - height / 2) * sin - at;
      if (Math.abs(place) < 4 * soft) values[i]! += depth * Math.exp(-0.5 * (place / soft) ** 2);
    }
  }
  return values;
}

/** Polished grains: each pixel has the grey of the nearest of random points. */
function grains(width: number, height: number, size: number, random: Random): Float64Array {
  const [columns, rows] = [Math.ceil(width / size) + 2, Math.ceil(height / size) + 2];
  const points = Array.from({ length: columns * rows }, (_, i) => ({
    x: ((i % columns) - 1 + random.uniform()) * size,
    y: (Math.floor(i / columns) - 1 + random.uniform()) * size,
    grey: 0.45 + 0.12 * random.normal(),
  }));
  return paint(width, height, (x, y) => {
    const [column, row] = [Math.floor(x / size) + 1, Math.floor(y / size) + 1];
    let [nearest, grey] = [Number.POSITIVE_INFINITY, 0];
    for (let r = Math.max(0, row - 2); r <= Math.min(rows - 1, row + 2); r++) {
      for (let c = Math.max(0, column - 2); c <= Math.min(columns - 1, column + 2); c++) {
        const point = points[r * columns + c]!;
        const distance = Math.hypot(point.x - x, point.y - y);
        if (distance < nearest) [nearest, grey] = [distance, point.grey];
      }
    }
    return grey + 0.02 * random.normal();
  });
}
