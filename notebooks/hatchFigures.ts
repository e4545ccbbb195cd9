import { motion, scanAreaRate } from '../lib/design/hatch.ts';
import { pulseSpacing } from '../lib/design/scanInputs.ts';
import { limits, rateBySpeed } from '../lib/design/scanLimits.ts';
import { formatReadable } from '../lib/graph/units.ts';
import type { ScanLimit } from '../lib/process/scanLimits.ts';
import { type FigureSpec, figure, type SeriesSpec } from './document.ts';
import { limitWords } from './limitWords.ts';
import { rateText } from './shortTexts.ts';

/** mm²/s a m²/s. */
const perSquareMillimetre = 1e6;

/** What the rate is drawn against, with the factor from a speed in m/s to its axis. */
interface Against {
  readonly title: string;
  readonly label: string;
  readonly unit: string;
  readonly factor: number;
  readonly shown: (speed: number) => string;
}

/** Everything beyond a limit, over the whole height. */
function beyond(
  limit: ScanLimit,
  end: number,
  factor: number,
  [low, high]: readonly [number, number],
): SeriesSpec {
  const x = Float64Array.of(Math.min(limit.speed * factor, end), end);
  return {
    label: `beyond ${limitWords[limit.kind]}`,
    role: 'band',
    x,
    y: x.map(() => low),
    y2: x.map(() => high),
  };
}

function drawRate(
  values: {
    readonly curve: { readonly speed: Float64Array; readonly rate: Float64Array };
    readonly limits: readonly ScanLimit[];
    readonly speed: number;
    readonly rate: number;
  },
  { title, label, unit, factor, shown }: Against,
): FigureSpec {
  const { curve, limits, speed, rate } = values;
  const x = curve.speed.map((one) => factor * one);
  const y = curve.rate.map((one) => perSquareMillimetre * one);
  const yDomain = [0.8 * Math.min(...y), 1.6 * Math.max(...y)] as const;
  const end = x.at(-1)!;
  const [first, next] = limits;
  return {
    title,
    x: { label, unit, domain: [x[0]!, end], logarithmic: true },
    y: { label: 'area processing rate', unit: 'mm²/s', domain: yDomain, logarithmic: true },
    series: [
      beyond(first!, end, factor, yDomain),
      beyond(next!, end, factor, yDomain),
      { label: 'area processing rate, spacings held', role: 'main', x, y },
    ],
    marks: [
      ...limits.map(
        (limit) =>
          ({ kind: 'vertical', x: factor * limit.speed, label: limit.kind, role: 'reference' }) as const,
      ),
      { kind: 'point', x: factor * speed, y: perSquareMillimetre * rate, label: 'today', role: 'today' },
    ],
    summary: `Pulse spacing and line spacing are held, so that speed, repetition rate and power rise together. Today ${rateText(rate)} at ${shown(speed)}. ${limits
      .map(
        ({ kind, speed, rate }, i) =>
          `${i === 0 ? 'First' : 'Then'} ${limitWords[kind]} at ${shown(speed)}, ${rateText(rate)}.`,
      )
      .join(' ')}`,
  };
}

const from = { curve: rateBySpeed, limits, motion, rate: scanAreaRate };

/** Rate against the speed of the scanner, with the limits as regions. */
export const rateBySpeedFigure = figure({
  id: 'rate-by-speed',
  from,
  view: ({ motion, ...values }): FigureSpec =>
    drawRate(
      { ...values, speed: motion.speed },
      {
        title: 'Area processing rate against the scan speed',
        label: 'scan speed',
        unit: 'm/s',
        factor: 1,
        shown: (speed) => formatReadable(speed, 'm/s', 'm/s', 3),
      },
    ),
});

/** The same against the repetition rate that the pulse spacing then needs. */
export const rateByRepetitionFigure = figure({
  id: 'rate-by-repetition',
  from: { ...from, pulseSpacing },
  view: ({ motion, pulseSpacing, ...values }): FigureSpec =>
    drawRate(
      { ...values, speed: motion.speed },
      {
        title: 'Area processing rate against the repetition rate',
        label: 'repetition rate at the same pulse spacing',
        unit: 'kHz',
        factor: 1e-3 / pulseSpacing,
        shown: (speed) => formatReadable(speed / pulseSpacing, 'Hz', 'kHz', 3),
      },
    ),
});
