import { expanderKind } from '../lib/design/expander.ts';
import { causticTable, measuredCaustic } from '../lib/design/measuredCaustic.ts';
import { beamSource, ratioSource } from '../lib/design/rawBeam.ts';
import { waistSource } from '../lib/design/waist.ts';
import { formatQuantity } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest } from './columns.ts';
import type { Condition } from './condition.ts';
import { type Block, type FigureSpec, figure, type MarkSpec } from './document.ts';
import {
  causticPlaceSaid,
  causticPointsSaid,
  causticRatioSaid,
  causticSaid,
  causticUseSaid,
} from './measuredSentences.ts';
import { prose } from './prose.ts';

/** While the design takes anything from the caustic. */
const when: readonly Condition[] = [
  { choice: ratioSource, is: 'measured' },
  { choice: beamSource, is: 'caustic' },
  { choice: waistSource, is: 'measured', and: { choice: expanderKind, is: 'lenses' } },
];

/** Ends of the z axis in metres: the points and, unless it is far away, the waist, with a margin. */
function rangeOfPlaces(z: readonly number[], waist: number): readonly [number, number] {
  const [low, high] = [Math.min(...z), Math.max(...z)];
  const span = high - low;
  const reach = waist > low - span && waist < high + span;
  const [from, to] = reach ? [Math.min(low, waist), Math.max(high, waist)] : [low, high];
  return [from - 0.04 * (to - from), to + 0.04 * (to - from)];
}

/** The values with a gap after each, so that they are drawn as points. */
function apart(values: readonly number[]): Float64Array {
  return Float64Array.from(values.flatMap((value) => [value, Number.NaN]));
}

const causticFigure = figure({
  id: 'caustic-figure',
  when,
  needs: [measuredCaustic],
  from: { table: causticTable, caustic: measuredCaustic },
  view: ({ table, caustic }): FigureSpec => {
    const { z, diameter } = table!;
    const [waist, width, rayleigh] = [
      caustic.waistPosition.value,
      caustic.waistDiameter.value,
      caustic.rayleighLength.value,
    ];
    const [from, to] = rangeOfPlaces(z, waist);
    const places = Float64Array.from({ length: 241 }, (_, i) => from + ((to - from) * i) / 240);
    const curve = places.map((place) => width * Math.hypot(1, (place - waist) / rayleigh));
    const unit = largest(curve, Float64Array.from(diameter)) < 2e-3 ? 'um' : 'mm';
    const [across, along] = [unit === 'um' ? 1e6 : 1e3, 1e3];
    const measured = apart(diameter.map((d) => d * across));
    const fitted = curve.map((d) => d * across);
    const shown = waist >= from && waist <= to;
    const show = (length: number, display: string) => formatQuantity(length, 'm', display);
    const mark = (place: number, label: string): MarkSpec => ({
      kind: 'vertical',
      x: place * along,
      label,
      role: 'reference',
    });
    return {
      title: 'The measured caustic',
      x: { label: 'place along the beam z', unit: 'mm', domain: [from * along, to * along] },
      y: {
        label: 'beam diameter',
        unit: unit === 'um' ? 'µm' : 'mm',
        domain: [0, niceEnd(1.05 * largest(measured, fitted))],
      },
      series: [
        { label: 'fitted hyperbola', role: 'main', x: places.map((place) => place * along), y: fitted },
        { label: 'measured', role: 'second', x: apart(z.map((place) => place * along)), y: measured },
      ],
      marks: [
        mark(waist - rayleigh, 'one Rayleigh length before'),
        mark(waist, 'waist'),
        mark(waist + rayleigh, 'one Rayleigh length behind'),
      ],
      summary: `The hyperbola is narrowest at z = ${show(waist, 'mm')}, ${show(width, unit)} in diameter, and √2 of that ${show(rayleigh, 'mm')} before and behind; the measured diameters scatter by ${formatQuantity(caustic.scatter, '1', '%', 2)} about it.${shown ? '' : ' The waist lies outside the picture.'}`,
    };
  },
});

/** The measured caustic in the matching document, shown while the design takes anything from it. */
export const causticBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'caustic',
    when,
    prose: prose`
      ## The caustic as measured

      ${causticSaid}
    `,
  },
  {
    kind: 'prose',
    id: 'caustic-judged',
    when,
    needs: [measuredCaustic],
    prose: prose`
      ${causticPointsSaid} ${causticRatioSaid}

      ${causticUseSaid} ${causticPlaceSaid}
    `,
  },
  causticFigure,
];
