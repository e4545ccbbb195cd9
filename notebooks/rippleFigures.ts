import { wavelength } from '../lib/design/laser.ts';
import { material } from '../lib/design/material.ts';
import { firstMicrograph, otherMicrograph } from '../lib/design/micrographs.ts';
import { periodsByIncidence, periodsByWavelength } from '../lib/design/rippleCharts.ts';
import { expectedPeriods } from '../lib/design/rippleDirection.ts';
import { incidence } from '../lib/design/rippleInputs.ts';
import { boundWave, ripplePeriod, rippleSample } from '../lib/design/ripples.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { sampleById } from '../lib/materials/opticalConstants.ts';
import type { RipplePicture } from '../lib/measured/ripplePicture.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { type PeriodCurve, spreadOfCurves } from '../lib/process/rippleCurves.ts';
import { measuredRange, publishedRipples } from '../lib/process/ripplePoints.ts';
import { largest } from './columns.ts';
import { type FigureSpec, figure, type MarkSpec, type SeriesSpec } from './document.ts';

const nano = 1e9;
const degree = 180 / Math.PI;
const [shortest, longest] = [250, 1250];

/** Several curves one after the other, a gap behind each; only where `holds`. */
function joined(
  curves: readonly PeriodCurve[],
  holds: (curve: PeriodCurve, i: number) => boolean,
): Pick<SeriesSpec, 'x' | 'y'> {
  const column = (of: (curve: PeriodCurve) => Float64Array) =>
    Float64Array.from(
      curves.flatMap((curve) => [
        ...Array.from(of(curve), (value, i) => (holds(curve, i) ? nano * value : Number.NaN)),
        Number.NaN,
      ]),
    );
  return { x: column((curve) => curve.wavelength), y: column((curve) => curve.period) };
}

const nanometres = (values: Float64Array) => values.map((value) => nano * value);

/** The model's curves: of the sample in use, of the others, and where no wave is bound. */
function modelSeries(curves: readonly PeriodCurve[], own: string): SeriesSpec[] {
  const mine = curves.filter(({ sample }) => sample === own);
  const others = curves.filter(({ sample }) => sample !== own);
  const bound = ({ bound }: PeriodCurve, i: number) => bound[i]!;
  const spread = spreadOfCurves(curves);
  const series: SeriesSpec[] = [
    {
      label: 'between the samples',
      role: 'second',
      x: nanometres(spread.wavelength),
      y: nanometres(spread.low),
      y2: nanometres(spread.high),
    },
    { label: 'model, no wave bound', role: 'reference', ...joined(curves, (curve, i) => !bound(curve, i)) },
    { label: 'model, other samples', role: 'second', ...joined(others, bound) },
    {
      label: own === '' ? 'model' : `model, ${sampleById(own).name}`,
      role: 'main',
      ...joined(mine, bound),
    },
  ];
  return series.filter(({ y }) => y.some((value) => !Number.isNaN(value)));
}

/** Published points as marks, each with its material: the summary says that they are published. */
const publishedMarks: readonly MarkSpec[] = publishedRipples.map(
  ({ material, wavelength, ambientIndex, periodOverWavelength }) => ({
    kind: 'point',
    x: nano * wavelength,
    y: nano * wavelength * periodOverWavelength,
    label: `${material}${ambientIndex > 1 ? ' in water' : ''}`,
    role: 'reference',
  }),
);

/** The period measured in a micrograph, where it is known as a length. */
function measuredMark(
  letter: string,
  found: RipplePicture | null,
  pitch: number | null,
): MarkSpec | undefined {
  if (!found?.main || pitch === null) return undefined;
  const period = found.main.period * pitch;
  const label = `micrograph ${letter}, ${formatReadable(period, 'm', 'nm')}`;
  return { kind: 'point', y: nano * period, label, role: 'reference' };
}

/** Period against wavelength: the model for every sample, the wavelength itself, what is measured, and today. */
export const periodWavelengthFigure = figure({
  id: 'period-wavelength',
  from: {
    curves: periodsByWavelength,
    sample: rippleSample,
    material,
    wavelength,
    period: ripplePeriod,
    bound: boundWave,
    foundA: firstMicrograph.foundIfThere,
    pitchA: firstMicrograph.knownPitch,
    foundB: otherMicrograph.foundIfThere,
    pitchB: otherMicrograph.knownPitch,
  },
  view: ({ curves, sample, material: id, wavelength, period, bound, ...micrographs }): FigureSpec => {
    const { foundA, pitchA, foundB, pitchB } = micrographs;
    const measured = [measuredMark('A', foundA, pitchA), measuredMark('B', foundB, pitchB)]
      .flatMap((mark) => mark ?? [])
      .map((mark) => ({ ...mark, x: nano * wavelength }));
    const x = Float64Array.of(shortest, longest);
    const [low, high] = measuredRange;
    const model = modelSeries(curves, sample);
    const points = Float64Array.of(nano * period, ...measured.map(({ y }) => y!));
    const top = Math.min(3 * longest, largest(x, points, ...model.map(({ y }) => y)));
    const shown = shownValue(ripplePeriod, { value: period });
    const samples =
      curves.length === 1
        ? 'The curve is that of one sample, over'
        : `The curves are those of ${curves.length} samples, each over`;
    return {
      title: 'Period against the wavelength',
      x: { label: 'wavelength in vacuum', unit: 'nm', domain: [shortest, longest] },
      y: { label: 'period of the ripples', unit: 'nm', domain: [0, niceEnd(1.02 * top)] },
      series: [
        {
          label: 'mostly measured at normal incidence in air',
          role: 'band',
          x,
          y: x.map((at) => low * at),
          y2: x.map((at) => high * at),
        },
        { label: 'the wavelength itself', role: 'third', x, y: x },
        ...model,
      ],
      marks: [
        ...publishedMarks,
        ...measured,
        { kind: 'point', x: nano * wavelength, y: nano * period, label: `today, ${shown}`, role: 'today' },
      ],
      summary: `At ${formatReadable(wavelength, 'm', 'nm')} the model gives ${shown}${bound ? '' : ', though no wave is bound to this surface there and the number predicts nothing'}. ${curves.length === 0 ? `No optical constants of ${material.options[id]} are kept here.` : `${samples} the wavelengths at which it was measured.`} Ripples at normal incidence in air are mostly measured at 0.70 to 0.95 of the wavelength, whatever the model says. Points with the name of a material are published periods.${measured.length > 0 ? ` Measured: ${measured.map(({ label }) => label).join('; ')}.` : ''}`,
    };
  },
});

/** Period against the angle of incidence, both branches, with today's angle. */
export const periodIncidenceFigure = figure({
  id: 'period-incidence',
  from: {
    curves: periodsByIncidence,
    wavelength,
    incidence,
    period: ripplePeriod,
    bound: boundWave,
    expected: expectedPeriods,
  },
  view: ({ curves: { angle, short, long, across }, wavelength, incidence, period, bound }): FigureSpec => {
    // Beyond three wavelengths the longer branch runs off: nothing is measured there.
    const top = 3 * wavelength * nano;
    const curve = (label: string, role: SeriesSpec['role'], y: Float64Array): SeriesSpec => ({
      label,
      role: bound ? role : 'reference',
      x: angle.subarray(0, y.length).map((theta) => theta * degree),
      y: y.map((at) => (nano * at <= top ? nano * at : Number.NaN)),
    });
    const shown = shownValue(ripplePeriod, { value: period });
    return {
      title: 'Period against the angle of incidence',
      x: { label: 'angle of incidence, in air', unit: '°', domain: [0, 80] },
      y: { label: 'period of the ripples, as modelled', unit: 'nm', domain: [0, niceEnd(top)] },
      series: [
        curve('p polarisation, against the light', 'main', short),
        curve('p polarisation, with the light', 'second', long),
        curve('s polarisation', 'third', across),
      ],
      marks: [
        {
          kind: 'point',
          x: incidence * degree,
          y: nano * period,
          label: `today, ${shown}`,
          role: 'today',
        },
      ],
      summary: `Today, at ${formatReadable(incidence, 'rad', 'deg', 3)}, the model gives ${shown}. In p polarisation the period parts in two as the workpiece is tilted, a shorter one from the wave that runs against the light and a longer one from the wave with it, drawn up to three wavelengths; in s polarisation there is one, longer than at normal incidence.${bound ? '' : ' No wave is bound to this surface: these curves predict nothing.'}`,
    };
  },
});
