import { edgeMap, edgeProfiles } from '../lib/design/edges.ts';
import { field } from '../lib/design/fieldPlanes.ts';
import { hatch, motion } from '../lib/design/hatch.ts';
import { repetitionRate } from '../lib/design/laser.ts';
import { spotDiameter } from '../lib/design/pulsesOnPlace.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { highestLevel } from '../lib/process/edgeProfile.ts';
import { pulsesIn } from '../lib/process/pulsePlaces.ts';
import { overscan } from '../lib/process/scanTime.ts';
import { circles, points } from './circles.ts';
import { micro } from './columns.ts';
import { type FigureSpec, figure, type MarkSpec, type SeriesSpec } from './document.ts';
import { linesDrawn, linesOfPass, type Point, waysBetween, windowOf } from './pathPieces.ts';
import { lengthText, percentText } from './shortTexts.ts';

/** More pulses than this are not drawn one by one. */
const mostPulses = 500;

const columns = (path: readonly Point[]): Pick<SeriesSpec, 'x' | 'y'> => ({
  x: Float64Array.from(path, ([x]) => x * micro),
  y: Float64Array.from(path, ([, y]) => y * micro),
});

/** The first lines at a corner of the field, to scale. */
export const pathFigure = figure({
  id: 'path',
  shape: 'tall',
  from: { hatch, motion, field, rate: repetitionRate, diameter: spotDiameter },
  view: ({ hatch, motion, field, rate, diameter }): FigureSpec => {
    const whole = { ...hatch, ...field };
    const shown = windowOf(whole, diameter);
    const lines = linesDrawn(whole, shown);
    const every = numberedEvery(lines.length, whole.interlacing);
    const corner = { x: -field.width / 2, y: -field.height / 2 };
    const right = Math.min(shown.size, field.width);
    const box = { left: corner.x, right: corner.x + right, bottom: corner.y, top: corner.y + shown.size };
    const outside = motion.turnRound === 'outside';
    const expected = (rate * right * lines.length) / motion.speed;
    const pulses = expected > mostPulses ? undefined : pulsesIn(whole, [0], motion, rate, box);
    const dots = pulses && pulses.x.length <= mostPulses ? pulses : undefined;
    const straight = lines.flatMap(({ y }): Point[] => [
      [0, y],
      [right, y],
      [Number.NaN, Number.NaN],
    ]);
    const turned = whole.passes > 1 && whole.angle !== 0;
    const middle = lines[Math.floor(lines.length / 2)]?.y ?? 0;
    const series: SeriesSpec[] = [
      dots
        ? {
            label: 'pulses of the first pass',
            role: 'main',
            ...points(
              [...dots.x].map((x, i) => ({ x: micro * (x - corner.x), y: micro * (dots.y[i]! - corner.y) })),
            ),
          }
        : { label: 'lines of the first pass', role: 'main', ...columns(straight) },
      {
        label: outside ? 'between lines, laser off' : 'step to the next line, at rest',
        role: 'second',
        ...columns(waysBetween(whole, motion, shown)),
      },
      {
        label: 'spot',
        role: 'third',
        ...circles([{ x: micro * (right / 2), y: micro * middle, diameter: micro * diameter }]),
      },
      ...(turned
        ? [
            {
              label: 'lines of the second pass',
              role: 'reference',
              ...columns(linesOfPass(whole, 1, shown)),
            } as const,
          ]
        : []),
    ];
    const [low, high] = [-micro * shown.out, micro * shown.size];
    return {
      title: 'The path at a corner of the field, to scale',
      x: { label: 'from the corner, along the first lines', unit: 'µm', domain: [low, high] },
      y: { label: 'from the corner', unit: 'µm', domain: [low, high] },
      equalScale: true,
      series: series.filter(({ x }) => x.length > 0),
      marks: [
        { kind: 'vertical', x: 0, label: 'edge', role: 'reference' },
        ...orderMarks(lines, every, right),
      ],
      summary: `The lines are ${lengthText(whole.lineSpacing)} apart, the spot is ${lengthText(diameter)} wide${dots ? '' : ` and the pulses, ${lengthText(motion.speed / rate)} apart, are too many to be drawn`}. ${numbersSaid(every)} ${turnSaid(outside, overscan(motion.speed, motion.acceleration), shown.out)}${whole.directions === 'one' ? ' The way back to the next beginning is drawn half-way between the lines.' : ''}`,
    };
  },
});

/** Numbers at no more than twelve lines. */
const mostNumbers = 12;

/** Every how many lines one is numbered; with interlacing not only those of one round. */
function numberedEvery(count: number, interlacing: number): number {
  const every = Math.ceil(count / mostNumbers);
  return every > 1 && interlacing > 1 && every % interlacing === 0 ? every + 1 : every;
}

/** The order of the lines, as numbers on them. */
function orderMarks(lines: ReturnType<typeof linesDrawn>, every: number, right: number): MarkSpec[] {
  return lines
    .filter((_, i) => i % every === 0)
    .map(({ turn, y }) => ({
      kind: 'point',
      x: micro * right * 0.9,
      y: micro * y,
      label: String(turn + 1),
      role: 'reference',
    }));
}

function numbersSaid(every: number): string {
  return every > 1
    ? `The numbers, on every ${every === 2 ? 'second' : every === 3 ? 'third' : `${every}th`} line, give the order in which they are written.`
    : 'The numbers give the order in which they are written.';
}

function turnSaid(outside: boolean, way: number, drawn: number): string {
  if (!outside)
    return `At each end the scanner slows down and speeds up over ${lengthText(way)} with the laser on.`;
  if (way > drawn)
    return `Beyond each end the scanner needs ${lengthText(way)} to turn round, more than is drawn.`;
  return `Beyond each end the scanner needs ${lengthText(way)} to turn round.`;
}

/** Accumulated fluence across the edges, averaged along them. */
export const edgeFigure = figure({
  id: 'edge',
  from: { profiles: edgeProfiles },
  view: ({ profiles: { ends, sides } }): FigureSpec => {
    const far = Math.max(ends.distance.at(-1)!, sides.distance.at(-1)!);
    const [unit, per] = far < 2e-3 ? ['µm', micro] : ['mm', 1e3];
    const percent = (values: Float64Array) => values.map((value) => 100 * value);
    const top = Math.max(highestLevel(ends), highestLevel(sides));
    return {
      title: 'Accumulated fluence across the edges of the field',
      x: { label: 'distance inward from the edge', unit, domain: [per * ends.distance[0]!, per * far] },
      y: { label: 'accumulated fluence, of its mean', unit: '%', domain: [0, niceEnd(105 * top)] },
      series: [
        {
          label: 'where the first lines end',
          role: 'main',
          x: ends.distance.map((x) => per * x),
          y: percent(ends.level),
        },
        {
          label: 'beside the first lines',
          role: 'second',
          x: sides.distance.map((x) => per * x),
          y: percent(sides.level),
        },
      ],
      marks: [
        { kind: 'vertical', x: 0, label: 'edge', role: 'reference' },
        { kind: 'horizontal', y: 100, label: 'mean', role: 'reference' },
      ],
      summary: `Averaged along the edge, all passes. At the edge itself ${percentText(levelAt(ends, 0))} of the mean where the first lines end and ${percentText(levelAt(sides, 0))} beside them; ${top > 1.005 ? `at most ${percentText(highestLevel(ends))} and ${percentText(highestLevel(sides))}` : 'nowhere more than the mean'}.`,
    };
  },
});

/** Level of a profile at a distance, in straight lines between its places. */
function levelAt({ distance, level }: { distance: Float64Array; level: Float64Array }, at: number): number {
  const i = Math.max(
    1,
    distance.findIndex((d) => d >= at),
  );
  const part = (at - distance[i - 1]!) / (distance[i]! - distance[i - 1]!);
  return level[i - 1]! + part * (level[i]! - level[i - 1]!);
}

/** Accumulated fluence over a corner, pulse by pulse. */
export const edgeMapFigure = figure({
  id: 'edge-map',
  from: { map: edgeMap },
  view: ({ map }): FigureSpec => {
    const domain = (from: number, count: number) =>
      [micro * from, micro * (from + (count - 1) * map.step)] as const;
    const [x, y] = [domain(map.left, map.columns), domain(map.bottom, map.rows)];
    return {
      title: 'Accumulated fluence over a corner of the field, pulse by pulse',
      x: { label: 'from the corner, along the first lines', unit: 'µm', domain: x },
      y: { label: 'from the corner', unit: 'µm', domain: y },
      equalScale: true,
      series: [
        {
          label: 'edge of the field',
          role: 'reference',
          x: Float64Array.of(0, 0, x[1]),
          y: Float64Array.of(y[1], 0, 0),
        },
      ],
      map: {
        columns: map.columns,
        rows: map.rows,
        values: map.level,
        perValue: 100,
        range: [0, 100 * map.highest],
        label: 'accumulated fluence, of its mean',
        unit: '%',
      },
      summary: `All passes with their angles. The highest place shown has ${formatReadable(map.highest, '1', '%', 3)} of the mean of a wide field.`,
    };
  },
});
