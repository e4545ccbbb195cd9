import { interpolateLab, piecewise, rgb } from 'd3';
import type { MapSpec } from '../../mapSpec.ts';
import type { Scheme } from './palette.ts';

/** Colours from lowest to highest: one hue, from the paper to ink by day and from the dark paper to pale blue by night. */
const anchors: Readonly<Record<Scheme, readonly string[]>> = {
  light: ['#fbfaf6', '#c9d8e4', '#86a8c6', '#457aa5', '#1d4f7c', '#0a2744'],
  dark: ['#17191c', '#1f3446', '#2c5679', '#4b82b0', '#8fc1ee', '#e4f1fc'],
};

/** Ends of a photograph's greys: lines in the colours of the page stand out from all of them. */
const greys: Readonly<Record<Scheme, readonly string[]>> = {
  light: ['#85878b', '#fbfaf6'],
  dark: ['#0d0e10', '#66696e'],
};

/** Entries of the colour table: neighbours differ by less than one of 256 levels, so no steps show. */
const entries = 1024;

/** Colour of a share of the range, 0 … 1, as CSS text. */
export function colourAt(share: number, scheme: Scheme, grey = false): string {
  return piecewise(interpolateLab, [...(grey ? greys : anchors)[scheme]])(share);
}

const tables = new Map<string, Uint32Array>();

/** Colours as the four bytes of a pixel, red first; behind them the one of no number, transparent. */
function tableOf(scheme: Scheme, grey = false): Uint32Array {
  const key = `${scheme} ${grey}`;
  const kept = tables.get(key);
  if (kept) return kept;
  const bytes = new Uint8ClampedArray((entries + 1) * 4);
  for (let i = 0; i < entries; i++) {
    const { r, g, b } = rgb(colourAt(i / (entries - 1), scheme, grey));
    bytes.set([Math.round(r), Math.round(g), Math.round(b), 255], i * 4);
  }
  const table = new Uint32Array(bytes.buffer);
  tables.set(key, table);
  return table;
}

/** Rows of pixels of a map: one a row of values, and one for its mirror image. */
export function pixelRows({ rows, mirrored }: Pick<MapSpec, 'rows' | 'mirrored'>): number {
  return mirrored ? 2 * rows - 1 : rows;
}

/** Writes the place in the colour table of each of `values` from `start` on into `places`, cut off at the ends; `entries` where there is no number. */
type Placing = (values: Float64Array, start: number, places: Int16Array) => void;

function placing({ range, perValue = 1, logarithmic }: MapSpec): Placing {
  const last = entries - 1;
  const [low, high] = range.map((end) => end / perValue) as [number, number];
  const scale = high > low ? last / (logarithmic ? Math.log(high / low) : high - low) : 0;
  const cut = (place: number) => (place > 0 ? (place < last ? place : last) : place <= 0 ? 0 : entries);
  if (logarithmic)
    return (values, start, places) => {
      for (let i = 0; i < places.length; i++) {
        const value = values[start + i]!;
        // Below the range the logarithm need not exist.
        places[i] = value <= low ? 0 : cut(Math.log(value / low) * scale + 0.5);
      }
    };
  return (values, start, places) => {
    for (let i = 0; i < places.length; i++) places[i] = cut((values[start + i]! - low) * scale + 0.5);
  };
}

/**
 * Fills RGBA pixels (columns · {@link pixelRows} · 4 bytes, top row first) with the map, whose rows start at the lower
 * edge or in the middle. Values outside the range take its end colours; what is not a number stays transparent.
 */
export function paintMap(map: MapSpec, scheme: Scheme, bytes: Uint8ClampedArray | Uint8Array): void {
  const { columns, rows, values, mirrored } = map;
  const high = pixelRows(map);
  const pixels = new Uint32Array(bytes.buffer, bytes.byteOffset, columns * high);
  const table = tableOf(scheme, map.grey);
  const place = placing(map);
  const places = new Int16Array(columns);
  for (let row = 0; row < rows; row++) {
    const target = (rows - 1 - row) * columns;
    place(values, row * columns, places);
    for (let column = 0; column < columns; column++) pixels[target + column] = table[places[column]!]!;
    if (mirrored) pixels.copyWithin((high - rows + row) * columns, target, target + columns);
  }
}

/** The map as a PNG in a data URL. */
export type EncodePng = (pixels: Uint8ClampedArray, width: number, height: number) => string;
