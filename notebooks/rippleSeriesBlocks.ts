import { expectedPeriods } from '../lib/design/rippleDirection.ts';
import { rippleSeries, seriesPlaces } from '../lib/design/rippleSeries.ts';
import { boundWave, ripplePeriod } from '../lib/design/ripples.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest, perSquareCentimetre } from './columns.ts';
import { type Block, type FigureSpec, figure } from './document.ts';
import { prose } from './prose.ts';
import { seriesRowsSaid, seriesSaid } from './rippleSeriesSentences.ts';

const nano = 1e9;
/** Measured periods against pulses or fluence, over the band that is expected. */
export const seriesFigure = figure({
  id: 'series-figure',
  needs: [seriesPlaces],
  from: {
    series: rippleSeries,
    places: seriesPlaces,
    expected: expectedPeriods,
    model: ripplePeriod,
    bound: boundWave,
  },
  view: ({ series, places, expected, model, bound }): FigureSpec => {
    const { against, setting, name } = series!;
    const pulses = against === 'pulses';
    const x = setting.map((value) => (pulses ? value : value * perSquareCentimetre));
    const [least, most] = [Math.min(...x), Math.max(...x)];
    const [from, to] = pulses ? [Math.max(0.5, least / 1.5), most * 1.5] : [0, niceEnd(1.1 * most)];
    const ends = Float64Array.of(from, to);
    const level = (period: number) => Float64Array.of(nano * period, nano * period);
    const apart = (values: readonly number[]) =>
      Float64Array.from(values.flatMap((value) => [value, Number.NaN]));
    const measured = apart(places.map(({ period }) => nano * period));
    const inside = places.filter(({ place }) => place === 'inside').length;
    const top = largest(measured, level(expected.high), level(model));
    return {
      title: 'Measured periods over what is expected',
      x: {
        label: pulses ? 'pulses on a place' : 'fluence per pulse, as in the table',
        unit: pulses ? '1' : 'J/cm²',
        domain: [from, to],
        ...(pulses ? { logarithmic: true } : {}),
      },
      y: { label: 'period of the ripples', unit: 'nm', domain: [0, niceEnd(1.05 * top)] },
      series: [
        {
          label: 'expected',
          role: 'band',
          x: ends,
          y: level(expected.low),
          y2: level(expected.high),
        },
        { label: bound ? 'model' : 'model, no wave bound', role: 'reference', x: ends, y: level(model) },
        { label: 'measured', role: 'main', x: apart(x), y: measured },
      ],
      summary: `${places.length} ${places.length === 1 ? 'period' : 'periods'} of ${name}, ${inside} of them inside ${shownValue(expectedPeriods, { value: expected })}; the model gives ${shownValue(ripplePeriod, { value: model })}${bound ? '' : ', though no wave is bound to this surface and the number predicts nothing'}.`,
    };
  },
});

/** A series of one's own beside the prediction. */
export const seriesBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'own-series',
    prose: prose`
      ## Your own series

      Measure the period at several numbers of pulses, or fluences, and give it as a table: a header such as “N; period (nm)” or “fluence (J/cm²); period (nm)”, and a row a measurement. The points are set over what is expected.
    `,
  },
  { kind: 'controls', id: 'series-controls', heading: 'Measured periods', inputs: [rippleSeries] },
  {
    kind: 'prose',
    id: 'series-said',
    needs: [seriesPlaces],
    prose: prose`${seriesSaid} ${seriesRowsSaid}`,
  },
  seriesFigure,
];
