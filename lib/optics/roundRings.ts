import type { Zone } from './zones.ts';

/** A plate of round zones as its steps: between two radii the field is multiplied by one number. */
export interface Rings {
  /** Radii of the steps, ascending, units of w. */
  readonly radii: Float64Array;
  /** Transmission of each zone, and last that of what lies beyond the last step: 0 behind a stop. */
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** The steps inside `end`, where the beam has died away; a plate that reaches there is open. Units of w. */
export function ringsOf(zones: readonly Zone[], end: number): Rings {
  const inside = zones.filter(({ outer }) => outer < end);
  const beyond = zones[inside.length];
  const re = inside.map(({ phase }) => Math.cos(phase));
  const im = inside.map(({ phase }) => Math.sin(phase));
  return {
    radii: Float64Array.from(inside, ({ outer }) => outer),
    re: Float64Array.of(...re, beyond ? Math.cos(beyond.phase) : 0),
    im: Float64Array.of(...im, beyond ? Math.sin(beyond.phase) : 0),
  };
}

/** Index of the zone at a radius whose square is given. */
export function zoneAt({ radii }: Rings, square: number): number {
  let zone = 0;
  while (zone < radii.length && square >= radii[zone]! * radii[zone]!) zone++;
  return zone;
}

/**
 * The plate against itself, shifted: t(r − s/2) t*(r + s/2) along the line at distance `v` from the centre line of the
 * shift. Calls `visit` with each place `u` along the line (the direction of the shift) where the product changes, and
 * by how much. With `rightOnly`, only for u > 0: a change of J at u comes with one of −J* at −u.
 */
export function visitSteps(
  rings: Rings,
  shift: number,
  v: number,
  rightOnly: boolean,
  visit: (u: number, re: number, im: number) => void,
): void {
  const half = shift / 2;
  for (let j = 0; j < rings.radii.length; j++) {
    const square = rings.radii[j]! ** 2 - v * v;
    if (square <= 0) continue;
    const height = Math.sqrt(square);
    const re = rings.re[j + 1]! - rings.re[j]!;
    const im = rings.im[j + 1]! - rings.im[j]!;
    // The plate about +s/2 steps while its conjugate about −s/2 stays.
    const across = (u: number, sign: number): void => {
      const k = zoneAt(rings, (u + half) ** 2 + v * v);
      const [otherRe, otherIm] = [sign * rings.re[k]!, sign * rings.im[k]!];
      visit(u, re * otherRe + im * otherIm, im * otherRe - re * otherIm);
    };
    // The conjugate steps while the plate stays.
    const against = (u: number, sign: number): void => {
      const k = zoneAt(rings, (u - half) ** 2 + v * v);
      const [otherRe, otherIm] = [sign * rings.re[k]!, sign * rings.im[k]!];
      visit(u, re * otherRe + im * otherIm, re * otherIm - im * otherRe);
    };
    across(half + height, 1);
    if (!rightOnly || height < half) across(half - height, -1);
    if (!rightOnly || height > half) against(height - half, 1);
    if (!rightOnly) against(-height - half, -1);
  }
}

/** Distances v ≥ 0, ascending from 0, at which a ring begins or two of the shifted rings cross. */
export function breaksAcross({ radii }: Rings, shift: number): number[] {
  const breaks = [0, ...radii];
  for (const right of radii) {
    for (const left of radii) {
      const u = (left * left - right * right) / (2 * shift);
      const square = right * right - (u - shift / 2) ** 2;
      if (square > 0) breaks.push(Math.sqrt(square));
    }
  }
  return breaks.sort((a, b) => a - b);
}
