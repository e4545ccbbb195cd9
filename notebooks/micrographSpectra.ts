import { max } from 'd3';
import { counterClockwise } from '../lib/design/micrographResults.ts';
import { firstMicrograph, otherMicrograph } from '../lib/design/micrographs.ts';
import { formatReadable } from '../lib/graph/units.ts';
import type { RipplePeriod } from '../lib/measured/ripplePeriods.ts';
import type { RipplePicture } from '../lib/measured/ripplePicture.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest } from './columns.ts';
import { type FigureSpec, figure, figures, type MarkSpec } from './document.ts';
import { bothPictures, type Shown, shownOf, upwards } from './micrographFigures.ts';
import { angleText } from './shortTexts.ts';

/** Powers below this share of the highest are not told apart. */
const leastPower = 1e-4;

/** Where the wave vector of ripples lies, y upwards. */
function waveVector({ perPixel, unit }: Shown, found: RipplePeriod, words: string): MarkSpec {
  const angle = counterClockwise(found.direction);
  const period = found.period * perPixel;
  return {
    kind: 'point',
    x: Math.cos(angle) / period,
    y: Math.sin(angle) / period,
    label: `${words}, ${unit === 'px' ? formatReadable(period, '1', 'px', 3) : formatReadable(period, 'um', 'nm')}`,
    role: 'today',
  };
}

/** The power spectra that the periods were read from, about frequency 0. */
export const spectrumFigures = figures({
  id: 'micrograph-spectra',
  from: bothPictures,
  view: (values): readonly FigureSpec[] =>
    shownOf(values).map((shown) => {
      const { letter, found, perPixel, unit } = shown;
      const { reach, step, values: powers } = found.spectrum;
      const end = (reach * step) / perPixel;
      const axis = (label: string) => ({ label, unit: `1/${unit}`, domain: [-end, end] as const });
      const side = 2 * reach + 1;
      const { main, second } = found;
      const highest = max(powers)!;
      return {
        title: `Power spectrum of micrograph ${letter}`,
        x: axis('periods along x'),
        y: axis('periods along y, upwards'),
        equalScale: true,
        series: [],
        marks: [
          ...(main ? [waveVector(shown, main, 'ripples')] : []),
          ...(second ? [waveVector(shown, second, 'second period')] : []),
        ],
        map: {
          columns: side,
          rows: side,
          values: upwards(powers, side),
          // A blank picture has no power but that of rounding, which is none to be drawn.
          perValue: found.without?.kind === 'blank' ? 1 : 1 / highest,
          range: [leastPower, 1],
          logarithmic: true,
          label: 'power over the highest',
          unit: '1',
        },
        summary: `${main ? `At the wave vector the power is ${formatReadable(main.overBackground, '1', '1', 2)} times that of other directions at the same period.` : 'Nothing in it counts as ripples.'} Mean over ${found.tile.count} windowed tiles of ${found.tile.size} pixels; every point has a twin at the other side of 0, as in the spectrum of any picture.`,
      };
    }),
});

/** Bins of the histogram that make a degree. */
const perDegree = 4;

/** Share of the gradients in % a degree, over the angles counter-clockwise. */
function orientationCurve({ orientation: { histogram } }: RipplePicture) {
  const degrees = histogram.length / perDegree;
  const x = Float64Array.from({ length: degrees }, (_, i) => i + 0.5);
  const y = x.map((_, i) => {
    // The histogram counts clockwise.
    const first = histogram.length - perDegree * (i + 1);
    return 100 * histogram.subarray(first, first + perDegree).reduce((sum, share) => sum + share, 0);
  });
  return { x, y };
}

/** How the local orientation is distributed, of both pictures on the same axes. */
export const orientationFigure = figure({
  id: 'micrograph-orientation',
  needs: [firstMicrograph.found],
  from: { foundA: firstMicrograph.found, foundB: otherMicrograph.foundIfThere },
  view: ({ foundA, foundB }): FigureSpec => {
    const pictures = [
      { letter: 'A', role: 'main', found: foundA } as const,
      ...(foundB ? [{ letter: 'B', role: 'second', found: foundB } as const] : []),
    ];
    const curves = pictures.map((one) => ({ ...one, ...orientationCurve(one.found) }));
    const said = pictures.map(({ letter, found: { orientation } }) => {
      // Gradients all along one line give 1, those without a direction come near 0.
      if (orientation.resultant < 0.1) return `In micrograph ${letter} no direction stands out.`;
      const at = `Micrograph ${letter} is oriented most at ${angleText(counterClockwise(orientation.direction))}`;
      return orientation.halfWidth === undefined
        ? `${at}, without falling to half anywhere.`
        : `${at}, with a half-width of ${angleText(orientation.halfWidth)}.`;
    });
    return {
      title: 'Local orientation of the gradients',
      x: { label: 'direction, counter-clockwise from the picture’s x axis', unit: '°', domain: [0, 180] },
      y: {
        label: 'share of the gradients by size, per degree',
        unit: '%',
        domain: [0, niceEnd(1.05 * Math.max(0.1, largest(...curves.map(({ y }) => y))))],
      },
      series: curves.map(({ letter, role, x, y }) => ({ label: `micrograph ${letter}`, role, x, y })),
      summary: `${said.join(' ')} Smoothed over ${formatReadable(foundA.orientation.smoothing, '1', 'px')}.`,
    };
  },
});
