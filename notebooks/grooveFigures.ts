import { firstGrooveCut, grooveCut, plainGrooveCut, secondGrooveCut } from '../lib/design/groove.ts';
import type { CutGroove } from '../lib/design/grooveCut.ts';
import { cuttingLaw } from '../lib/design/grooveLaw.ts';
import {
  firstKind,
  firstPeakFluence,
  ratioByPeak,
  secondKind,
  secondPeakFluence,
} from '../lib/design/groovePlanes.ts';
import { formatNumber } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest } from './columns.ts';
import { type FigureSpec, figure, figures, type SeriesSpec } from './document.ts';
import { angleText, lengthText } from './shortTexts.ts';

const micrometres = (metres: Float64Array) => metres.map((one) => 1e6 * one);
const heights = (depth: Float64Array) => depth.map((one) => -1e6 * one || 0);

/** Sections on the way to the last one, which stands out; level out to the ends of the axis. */
function sectionsOf({ y, sections }: CutGroove, half: number): SeriesSpec[] {
  const beyond = 1e6 * y.at(-1)! < half;
  const x = beyond ? Float64Array.of(-half, ...micrometres(y), half) : micrometres(y);
  return sections.map(({ passes, depth }, i) => ({
    label: passes === 1 ? 'after 1 pass' : `after ${passes} passes`,
    role: i === sections.length - 1 ? 'main' : 'reference',
    x,
    y: beyond ? Float64Array.of(0, ...heights(depth), 0) : heights(depth),
  }));
}

/** Half width and depth of the axes that hold all of these, µm. */
function axesOf(cuts: readonly CutGroove[]): { readonly half: number; readonly deep: number } {
  const half = 1e6 * Math.max(...cuts.map(({ shape }) => shape.topWidth));
  const deep = 1e6 * Math.max(...cuts.map(({ shape }) => shape.depth));
  return { half: niceEnd(0.9 * half), deep: niceEnd(1.05 * deep) };
}

function drawSection(title: string, cut: CutGroove, { half, deep }: ReturnType<typeof axesOf>): FigureSpec {
  const { shape } = cut;
  const passes = cut.sections.at(-1)!.passes;
  return {
    title,
    x: { label: 'place across the line', unit: 'µm', domain: [-half, half] },
    y: { label: 'height above the fresh surface', unit: 'µm', domain: [-deep, 0.06 * deep] },
    series: sectionsOf(cut, half),
    marks: [{ kind: 'horizontal', y: 0, label: 'fresh surface', role: 'reference' }],
    summary: `After ${passes === 1 ? 'one pass' : `${passes} passes`} ${lengthText(shape.depth)} deep and ${lengthText(shape.topWidth)} wide at the top; walls at ${angleText(shape.wallAngle)}, the middle ${formatNumber(shape.centreToMeanDepth, 3)} times as deep as the mean. Melt, recast and debris are not in it.`,
  };
}

/** Today's groove pass by pass. */
export const grooveSectionFigure = figure({
  id: 'groove-section',
  from: { cut: grooveCut },
  view: ({ cut }): FigureSpec =>
    drawSection('The groove on its way, with the plate where the workpiece lies', cut, axesOf([cut])),
});

/** The two planes and the plain beam on the same axes. */
export const grooveSideFigures = figures({
  id: 'groove-side-by-side',
  from: {
    first: firstGrooveCut,
    second: secondGrooveCut,
    plain: plainGrooveCut,
    firstKind,
    secondKind,
  },
  view: ({ first, second, plain, firstKind, secondKind }): readonly FigureSpec[] => {
    const axes = axesOf([first, second, plain]);
    return [
      drawSection(`First plane: ${firstKind}`, first, axes),
      drawSection(`Second plane: ${secondKind}`, second, axes),
      drawSection('Plate taken out, in its focus', plain, axes),
    ];
  },
});

/** Greatest depth after each pass. */
export const depthByPassFigure = figure({
  id: 'groove-depth-by-pass',
  from: { today: grooveCut, first: firstGrooveCut, second: secondGrooveCut, plain: plainGrooveCut },
  view: ({ today, first, second, plain }): FigureSpec => {
    const series = (label: string, role: SeriesSpec['role'], { deepest }: CutGroove): SeriesSpec => ({
      label,
      role,
      x: Float64Array.from(deepest, (_, pass) => pass),
      y: micrometres(deepest),
    });
    const last = today.deepest.length - 1;
    const most = Math.max(...[today, first, second, plain].map(({ deepest }) => largest(deepest, deepest)));
    const step = ({ deepest }: CutGroove, pass: number) => lengthText(deepest[pass]! - deepest[pass - 1]!);
    // Each its own last pass: while passes are dragged the plain groove is still that of fewer.
    const steps = (cut: CutGroove) => {
      const end = cut.deepest.length - 1;
      return end > 1 ? `${step(cut, 1)} and the last ${step(cut, end)}` : step(cut, 1);
    };
    return {
      title: 'Greatest depth, pass by pass',
      x: { label: 'passes', unit: '1', domain: [0, last] },
      y: { label: 'greatest depth', unit: 'µm', domain: [0, niceEnd(1.05e6 * most)] },
      series: [
        series('with the plate, today', 'main', today),
        series('first plane', 'second', first),
        series('second plane', 'third', second),
        series('plate taken out', 'reference', plain),
      ],
      summary: `With the plate, where the workpiece stands, the first pass cuts ${steps(today)}; without the plate ${steps(plain)}. A pass cuts less as walls steepen and the floor leaves its plane, more as earlier pulses lower the threshold (incubation).`,
    };
  },
});

/** Centre against mean depth of a shallow groove. */
export const ratioByPeakFigure = figure({
  id: 'groove-ratio-by-peak',
  from: {
    curve: ratioByPeak,
    law: cuttingLaw,
    first: firstPeakFluence,
    second: secondPeakFluence,
    firstKind,
    secondKind,
  },
  view: ({ curve, law, first, second, firstKind, secondKind }): FigureSpec => {
    const x = curve.ratio;
    const all = [curve.first, curve.second, curve.plain];
    const top = Math.max(2, ...all.map((values) => largest(values, values)));
    const marks = [['first plane today', first] as const, ['second plane today', second] as const].flatMap(
      ([label, peak]) => {
        const at = peak / law.incubation.first;
        const inside = at >= x[0]! && at <= x.at(-1)!;
        return inside ? [{ kind: 'vertical', x: at, label, role: 'today' } as const] : [];
      },
    );
    const at = (values: Float64Array, ratio: number) => {
      const next = x.findIndex((one) => one >= ratio);
      const part = (ratio - x[next - 1]!) / (x[next]! - x[next - 1]!);
      return formatNumber(values[next - 1]! + part * (values[next]! - values[next - 1]!), 3);
    };
    return {
      title: 'How much deeper the middle is, after one pass',
      x: {
        label: 'peak fluence over the threshold of one pulse',
        unit: '1',
        domain: [x[0]!, x.at(-1)!],
        logarithmic: true,
      },
      y: { label: 'depth in the middle over mean depth', unit: '1', domain: [0, niceEnd(1.05 * top)] },
      series: [
        { label: `first plane: ${firstKind}`, role: 'main', x, y: curve.first },
        { label: `second plane: ${secondKind}`, role: 'second', x, y: curve.second },
        { label: 'plate taken out', role: 'reference', x, y: curve.plain },
      ],
      marks: [{ kind: 'horizontal', y: 1, label: 'a level floor', role: 'reference' }, ...marks],
      summary: `At a peak of three thresholds the middle is ${at(curve.first, 3)} times as deep as the mean in the first plane, ${at(curve.second, 3)} times in the second and ${at(curve.plain, 3)} times without the plate; at twenty ${at(curve.first, 20)}, ${at(curve.second, 20)} and ${at(curve.plain, 20)}. The size of the focus does not matter here.`,
    };
  },
});
