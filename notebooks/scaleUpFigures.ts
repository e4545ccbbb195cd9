import { scaled } from '../lib/design/scaleUp.ts';
import { rateBySpots } from '../lib/design/scaleUpCharts.ts';
import { spots as spotsInput, targetRate } from '../lib/design/scaleUpInputs.ts';
import { spotsOfPlate } from '../lib/design/scaleUpPlate.ts';
import { ceilings, spotsTried } from '../lib/design/scaleUpTarget.ts';
import { steps } from '../lib/design/scaleUpToday.ts';
import { mostSpots, wholeSpots } from '../lib/design/scaleUpWork.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import type { ScaleStep } from '../lib/process/scaleUpSteps.ts';
import { points } from './circles.ts';
import { largest } from './columns.ts';
import { type FigureSpec, figure, type MarkSpec } from './document.ts';
import { areaText, heldToHeat, limitLabels, scaleLimitWords, stepWords } from './scaleUpWords.ts';
import { listed } from './shortTexts.ts';

/** m²/h a m²/s. */
const perHour = 3600;

/** A thing with its rate, drawn as a line as long. */
interface Stem {
  readonly label: string;
  readonly rate: number;
}

/** Rates below one another, the first lowest, each a line from the left to its point, with the area wanted across. */
function drawStems(
  stems: readonly Stem[],
  target: number,
  today: number | undefined,
  spec: Pick<FigureSpec, 'title' | 'summary'> & {
    readonly label: string;
    readonly across: string;
    /** What the stems are, one of them. */
    readonly what: string;
  },
): FigureSpec {
  const rates = stems.map(({ rate }) => perHour * rate);
  const shown = [...rates, perHour * target];
  const domain = [0.5 * Math.min(...shown), 20 * Math.max(...shown)] as const;
  // From the left edge to the rate, and a gap before the next.
  const x = Float64Array.from(rates.flatMap((rate) => [domain[0], rate, Number.NaN]));
  const y = Float64Array.from(rates.flatMap((_, i) => [i + 1, i + 1, Number.NaN]));
  return {
    title: spec.title,
    x: { label: 'area per hour', unit: 'm²/h', domain, logarithmic: true },
    y: { label: spec.across, unit: '1', domain: [0.4, stems.length + 0.6], ordinal: true },
    series: [{ label: spec.label, role: 'main', x, y }],
    marks: [
      ...stems.map(
        ({ label }, i): MarkSpec => ({
          kind: 'point',
          x: rates[i]!,
          y: i + 1,
          label,
          role: i === today ? 'today' : 'reference',
          above: true,
        }),
      ),
      { kind: 'vertical', x: perHour * target, label: 'wanted', role: 'reference' },
    ],
    data: [
      {
        name: spec.what,
        unit: '1',
        values: Float64Array.from(rates, (_, i) => i + 1),
        words: stems.map(({ label }) => label),
      },
      { name: spec.label, unit: 'm²/h', values: Float64Array.from(rates) },
      { name: 'wanted', unit: 'm²/h', values: Float64Array.from(rates, () => perHour * target) },
    ],
    summary: spec.summary,
  };
}

/** From today’s machine to the larger one. */
export const stepsFigure = figure({
  id: 'scale-up-steps',
  from: { steps, target: targetRate },
  view: ({ steps, target }): FigureSpec => {
    const [today, own] = [steps[0]!, steps[1]!];
    const held = own.limit === 'heat' && own.rate < today.rate;
    const wordsOf = (step: ScaleStep) => (held && step === 'fastest' ? heldToHeat : stepWords[step]);
    const told = steps.map(({ step, rate, limit }) => {
      const by = limit === 'settings' ? '' : `, limited by ${scaleLimitWords[limit]}`;
      return `${wordsOf(step)} ${areaText(rate)}${by}`;
    });
    return drawStems(
      steps.map(({ step, rate }) => ({ label: wordsOf(step), rate })),
      target,
      0,
      {
        title: 'Area per hour, step by step from today’s machine to the larger one',
        label: 'area per hour with all steps up to this one',
        across: 'step, upwards',
        what: 'step',
        summary: `From below, each step keeping those before: ${told.join('; ')}. Wanted are ${areaText(target)}.`,
      },
    );
  },
});

/** Each limit alone, against the area wanted. */
export const ceilingsFigure = figure({
  id: 'scale-up-ceilings',
  from: { ceilings, field: scaled, target: targetRate },
  view: ({ ceilings, field, target }): FigureSpec => {
    const told = ceilings.map(({ kind, rate }) => `${scaleLimitWords[kind]} ${areaText(rate)}`);
    return drawStems(
      [
        { label: 'all together', rate: field.rate },
        ...ceilings.map(({ kind, rate }) => ({ label: limitLabels[kind], rate })),
      ],
      target,
      0,
      {
        title: 'What each limit by itself would allow',
        label: 'area per hour with everything else without limit',
        across: 'limits, the lowest first',
        what: 'limit',
        summary: `Each by itself, with everything else without limit, would allow: ${listed(told)}. All together ${areaText(field.rate)} are reached; wanted are ${areaText(target)}.`,
      },
    );
  },
});

/** Rate against the number of spots. */
export const spotsFigure = figure({
  id: 'scale-up-spots',
  from: {
    curve: rateBySpots,
    field: scaled,
    spots: wholeSpots,
    target: targetRate,
    tried: spotsTried,
    most: mostSpots,
    plate: spotsOfPlate,
  },
  view: ({ curve, field, spots, target, tried, most, plate }): FigureSpec => {
    const y = curve.rate.map((one) => perHour * one);
    const last = Math.max(2, curve.spots.at(-1)!, spots);
    const end = 1.02 * last;
    const top = niceEnd(
      1.15 * Math.max(largest(y), 3 * largest(y) > perHour * target ? perHour * target : 0),
    );
    const marks: MarkSpec[] = [
      { kind: 'point', x: spots, y: perHour * field.rate, label: 'chosen', role: 'today' },
    ];
    if (perHour * target < top)
      marks.push({ kind: 'horizontal', y: perHour * target, label: 'wanted', role: 'reference' });
    if (plate >= 1 && plate < last)
      marks.push({ kind: 'vertical', x: plate, label: 'most that the plate bears', role: 'reference' });
    const bound =
      most.energy <= most.height
        ? `the energy of a pulse serves ${most.energy}`
        : `the height of the field has room for ${most.height}`;
    const best = tried.met
      ? `From ${tried.spots} on the ${areaText(target)} wanted are met.`
      : `The ${areaText(target)} wanted are met with none of them; ${tried.spots === 1 ? 'one spot brings' : `${tried.spots} bring`} most, ${areaText(tried.rate)}.`;
    return {
      title: 'Area per hour against the number of spots',
      x: { label: 'spots side by side', unit: '1', domain: [0, end] },
      y: { label: 'area per hour', unit: 'm²/h', domain: [0, top] },
      series: [
        { label: 'area per hour of the larger machine', role: 'main', x: curve.spots, y },
        ...(curve.spots.length < 30
          ? [
              {
                label: 'whole numbers of spots',
                role: 'second',
                ...points([...curve.spots].map((x, i) => ({ x, y: y[i]! }))),
              } as const,
            ]
          : []),
      ],
      marks,
      moves: { input: spotsInput, at: spots, perUnit: 1, step: 1 },
      data: [
        { name: 'spots side by side', unit: '1', values: curve.spots },
        { name: 'area per hour of the larger machine', unit: 'm²/h', values: y },
        { name: 'wanted', unit: 'm²/h', values: Float64Array.from(y, () => perHour * target) },
      ],
      summary: `One spot brings ${areaText(curve.rate[0]!)}, ${spots} ${spots === 1 ? 'brings' : 'bring'} ${areaText(field.rate)}. ${best} Drawn up to ${curve.spots.at(-1)}; ${bound}.`,
      hint: 'Drag the line, or press arrow keys on its handle, to take more or fewer spots.',
    };
  },
});
