import { fittedMarks, gaussianFit } from '../../lib/design/fits.ts';
import { usedPulseEnergy } from '../../lib/design/losses.ts';
import { thresholdFluence } from '../../lib/design/threshold.ts';
import { fluenceWithoutPlate, unshapedProfile, unshapedWidth } from '../../lib/design/unshaped.ts';
import { niceEnd } from '../../lib/numerics/niceEnd.ts';
import type { SpotMark } from '../../lib/process/spotMark.ts';
import { points } from '../circles.ts';
import {
  fluenceColumn,
  largest,
  micro,
  perSquareCentimetre,
  squaredDiameter,
  symmetric,
} from '../columns.ts';
import { type AxisSpec, type FigureSpec, figure, type SeriesSpec } from '../document.ts';
import { energyText } from '../shortTexts.ts';

/** The plain beam at three energies against one threshold: the part above it widens. */
export const threeEnergiesFigure = figure({
  id: 'three-energies',
  from: {
    profile: unshapedProfile,
    unit: fluenceWithoutPlate,
    width: unshapedWidth,
    energy: usedPulseEnergy,
    threshold: thresholdFluence,
  },
  view: ({ profile, unit, width, energy, threshold }): FigureSpec => {
    const reach = niceEnd(1.6 * width * micro);
    const x = symmetric(reach, 201);
    const one = fluenceColumn(profile, unit, x);
    const times = (factor: number) => one.map((value) => factor * value);
    return {
      title: 'One spot at three energies',
      x: { label: 'distance from the axis', unit: 'µm', domain: [-reach, reach] },
      y: { label: 'fluence per pulse', unit: 'J/cm²', domain: [0, niceEnd(1.05 * largest(times(4)))] },
      series: [
        { label: energyText(energy), role: 'main', x, y: one },
        { label: energyText(2 * energy), role: 'second', x, y: times(2) },
        { label: energyText(4 * energy), role: 'third', x, y: times(4) },
      ],
      marks: [
        { kind: 'horizontal', y: threshold * perSquareCentimetre, label: 'threshold', role: 'reference' },
      ],
      summary: `The same spot with ${energyText(energy)}, with twice and with four times as much. Where a curve lies above the line of the threshold, the surface is marked.`,
    };
  },
});

/** ln of the energy in µJ. */
export const logOf = (energy: number) => Math.log(micro * energy);

/** Wide enough to the left for the line to meet zero, wherever it does. */
function logAxis(marks: readonly SpotMark[]): AxisSpec {
  const logs = marks.map(({ energy }) => logOf(energy));
  const low = Math.min(...logs) - 1.2;
  return { label: 'ln E, E in µJ', unit: '1', domain: [Math.min(-0.2, low), Math.max(...logs) + 0.3] };
}

function plotOf(marks: readonly SpotMark[]): { x: AxisSpec; y: AxisSpec; measured: SeriesSpec } {
  const places = marks.map(({ energy, area }) => ({ x: logOf(energy), y: squaredDiameter(area) }));
  const measured: SeriesSpec = { label: 'measured', role: 'main', ...points(places) };
  const end = niceEnd(1.05 * Math.max(...places.map(({ y }) => y)));
  return {
    x: logAxis(marks),
    y: { label: 'D², squared diameter of the mark', unit: 'µm²', domain: [0, end] },
    measured,
  };
}

const title = 'Squared diameter of the marks against ln E';

/** The marks alone: where their line meets zero is asked. */
export const marksFigure = figure({
  id: 'marks',
  from: { marks: fittedMarks },
  view: ({ marks }): FigureSpec => {
    const { x, y, measured } = plotOf(marks);
    return {
      title,
      x,
      y,
      series: [measured],
      summary: `${marks.length} marks, from ${energyText(Math.min(...marks.map(({ energy }) => energy)))} to ${energyText(Math.max(...marks.map(({ energy }) => energy)))}. They lie along a straight line.`,
    };
  },
});

const digits = (value: number, count: number) => String(Number(value.toPrecision(count)));

/** The marks with the fitted line, and two places on it, one apart in ln E, to read its rise. */
export const lineFigure = figure({
  id: 'line',
  from: { marks: fittedMarks, fit: gaussianFit },
  view: ({ marks, fit: { thresholdEnergy, beamRadius } }): FigureSpec => {
    const { x, y, measured } = plotOf(marks);
    const start = logOf(thresholdEnergy);
    const rise = 2 * (micro * beamRadius) ** 2;
    const end = x.domain[1];
    const first = start + 0.6;
    const read = [first, first + 1].map((at) => ({ x: at, y: rise * (at - start) }));
    return {
      title,
      x,
      y,
      series: [
        measured,
        {
          label: 'straight line through them',
          role: 'second',
          x: Float64Array.of(start, end),
          y: Float64Array.of(0, rise * (end - start)),
        },
      ],
      marks: read.map((place) => ({
        kind: 'point',
        ...place,
        label: `ln E = ${place.x.toFixed(2)}: D² = ${digits(place.y, 4)} µm²`,
        role: 'reference',
        above: true,
      })),
      summary: `The line meets zero at ln E = ${start.toFixed(2)}. At ${read[0]!.x.toFixed(2)} it stands at ${digits(read[0]!.y, 4)} µm², one further at ${digits(read[1]!.y, 4)} µm².`,
    };
  },
});
