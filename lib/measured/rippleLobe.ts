import { type HalfSpectrum, valueAt, visitDisc } from './halfSpectrum.ts';

/** The part of a spectrum that belongs to one kind of ripples, in steps of frequency. */
export interface RippleLobe {
  /** Centre of the power above the background. */
  readonly kx: number;
  readonly ky: number;
  /** How far it reaches; beyond 0.7 of this it is weighed down to nothing. */
  readonly radius: number;
  /** Power above the background, squared counts. */
  readonly power: number;
}

/** A lobe reaches at most so far, as a share of its frequency: half way to frequency 0 and to the second harmonic. */
const widest = 0.45;
/** A Hann window alone spreads a line over two steps each way, and 0.1 % of its power beyond. */
const narrowest = 3.5;

/** Power of the background at any distance from frequency 0. */
export function ringAt(rings: Float64Array, distance: number): number {
  const low = Math.min(rings.length - 2, Math.floor(distance));
  return rings[low]! + (distance - low) * (rings[low + 1]! - rings[low]!);
}

/** 1 in the inner part of a lobe, falling as a cosine to 0 at its edge, so that a little more or less reach moves nothing. */
export function lobeWeight(distance: number, radius: number): number {
  const edge = (distance / radius - 0.7) / 0.3;
  return edge <= 0 ? 1 : 0.5 + 0.5 * Math.cos(Math.PI * Math.min(1, edge));
}

/** Power within a disc, less the background: its sum, its centre and its mean squared distance from the disc's middle. */
export function centreOfPower(
  spectrum: HalfSpectrum,
  rings: Float64Array,
  { kx, ky, radius }: Pick<RippleLobe, 'kx' | 'ky' | 'radius'>,
): { readonly power: number; readonly kx: number; readonly ky: number; readonly spread: number } {
  let [power, sumX, sumY, second] = [0, 0, 0, 0];
  visitDisc(spectrum.size, kx, ky, radius, (x, y, distance) => {
    const above = valueAt(spectrum, x, y) - ringAt(rings, Math.hypot(x, y));
    const weighted = lobeWeight(distance, radius) * above;
    power += weighted;
    sumX += weighted * x;
    sumY += weighted * y;
    second += weighted * distance * distance;
  });
  return { power, kx: sumX / power, ky: sumY / power, spread: second / power };
}

/** Moves a lobe from a highest point to the centre of the power around it, then closes in on what it holds. */
export function centreLobe(
  spectrum: HalfSpectrum,
  rings: Float64Array,
  start: { readonly kx: number; readonly ky: number },
): RippleLobe {
  const wide = Math.max(narrowest, widest * Math.hypot(start.kx, start.ky));
  const first = settle(spectrum, rings, { ...start, radius: wide, power: 0 });
  const { spread } = centreOfPower(spectrum, rings, first);
  // Three standard deviations; noise in a wide disc would pull at the centre of a narrow lobe.
  const close = Math.min(wide, Math.max(narrowest, 3 * Math.sqrt(Math.max(0, spread))));
  return settle(spectrum, rings, { ...first, radius: close });
}

/**
 * How far the centre of a lobe moves, steps of frequency, where only its inner half counts. A line does not move; a wide
 * or lopsided lobe does, and no choice of how much of it counts is the right one.
 */
export function centreShift(
  spectrum: HalfSpectrum,
  rings: Float64Array,
  lobe: RippleLobe,
): { readonly dx: number; readonly dy: number } {
  const inner = settle(spectrum, rings, { ...lobe, radius: Math.max(narrowest, lobe.radius / 2) });
  return { dx: inner.kx - lobe.kx, dy: inner.ky - lobe.ky };
}

function settle(spectrum: HalfSpectrum, rings: Float64Array, start: RippleLobe): RippleLobe {
  let { kx, ky, power } = start;
  const { radius } = start;
  // Each pass halves what is left or better; a highest point lies within two steps of a narrow lobe's centre.
  for (let pass = 0; pass < 20; pass++) {
    const centre = centreOfPower(spectrum, rings, { kx, ky, radius });
    if (!(centre.power > 0) || Math.hypot(centre.kx - start.kx, centre.ky - start.ky) > radius) break;
    const moved = Math.hypot(centre.kx - kx, centre.ky - ky);
    ({ kx, ky, power } = centre);
    if (moved < 1e-6) break;
  }
  return { kx, ky, radius, power };
}
