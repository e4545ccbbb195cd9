import { interpolateLab, piecewise, rgb } from 'd3';
import type { MapSpec } from '../../document.ts';
import type { Scheme } from './palette.ts';

/** Colours from lowest to highest: one hue, from the paper to ink by day and from the dark paper to pale blue by night. */
const anchors: Readonly<Record<Scheme, readonly string[]>> = {
  light: ['#fbfaf6', '#c9d8e4', '#86a8c6', '#457aa5', '#1d4f7c', '#0a2744'],
  dark: ['#17191c', '#1f3446', '#2c5679', '#4b82b0', '#8fc1ee', '#e4f1fc'],
};

/** Entries of the colour table: neighbours differ by less than one of 256 levels, so no steps show. */
const entries = 1024;

/** Colour of a share of the range, 0 … 1, as CSS text. */
export function colourAt(share: number, scheme: Scheme): string {
  return piecewise(interpolateLab, [...anchors[scheme]])(share);
}

const tables = new Map<Scheme, Uint32Array>();

/** Colours as the four bytes of a pixel, red first. */
function tableOf(scheme: Scheme): Uint32Array {
  const kept = tables.get(scheme);
  if (kept) return kept;
  const bytes = new Uint8ClampedArray(entries * 4);
  for (let i = 0; i < entries; i++) {
    const { r, g, b } = rgb(colourAt(i / (entries - 1), scheme));
    bytes.set([Math.round(r), Math.round(g), Math.round(b), 255], i * 4);
  }
  const table = new Uint32Array(bytes.buffer);
  tables.set(scheme, table);
  return table;
}

/**
 * Fills RGBA pixels (columns · rows · 4 bytes, top row first) with the map, whose rows start at the lower edge.
 * Values outside the range take its end colours; what is not a number stays transparent.
 */
export function paintMap(map: MapSpec, scheme: Scheme, bytes: Uint8ClampedArray | Uint8Array): void {
  const { columns, rows, values, range } = map;
  const pixels = new Uint32Array(bytes.buffer, bytes.byteOffset, columns * rows);
  const table = tableOf(scheme);
  const last = entries - 1;
  const span = range[1] - range[0];
  const scale = span > 0 ? last / span : 0;
  for (let row = 0; row < rows; row++) {
    const target = (rows - 1 - row) * columns;
    const source = row * columns;
    for (let column = 0; column < columns; column++) {
      const value = values[source + column]!;
      const index = (value - range[0]) * scale + 0.5;
      pixels[target + column] = Number.isNaN(value)
        ? 0
        : table[index <= 0 ? 0 : index >= last ? last : index | 0]!;
    }
  }
}

/** The map as a PNG in a data URL. */
export type EncodePng = (pixels: Uint8ClampedArray, width: number, height: number) => string;
