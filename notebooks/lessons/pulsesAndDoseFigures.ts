import { focusRadius } from '../../lib/design/focus.ts';
import { unshapedAsked } from '../../lib/design/marks.ts';
import { unshapedSpotDiameter } from '../../lib/design/pulsesOnPlace.ts';
import { lineSpacing, pulseSpacing } from '../../lib/design/scanInputs.ts';
import { thresholdFluence } from '../../lib/design/threshold.ts';
import { unshapedPeakFluence } from '../../lib/design/unshaped.ts';
import type { Spot } from '../../lib/optics/askedSpot.ts';
import { circles, points } from '../circles.ts';
import { micro } from '../columns.ts';
import { type FigureSpec, figure } from '../document.ts';
import { lengthText, percentText } from '../shortTexts.ts';

/** Places of pulses along a line, in pulse spacings from the middle, to both sides. */
const around = (count: number) => Array.from({ length: 2 * count + 1 }, (_, i) => i - count);

/** One pulse after the other along a line, to scale: circles at 1/e². */
export const pulsesOnLineFigure = figure({
  id: 'pulses-on-line',
  from: { diameter: unshapedSpotDiameter, spacing: pulseSpacing },
  view: ({ diameter, spacing }): FigureSpec => {
    const [wide, step] = [micro * diameter, micro * spacing];
    const count = Math.ceil(wide / step);
    const end = 1.6 * wide;
    const all = around(count).map((i) => ({ x: i * step, y: 0, diameter: wide }));
    return {
      title: 'Pulses along a line, to scale',
      x: { label: 'along the line', unit: 'µm', domain: [-end, end] },
      y: { label: 'across it', unit: 'µm', domain: [-0.7 * wide, 0.7 * wide] },
      equalScale: true,
      series: [
        { label: 'one pulse, 1/e² circle', role: 'main', ...circles(all.filter(({ x }) => x === 0)) },
        {
          label: 'the pulses before and after',
          role: 'reference',
          ...circles(all.filter(({ x }) => x !== 0)),
        },
        { label: 'centres', role: 'second', ...points(all) },
      ],
      summary: `Each circle is one pulse, drawn where its fluence has fallen to 13.5 % of the peak. From one to the next the spot moves by ${lengthText(spacing)}.`,
    };
  },
});

interface Shares {
  readonly spot: Spot;
  readonly radius: number;
  readonly spacing: number;
}

function drawShares({ spot, radius, spacing }: Shares): FigureSpec {
  const count = Math.ceil((1.8 * radius) / spacing);
  const share = (x: number) => (100 * spot.irradianceAt(x, 0)) / spot.peak;
  const places = around(count).map((i) => ({ x: micro * i * spacing, y: share(i * spacing) }));
  const end = micro * 1.8 * radius;
  const x = Float64Array.from({ length: 121 }, (_, i) => end * (i / 60 - 1));
  return {
    title: 'What each pulse of a line brings to the place in the middle',
    x: { label: 'distance of the pulse from the place', unit: 'µm', domain: [-end, end] },
    y: { label: 'fluence at the place, of the peak', unit: '%', domain: [0, 105] },
    series: [
      { label: 'pulses', role: 'main', ...points(places) },
      { label: 'the spot', role: 'reference', x, y: x.map((at) => share(at / micro)) },
    ],
    summary: `A pulse right on the place brings its whole peak, one ${lengthText(radius)} away (the 1/e² radius) brings ${Math.round(share(radius))}\u202f%. The pulses lie ${lengthText(spacing)} apart.`,
  };
}

const shares = { spot: unshapedAsked, radius: focusRadius, spacing: pulseSpacing };

/** What each pulse of a line brings to one place on it. */
export const sharesFigure = figure({ id: 'shares', from: shares, view: (values) => drawShares(values) });

/** The same with the threshold: the pulses above it act. */
export const sharesAboveFigure = figure({
  id: 'shares-above',
  from: { ...shares, peak: unshapedPeakFluence, threshold: thresholdFluence },
  view: ({ peak, threshold, ...values }): FigureSpec => ({
    ...drawShares(values),
    title: 'Which pulses of a line are above the threshold',
    marks: [{ kind: 'horizontal', y: (100 * threshold) / peak, label: 'threshold', role: 'reference' }],
    summary: `The threshold lies at ${percentText(threshold / peak, 2)} of the peak. Pulses above the line act on the place, those below do not.`,
  }),
});

/** Lines of a field with the spot on the middle one, to scale. */
export const linesFigure = figure({
  id: 'lines',
  from: { diameter: unshapedSpotDiameter, spacing: pulseSpacing, lines: lineSpacing },
  view: ({ diameter, spacing, lines }): FigureSpec => {
    const wide = micro * diameter;
    const end = 0.8 * wide;
    const columns = Math.floor(end / (micro * spacing));
    const rows = Math.floor(end / (micro * lines));
    const centres = around(rows).flatMap((row) =>
      around(columns).map((i) => ({ x: i * micro * spacing, y: row * micro * lines })),
    );
    return {
      title: 'Pulses of a field, to scale',
      x: { label: 'along the lines', unit: 'µm', domain: [-end, end] },
      y: { label: 'across them', unit: 'µm', domain: [-end, end] },
      equalScale: true,
      series: [
        { label: 'one pulse, 1/e² circle', role: 'main', ...circles([{ x: 0, y: 0, diameter: wide }]) },
        { label: 'centres of pulses', role: 'second', ...points(centres) },
      ],
      summary: `Along a line the pulses lie ${lengthText(spacing)} apart, the lines ${lengthText(lines)}. The circle is one pulse at 1/e².`,
    };
  },
});
