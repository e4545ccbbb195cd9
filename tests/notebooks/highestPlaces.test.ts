import { describe, expect, it } from 'vitest';
import { highestPlaces } from '../../notebooks/highestPlaces.ts';

const extent = { low: -1e-3, high: 1e-3 };
const curve = (height: (z: number) => number) =>
  Float64Array.from({ length: 401 }, (_, i) => height(-1 + i / 200));
const bump = (z: number, at: number, width = 0.1) => Math.exp(-(((z - at) / width) ** 2));
const said = (height: (z: number) => number) => highestPlaces(curve(height), extent).replace(/\s/g, ' ');

describe('where a curve is highest', () => {
  it.each<[string, (z: number) => number, string]>([
    ['one peak', (z) => bump(z, 0.3), '0.3 mm'],
    ['two as high', (z) => bump(z, -0.4) + bump(z, 0.4), '−0.4 mm and 0.4 mm'],
    ['a second within the tie', (z) => 0.997 * bump(z, -0.4) + bump(z, 0.4), '−0.4 mm and 0.4 mm'],
    ['a second below it', (z) => 0.99 * bump(z, -0.4) + bump(z, 0.4), '0.4 mm'],
    // Ripples of a fifth of a per cent along a plateau: not a place each.
    ['a plateau with ripples', (z) => bump(z, 0, 2) * (1 + 0.002 * Math.cos(12 * Math.PI * z)), '0 mm'],
    ['three as high', (z) => bump(z, -0.5) + 1.001 * bump(z, 0) + bump(z, 0.5), '−0.5 mm and 0 mm'],
    ['highest at an end', (z) => z + 2, '1 mm'],
    ['level', () => 1, '−1 mm'],
  ])('%s', (_, height, places) => expect(said(height)).toBe(places));
});
