import { measuredSection } from '../lib/design/measuredSection.ts';
import { sectionPasses } from '../lib/design/sectionFile.ts';
import { sectionFit, sectionFitThere, todaysSection } from '../lib/design/sectionFit.ts';
import { todaysDepth } from '../lib/design/sectionResults.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { points } from './circles.ts';
import { largest, micro } from './columns.ts';
import { type FigureSpec, figure, type SeriesSpec } from './document.ts';
import { lengthText } from './shortTexts.ts';

/** Most places that are drawn as points; more lie closer than their rings. */
const mostRings = 150;

const nano = 1e9;

const inMicrometres = (column: Float64Array) => column.map((x) => x * micro);
/** Depths as heights below the surface; −0 would be written as such. */
const down = (depth: Float64Array) => depth.map((d) => 0 - d * micro);

function measuredSeries(position: Float64Array, depth: Float64Array): SeriesSpec {
  const [x, y] = [inMicrometres(position), down(depth)];
  const drawn =
    x.length > mostRings ? { x, y } : points(Array.from(x, (place, i) => ({ x: place, y: y[i]! })));
  return { label: 'measured', role: 'main', ...drawn };
}

/** The measured groove with those of today and of the fit over it. */
export const sectionFigure = figure({
  id: 'section-figure',
  needs: [measuredSection, todaysSection],
  from: {
    section: measuredSection,
    today: todaysSection,
    fit: sectionFitThere,
    passes: sectionPasses,
  },
  view: ({ section, today, fit, passes }): FigureSpec => {
    const measured = inMicrometres(section.position);
    const reach = Math.max(-measured[0]!, measured.at(-1)!);
    const drawn = [section.depth, today.depth, ...(fit ? [fit.fitted.depth] : [])];
    const deepest = niceEnd(1.05 * micro * largest(...drawn));
    const rise = section.rim > 0 ? niceEnd(1.2 * micro * section.rim) : 0;
    const deep = (depth: Float64Array) => shownValue(todaysDepth, { value: largest(depth) });
    const near = fit
      ? ` The fitted groove differs from the measured one by ${lengthText(fit.residual, 2)} (root mean square inside it).`
      : '';
    const count = Math.round(passes);
    return {
      title: 'The measured groove and the computed one',
      x: {
        label: 'distance across the line, from the middle of the groove',
        unit: 'µm',
        domain: [-reach, reach],
      },
      y: {
        label: 'height above the surface',
        unit: 'µm',
        domain: [-deepest, Math.max(rise, 0.05 * deepest)],
      },
      series: [
        measuredSeries(section.position, section.depth),
        {
          label: 'computed with the values of today',
          role: 'third',
          x: inMicrometres(today.y),
          y: down(today.depth),
        },
        ...(fit
          ? [
              {
                label: 'computed with the fitted values',
                role: 'second',
                x: inMicrometres(fit.fitted.y),
                y: down(fit.fitted.depth),
              } as const,
            ]
          : []),
      ],
      summary: `${section.position.length} measured places, the deepest ${deep(section.depth)} below the surface; with ${count} ${count === 1 ? 'pass' : 'passes'} and the values of today the model cuts ${deep(today.depth)} deep, and differs from the measured depths by ${lengthText(today.deviation, 2)} (root mean square over all of them).${near}`,
    };
  },
});

/** Noises between which 95 % of the deviations lie where noise is all there is. */
const usual = 1.96;

/** Measured less fitted height, where the two lie too near to each other to be told apart in one chart. */
export const sectionDeviationFigure = figure({
  id: 'section-deviations',
  needs: [sectionFit],
  from: { fit: sectionFit, section: measuredSection },
  view: ({ fit, section: { noise } }): FigureSpec => {
    const x = inMicrometres(fit.deviations.position);
    const y = fit.deviations.depth.map((d) => 0 - d * nano);
    const reach = niceEnd(1.05 * Math.max(largest(y), largest(y.map((d) => -d)), 3 * noise * nano));
    const half = Math.max(-x[0]!, x.at(-1)!);
    const beyond = y.filter((d) => Math.abs(d) > 3 * noise * nano).length;
    const places =
      beyond === 1 ? 'One place lies' : `${beyond === 0 ? 'No place lies' : `${beyond} places lie`}`;
    const shown =
      x.length > mostRings ? { x, y } : points(Array.from(x, (place, i) => ({ x: place, y: y[i]! })));
    return {
      title: 'Deviations of the measured groove from the fitted one',
      x: {
        label: 'distance across the line, from the middle of the groove',
        unit: 'µm',
        domain: [-half, half],
      },
      y: { label: 'measured less fitted height', unit: 'nm', domain: [-reach, reach] },
      series: [
        { label: 'measured less fitted', role: 'main', ...shown },
        {
          label: 'where noise alone leaves 95\u202f% of them',
          role: 'band',
          x: Float64Array.of(-half, half),
          y: Float64Array.of(-usual * noise * nano, -usual * noise * nano),
          y2: Float64Array.of(usual * noise * nano, usual * noise * nano),
        },
      ],
      summary: `${places} further from the fitted groove than three times the noise of the surface, ${lengthText(3 * noise, 2)}; places above the surface, which the fit leaves out, are not drawn.`,
    };
  },
});
