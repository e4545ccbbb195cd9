import { incubationFit } from '../lib/design/fits.ts';
import type { ValueOf } from '../lib/graph/quantity.ts';
import type { Patch } from '../lib/graph/state.ts';
import { chiSquareTail } from '../lib/numerics/distributions.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { thresholdAt } from '../lib/process/incubation.ts';
import { pulsesAbout } from '../lib/process/markGrowth.ts';
import { points as drawn } from './circles.ts';
import { largest, perSquareCentimetre } from './columns.ts';
import { type Block, type FigureSpec, figure, type SeriesSpec } from './document.ts';
import { math, prose, says, sets } from './prose.ts';
import { fluenceText } from './shortTexts.ts';

type Fit = ValueOf<typeof incubationFit>;

/** The law that the thresholds speak for. */
function lawOf({ better, power, floored }: Fit) {
  return better === 'floored' && floored ? floored : power;
}

/** How the measured thresholds depend on the number of pulses. */
export const incubationFitSaid = says({ fit: incubationFit }, ({ fit }) => {
  const { points, reason } = fit;
  const { first, exponent, floor, uncertainties, residualSumOfSquares, degreesOfFreedom } = lawOf(fit);
  const ends = `${points[0]!.pulses} to ${points.at(-1)!.pulses}`;
  const sure = Math.abs(exponent - 1) > 2 * uncertainties.exponent;
  const course = !sure
    ? 'change no more than they are uncertain (S = 1 would describe them too)'
    : exponent < 1
      ? 'fall'
      : 'rise';
  const power = `with S = ${exponent.toFixed(3)} ± ${uncertainties.exponent.toFixed(3)} and ${fluenceText(first)} ± ${fluenceText(uncertainties.first, 2)} for one pulse`;
  const down =
    floor > 0 ? `, down to a floor of ${fluenceText(floor)} ± ${fluenceText(uncertainties.floor, 2)}` : '';
  const odd =
    degreesOfFreedom > 0 && chiSquareTail(residualSumOfSquares, degreesOfFreedom) < 0.05
      ? ' But the thresholds scatter about the law by more than their uncertainties explain, so that its own are too small.'
      : '';
  return `The thresholds of ${points.length} numbers of pulses, ${ends}, ${course}, ${power}${down} (standard uncertainties). ${reason}${odd}`;
});

/** Thresholds against pulses as points with their 95 % intervals, and the laws through them. */
export const incubationFitFigure = figure({
  id: 'incubation-fit',
  needs: [incubationFit],
  from: { fit: incubationFit },
  view: ({ fit }): FigureSpec => {
    const { points, power, floored, better } = fit;
    const x = pulsesAbout(points.at(-1)!.pulses);
    const curve = (law: Fit['power']) => x.map((N) => thresholdAt(law, N) * perSquareCentimetre);
    const [best, other] = better === 'floored' && floored ? [floored, power] : [power, floored];
    const ends = points.map(({ fluence, uncertainty = 0 }) =>
      [-1.96, 1.96].map((side) => (fluence + side * uncertainty) * perSquareCentimetre),
    );
    const series: SeriesSpec[] = [
      {
        label: 'measured',
        role: 'main',
        ...drawn(points.map(({ pulses, fluence }) => ({ x: pulses, y: fluence * perSquareCentimetre }))),
      },
      {
        label: '95\u202f% intervals',
        role: 'third',
        x: Float64Array.from(points.flatMap(({ pulses }) => [pulses, pulses, Number.NaN])),
        y: Float64Array.from(ends.flatMap((pair) => [...pair, Number.NaN])),
      },
      { label: lawWords(best), role: 'second', x, y: curve(best) },
      ...(other ? [{ label: lawWords(other), role: 'reference', x, y: curve(other) } as const] : []),
    ];
    return {
      title: 'Measured thresholds against the pulses on a place',
      x: { label: 'pulses on a place', unit: '1', domain: [0.8, x.at(-1)!], logarithmic: true },
      y: {
        label: 'threshold fluence of each pulse',
        unit: 'J/cm²',
        domain: [0, niceEnd(1.05 * largest(Float64Array.from(ends.flat()), ...series.map(({ y }) => y)))],
      },
      series,
      summary: `${points.map(({ pulses, fluence }) => `${pulses}: ${fluenceText(fluence)}`).join('; ')}. The exponent is ${best.exponent.toFixed(3)}${best.floor > 0 ? ` and the floor ${fluenceText(best.floor)}` : ''}.`,
    };
  },
});

const lawWords = ({ floor }: Fit['power']) => (floor > 0 ? 'law with a floor' : 'power law');

/** Lets the fitted law count as a whole: its threshold of one pulse as typed, since that is part of the law. */
export const takeIncubation = sets(
  'Let this incubation count',
  ({ fit }): Patch => {
    const { first, exponent, floor, uncertainties } = lawOf(fit);
    return {
      'threshold.incubationExponent': exponent,
      'threshold.floor': floor,
      'threshold.source': 'typed',
      'threshold.typedFluence': first,
      'threshold.typedUncertainty': uncertainties.first,
    };
  },
  { fit: incubationFit },
);

/** Incubation from a table with marks of several numbers of pulses. */
export const incubationFitBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'incubation-fit-said',
    needs: [incubationFit],
    prose: prose`
      ### Several numbers of pulses

      ${incubationFitSaid} The law is ${math`F_\infty+(F_1-F_\infty)\,N^{S-1}`}. ${takeIncubation}: then its threshold of one pulse counts as typed, and marks and removal of any number of pulses follow it.
    `,
  },
  incubationFitFigure,
];
