import { depthByLayer, turns } from '../lib/design/engravingCharts.ts';
import { engravingFloor } from '../lib/design/engravingFloor.ts';
import { engravingLayers, wantedDepth } from '../lib/design/grooveInputs.ts';
import { hatchAngle } from '../lib/design/scannerInputs.ts';
import { formatNumber } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import type { ChoicesSpec } from './choicesSpec.ts';
import { largest, micro } from './columns.ts';
import { choices, type FigureSpec, figure } from './document.ts';
import { fineText, nothingEngraved } from './engravingSentences.ts';
import { angleText, lengthText } from './shortTexts.ts';

const counted = (layers: number) => (layers === 1 ? '1 layer' : `${formatNumber(layers, 5)} layers`);

/** Depth against layers, with the plate and without, and the depth wanted. */
export const depthByLayerFigure = figure({
  id: 'depth-by-layer',
  from: { curves: depthByLayer, layers: engravingLayers, wanted: wantedDepth },
  view: ({ curves: { shaped, plain }, layers, wanted }): FigureSpec => {
    const set = Math.round(layers);
    const lastLayer = Math.max(set, shaped.layers.at(-1)!);
    const within = plain?.layers.filter((layer) => layer <= lastLayer);
    const plainDepth = plain && within && plain.depth.subarray(0, within.length);
    const top = largest(shaped.depth, plainDepth ?? new Float64Array(0), Float64Array.of(wanted));
    const toMicro = (depth: Float64Array) => depth.map((value) => micro * value);
    const series = [
      { label: 'with the plate', role: 'main' as const, x: shaped.layers, y: toMicro(shaped.depth) },
    ];
    const reference =
      within && plainDepth
        ? [{ label: 'plate taken out', role: 'reference' as const, x: within, y: toMicro(plainDepth) }]
        : [];
    const others =
      plainDepth && plainDepth.length > 0
        ? ` With the plate taken out it is ${lengthText(plainDepth.at(-1)!)} after ${counted(within!.at(-1)!)}.`
        : '';
    return {
      title: 'Depth layer by layer',
      x: { label: 'layers', unit: '1', domain: [0, niceEnd(lastLayer)] },
      y: { label: 'mean depth', unit: 'µm', domain: [0, niceEnd(1.05 * micro * top)] },
      series: [...series, ...reference],
      marks: [
        { kind: 'vertical', x: set, label: 'set', role: 'today' },
        { kind: 'horizontal', y: micro * wanted, label: 'wanted', role: 'reference' },
      ],
      summary: `With the plate the mean depth is ${lengthText(shaped.depth.at(-1)!)} after ${counted(shaped.layers.at(-1)!)}.${others} Set ${set === 1 ? 'is' : 'are'} ${counted(set)}, and ${lengthText(wanted)} wanted.`,
    };
  },
});

/** The floor on its patch. */
export const floorFigure = figure({
  id: 'engraving-floor',
  from: { floor: engravingFloor, layers: engravingLayers },
  view: ({ floor: { patch, depth, rms, highestToLowest, mean }, layers }): FigureSpec => {
    const low = depth.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY);
    const half = (micro * patch.side) / 2;
    // A floor that is the same everywhere still needs a scale of some length.
    const high = highestToLowest > 1e-6 * mean ? low + highestToLowest : Math.max(1.001 * low, 1e-9);
    return {
      title: 'Floor of the engraving',
      x: { label: 'along the first lines', unit: 'µm', domain: [-half, half] },
      y: { label: 'across the first lines', unit: 'µm', domain: [-half, half] },
      equalScale: true,
      series: [],
      map: {
        columns: patch.points,
        rows: patch.points,
        values: depth,
        perValue: micro,
        range: [micro * low, micro * high],
        label: 'depth below the fresh surface',
        unit: 'µm',
      },
      summary: `A patch ${lengthText(patch.side)} wide after ${counted(Math.round(layers))}, a quarter of the field from its middle, seen at points ${lengthText(patch.side / (patch.points - 1), 2)} apart. It lies ${lengthText(mean)} deep on the mean, with a roughness of ${fineText(rms)} and ${fineText(highestToLowest)} from its highest to its lowest point. The colours span only these, not the depth from 0.`,
    };
  },
  shape: 'tall',
});

/** After how many layers lines lie in their first direction again. */
function comesBackSaid(turn: number): string {
  for (let layers = 1; layers <= mostCounted; layers++) {
    const off = (layers * turn) % Math.PI;
    if (Math.min(off, Math.PI - off) > alike) continue;
    return layers === 1
      ? 'Lines lie in the same direction in every layer.'
      : `Lines lie in their first direction again after ${formatNumber(layers, 5)} layers.`;
  }
  return `Lines do not lie in their first direction again within ${mostCounted} layers.`;
}
const mostCounted = 1000;

/** Turns closer than this are one, rad. */
const alike = 1e-6;
const turnText = (turn: number) => angleText(turn < alike ? 0 : turn, 4);

/** Turns to choose from. */
export const turnsTable = choices({
  id: 'engraving-turns',
  from: { turns, set: hatchAngle, layers: engravingLayers },
  view: ({ turns: { turn, roughness, highestToLowest }, set, layers }): ChoicesSpec => ({
    caption: `Roughness after ${counted(Math.round(layers))}, turned from layer to layer`,
    columns: ['turn', 'roughness Sq', 'highest to lowest'],
    rows: Array.from(turn, (angle, i) => ({
      key: Math.round(angle * 1e6),
      name: turnText(angle),
      does: `Turn the hatch by ${turnText(angle)} from layer to layer`,
      cells: [roughness, highestToLowest].map((values) =>
        largest(roughness) === 0 ? '—' : fineText(values[i]!),
      ),
      more: [],
      about: comesBackSaid(angle),
      patch: { [hatchAngle.id]: angle },
      chosen: Math.abs(angle - set) < alike,
    })),
    summary: `${largest(roughness) === 0 ? `${nothingEngraved} ` : ''}All else as it is set. The turn is also that of the field on the page Throughput, from pass to pass.`,
    hint: 'Choosing a turn sets it.',
  }),
});
