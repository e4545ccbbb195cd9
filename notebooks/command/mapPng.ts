import { encode } from 'fast-png';
import type { Span } from './lengths.ts';

/** Fluence over planes and radii, and where it was computed. */
export interface FluenceMap {
  /** J/m², row by row: a row a plane, a column a radius. */
  readonly fluence: Float64Array;
  readonly columns: number;
  readonly rows: number;
  /** First and last plane and radius in metres. */
  readonly z: Span;
  readonly radii: Span;
}

/** How grey stands for fluence: in proportion, or to its logarithm. */
export type GreyScale = 'linear' | 'log';

/** The highest grey value. */
const white = 65535;
/** Decades below the peak in a logarithmic picture: a camera of twelve bits sees 3.6. */
export const shownDecades = 4;

/**
 * A grey PNG of 16 bits, first plane on top. White is the highest fluence; black is none, or 10⁻⁴ of it and less where the
 * scale is logarithmic. Text chunks hold the scale and the ends of both axes.
 */
export function encodeMap(map: FluenceMap, scale: GreyScale): Uint8Array {
  const top = highest(map);
  const share = scale === 'linear' ? shareOf : decadesOf;
  const data = Uint16Array.from(map.fluence, (fluence) => Math.round(white * share(fluence / top)));
  const { columns: width, rows: height } = map;
  return encode({ width, height, data, channels: 1, depth: 16, text: textChunks(map, scale, top) });
}

/** Highest fluence of a map; 1 J/m² for a map without light, so that shares stay numbers. */
export function highest({ fluence }: FluenceMap): number {
  const most = fluence.reduce((top, value) => Math.max(top, value), 0);
  return most > 0 ? most : 1;
}

const shareOf = (ratio: number) => Math.min(1, ratio);
const decadesOf = (ratio: number) =>
  ratio > 10 ** -shownDecades ? Math.min(1, 1 + Math.log10(ratio) / shownDecades) : 0;

/** Text chunks, in the letters that they may hold. */
function textChunks({ z, radii }: FluenceMap, scale: GreyScale, top: number): Record<string, string> {
  const grey =
    scale === 'linear'
      ? `fluence = grey / ${white} * ${top} J/m2`
      : `fluence = 10^(${shownDecades} * (grey / ${white} - 1)) * ${top} J/m2, 0 stands for this and less`;
  return {
    Title: 'Fluence per pulse through the focus',
    Scale: grey,
    Rows: `z = ${z[0]} m (top) to ${z[1]} m, equally spaced`,
    Columns: `radius = ${radii[0]} m (left) to ${radii[1]} m, equally spaced`,
  };
}
