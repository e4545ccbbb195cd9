import { lineAngle } from '../lib/design/rippleDirection.ts';
import { incidence, incidenceDirection, polarisation } from '../lib/design/rippleInputs.ts';
import { boundWave, ripplePeriod, waveVectorAzimuth } from '../lib/design/ripples.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { micro } from './columns.ts';
import { type FigureSpec, figure, type SeriesSpec } from './document.ts';
import { angleText } from './shortTexts.ts';

export type Point = readonly [x: number, y: number];

/** Periods drawn to either side of the middle. */
const reach = 4;
const gap: Point = [Number.NaN, Number.NaN];

const columns = (points: readonly Point[]): Pick<SeriesSpec, 'x' | 'y'> => ({
  x: Float64Array.from(points, ([x]) => x),
  y: Float64Array.from(points, ([, y]) => y),
});

/** Straight ridges across a disc, at `angle` to x; lengths in periods. */
function straightRidges(angle: number): Point[] {
  const [along, across] = [
    [Math.cos(angle), Math.sin(angle)],
    [-Math.sin(angle), Math.cos(angle)],
  ] as const;
  return Array.from({ length: 2 * reach - 1 }, (_, i) => i - reach + 1).flatMap((k) => {
    const half = Math.sqrt(reach * reach - k * k);
    const end = (side: number): Point => [
      k * across[0] + side * half * along[0],
      k * across[1] + side * half * along[1],
    ];
    return [end(-1), end(1), gap];
  });
}

/** Rings about the centre of the spot. */
function rings(): Point[] {
  return Array.from({ length: reach }, (_, i) => i + 1).flatMap((radius) => [
    ...Array.from({ length: 73 }, (_, i): Point => {
      const angle = (2 * Math.PI * i) / 72;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    }),
    gap,
  ]);
}

/** Rays from the centre of the spot, a period apart half-way out. */
function rays(): Point[] {
  const count = Math.round(Math.PI * reach);
  return Array.from({ length: count }, (_, i) => (2 * Math.PI * i) / count).flatMap((angle) => [
    [0.6 * Math.cos(angle), 0.6 * Math.sin(angle)] as const,
    [reach * Math.cos(angle), reach * Math.sin(angle)] as const,
    gap,
  ]);
}

/** Dots a period apart, without a direction. */
function dots(): Point[] {
  const rows = Array.from({ length: 2 * reach + 1 }, (_, i) => i - reach);
  return rows
    .flatMap((row) => rows.map((column): Point => [column + (row % 2 ? 0.5 : 0), (row * Math.sqrt(3)) / 2]))
    .filter(([x, y]) => Math.hypot(x, y) <= reach)
    .flatMap((point) => [point, gap]);
}

/** A line from `from` to `to` with a head at its end, and at its beginning where it points both ways. */
export function arrow(from: Point, to: Point, both: boolean): Point[] {
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const head = ([x, y]: Point, turn: number): Point[] => [
    [x - 0.45 * Math.cos(turn + 0.45), y - 0.45 * Math.sin(turn + 0.45)],
    [x, y],
    [x - 0.45 * Math.cos(turn - 0.45), y - 0.45 * Math.sin(turn - 0.45)],
    gap,
  ];
  return [from, to, gap, ...head(to, angle), ...(both ? head(from, angle + Math.PI) : [])];
}

const patterns: Readonly<
  Record<string, { label: string; points: (angle: number) => Point[]; said: string }>
> = {
  linear: { label: 'ridges', points: straightRidges, said: '' },
  circular: {
    label: 'dots, without a direction',
    points: dots,
    said: 'Circular polarisation leaves dots or short pieces without a direction.',
  },
  radial: {
    label: 'ridges',
    points: rings,
    said: 'Radial polarisation lays the ridges in rings about the centre of the spot.',
  },
  azimuthal: {
    label: 'ridges',
    points: rays,
    said: 'Azimuthal polarisation lays the ridges outward from the centre of the spot.',
  },
};

/** A few ridges on the workpiece, to scale, with polarisation, scan and plane of incidence. */
export const directionFigure = figure({
  id: 'direction',
  shape: 'tall',
  from: {
    polarisation,
    azimuth: waveVectorAzimuth,
    plane: incidenceDirection,
    incidence,
    period: ripplePeriod,
    bound: boundWave,
  },
  view: ({ polarisation: kind, azimuth, plane, incidence, period, bound }): FigureSpec => {
    const scale = period * micro;
    const pattern = patterns[kind]!;
    const field = azimuth + plane;
    const scaled = (points: readonly Point[]) => columns(points.map(([x, y]) => [x * scale, y * scale]));
    const along = (angle: number, size: number): Point => [size * Math.cos(angle), size * Math.sin(angle)];
    const end = niceEnd((reach + 1.2) * scale);
    const shown = formatReadable(period, 'm', 'nm');
    return {
      title: 'The ripples on the workpiece, to scale',
      x: { label: 'x, along the scan', unit: 'µm', domain: [-end, end] },
      y: { label: 'y', unit: 'µm', domain: [-end, end] },
      equalScale: true,
      series: [
        {
          label: pattern.label,
          role: bound ? 'main' : 'reference',
          ...scaled(pattern.points(field + Math.PI / 2)),
        },
        ...(kind === 'linear'
          ? [
              {
                label: 'polarisation along the surface',
                role: 'second',
                ...scaled(arrow(along(field + Math.PI, 2), along(field, 2), true)),
              } as const,
            ]
          : []),
        {
          label: 'direction of the scan',
          role: 'third',
          ...scaled(arrow([-reach, -reach - 0.8], [reach, -reach - 0.8], false)),
        },
        ...(incidence > 0
          ? [
              {
                label: 'plane of incidence',
                role: 'reference',
                ...scaled([along(plane + Math.PI, reach + 0.8), along(plane, reach + 0.8)]),
              } as const,
            ]
          : []),
      ],
      summary: `${kind === 'linear' ? `Ridges ${shown} apart at ${angleText(lineAngle(field + Math.PI / 2))} to the scan, at right angles to the polarisation along the surface.` : `${pattern.said} Drawn ${shown} apart.`}${bound ? '' : ' No wave is bound to this surface: the drawing shows what the formula says and predicts nothing.'}`,
    };
  },
});
