import { chosenFit, type ThresholdFit } from '../lib/design/chosenFit.ts';
import { fitModel, fittedFluence, fittedMarks, gaussianFit, planeFit } from '../lib/design/fits.ts';
import { handbookRange } from '../lib/design/material.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import type { SpotMark } from '../lib/process/spotMark.ts';
import { points } from './circles.ts';
import { largest, micro, squaredDiameter } from './columns.ts';
import { type AxisSpec, type Block, type FigureSpec, figure, type SeriesSpec } from './document.ts';
import {
  fitSaid,
  fittedPlaneSaid,
  fittedRadiusSaid,
  fitVerdictSaid,
  gaussianInsteadSaid,
} from './fitSentences.ts';
import { incubationFitBlocks } from './incubationFit.ts';
import { math, prose, sets } from './prose.ts';
import { energyText } from './shortTexts.ts';

type Point = readonly [x: number, y: number];

function columnsOf(points: readonly Point[]): Pick<SeriesSpec, 'x' | 'y'> {
  return {
    x: Float64Array.from(points, ([x]) => x),
    y: Float64Array.from(points, ([, y]) => y),
  };
}

const gap: Point = [Number.NaN, Number.NaN];

/** Points that are drawn one by one. */
const apart = (all: readonly Point[]) => points(all.map(([x, y]) => ({ x, y })));

/** Marks and what the fit predicts for each, ascending in energy, a run for each z. */
function fittedLine(
  marks: readonly SpotMark[],
  { residuals, thresholdEnergy }: ThresholdFit,
  straight: boolean,
): readonly Point[] {
  const predicted = new Map(residuals.map(({ row, area }) => [row, area]));
  const planes = [...new Set(marks.map(({ z }) => z))];
  // A straight line begins at the threshold; any other is known at the marks alone.
  const starts = straight && planes.length === 1 && thresholdEnergy;
  const start: Point[] = starts ? [[thresholdEnergy * micro, 0]] : [];
  return planes.flatMap((z) => [
    ...start,
    ...marks
      .filter((mark) => mark.z === z && predicted.has(mark.row))
      .map((mark): Point => [mark.energy * micro, squaredDiameter(predicted.get(mark.row)!)])
      .sort(([a], [b]) => a - b),
    gap,
  ]);
}

function energyAxis(points: readonly Point[]): AxisSpec {
  const energies = points.map(([x]) => x).filter(Number.isFinite);
  return {
    label: 'pulse energy, as in the table',
    unit: 'µJ',
    domain: [0.9 * Math.min(...energies), 1.1 * Math.max(...energies)],
    logarithmic: true,
  };
}

/** Squared diameters against energy, with the fitted line. */
export const fitFigure = figure({
  id: 'fit',
  needs: [chosenFit],
  from: { fit: chosenFit, marks: fittedMarks, model: fitModel },
  view: ({ fit, marks, model }): FigureSpec => {
    const seen = marks
      .filter(({ area }) => area > 0)
      .map(({ energy, area }): Point => [energy * micro, squaredDiameter(area)]);
    const empty = marks.filter(({ area }) => area === 0).map(({ energy }): Point => [energy * micro, 0]);
    const line = fittedLine(marks, fit, model === 'gaussian');
    const energy = fit.thresholdEnergy;
    return {
      title: 'Squared diameter of the marks against pulse energy',
      x: energyAxis([...seen, ...empty, ...line, ...(energy ? [[energy * micro, 0] as const] : [])]),
      y: {
        label: 'D², diameter of a disc with the area of the mark, squared',
        unit: 'µm²',
        domain: [0, niceEnd(1.05 * largest(columnsOf([...seen, ...line]).y))],
      },
      series: [
        { label: 'measured', role: 'main', ...apart(seen) },
        { label: 'fitted', role: 'second', ...columnsOf(line) },
        ...(empty.length > 0 ? [{ label: 'no mark seen', role: 'third', ...apart(empty) } as const] : []),
      ],
      marks: energy
        ? [
            {
              kind: 'vertical',
              x: energy * micro,
              label: `threshold energy, ${energyText(energy)}`,
              role: 'reference',
            },
          ]
        : [],
      summary: `${seen.length} marks${empty.length > 0 ? ` and ${empty.length} places without one` : ''}; the fit puts the threshold at ${shownValue(fittedFluence, { value: fit.thresholdFluence })}. The marks of a Gaussian lie on a straight line.`,
    };
  },
});

/** Standard deviations between which 95 % of the deviations lie. */
const usual = 1.96;

/** Deviations of the marks from the fit. */
export const residualFigure = figure({
  id: 'residuals',
  needs: [chosenFit],
  from: { fit: chosenFit, marks: fittedMarks },
  view: ({ fit, marks }): FigureSpec => {
    const energyOf = new Map(marks.map(({ row, energy }) => [row, energy * micro]));
    const points = fit.residuals.map(({ row, standardised }): Point => [energyOf.get(row)!, standardised]);
    const reach = Math.max(3, niceEnd(1.05 * points.reduce((most, [, y]) => Math.max(most, Math.abs(y)), 0)));
    const x = energyAxis(points);
    const far = fit.residuals.filter(({ standardised }) => Math.abs(standardised) > 3);
    const rows = far.map(({ row }) => row).join(', ');
    return {
      title: 'Deviations of the marks from the fit',
      x,
      y: { label: 'deviation of the area, in standard deviations', unit: '1', domain: [-reach, reach] },
      series: [
        { label: 'measured less fitted', role: 'main', ...apart(points) },
        {
          label: 'where 95\u202f% of them belong',
          role: 'band',
          x: Float64Array.from(x.domain),
          y: Float64Array.of(-usual, -usual),
          y2: Float64Array.of(usual, usual),
        },
      ],
      summary: `${far.length === 0 ? 'No mark lies' : far.length === 1 ? `The mark in row ${rows} lies` : `The marks in rows ${rows} lie`} more than three standard deviations from the fit${far.length === 0 ? '.' : ': look at it again, and leave it out only with a reason.'}`,
    };
  },
});

/** A threshold of one's own from measured spots. */
export const fitBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'fits',
    needs: [fittedMarks],
    prose: prose`
      ## A threshold of your own

      Marks made without the plate are fitted with ${math`D^2 = 2w^2\ln(E/E_\text{th})`}, which gives the 1/e² radius *w* of the beam and the energy ${math`E_\text{th}`} from which on marks appear; the peak fluence at that energy is the threshold. Marks made with the plate are fitted with the area that the predicted profile has above each level, without taking it for a Gaussian (M. Garcia-Lechuga & D. Grojo, Open Res. Europe 1:7 (2021)); if it is not certain in which plane they were made, with that free as well.
    `,
  },
  {
    kind: 'controls',
    id: 'fit-controls',
    heading: 'What the marks are fitted with',
    needs: [fittedMarks],
    inputs: [fitModel],
  },
  {
    kind: 'prose',
    id: 'fit-said',
    needs: [fittedMarks],
    prose: prose`
      ${fitSaid} ${fitVerdictSaid}

      ${sets('Let this threshold count', { 'threshold.source': 'fitted' })}, or ${sets('the handbook’s', { 'threshold.source': 'handbook' }, { there: handbookRange })}.
    `,
  },
  {
    kind: 'prose',
    id: 'fitted-radius',
    when: { choice: fitModel, is: 'gaussian' },
    needs: [gaussianFit],
    prose: prose`${fittedRadiusSaid}`,
  },
  {
    kind: 'prose',
    id: 'fitted-plane',
    when: { choice: fitModel, is: 'profileAndPlane' },
    needs: [planeFit],
    prose: prose`${fittedPlaneSaid}`,
  },
  fitFigure,
  residualFigure,
  { kind: 'prose', id: 'gaussian-instead', needs: [fittedMarks], prose: prose`${gaussianInsteadSaid}` },
  ...incubationFitBlocks,
];
