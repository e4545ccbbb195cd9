import { type HalfSpectrum, valueAt, visitDisc } from './halfSpectrum.ts';
import { centreOfPower, centreShift, type RippleLobe } from './rippleLobe.ts';
import type { TileSpectra } from './rippleSpectrum.ts';

/** Power in a tile's lobe over that in other directions and at twice the period, with which ripples stand out. */
const overDirections = 2;
const overLonger = 1.5;
/** Angles from the wave vector at which other directions are looked at, rad. */
const otherTurns = [0.9, 1.25, 1.6, 1.95, 2.3];
/** What the sampling of a Hann window's lobe adds to its centre at most, steps of frequency (measured). */
const samplingError = 1e-3;

function meanInDisc(spectrum: HalfSpectrum, kx: number, ky: number, radius: number): number {
  let [sum, count] = [0, 0];
  visitDisc(spectrum.size, kx, ky, radius, (x, y) => {
    sum += valueAt(spectrum, x, y);
    count++;
  });
  return sum / count;
}

/** True where a tile's power gathers at kx, ky, and neither in other directions of this period nor at twice the period. */
function standsOut(tile: HalfSpectrum, kx: number, ky: number): boolean {
  const [radius, angle] = [Math.hypot(kx, ky), Math.atan2(ky, kx)];
  const reach = Math.max(2, 0.2 * radius);
  const here = meanInDisc(tile, kx, ky, reach);
  const others = otherTurns
    .map((turn) => meanInDisc(tile, radius * Math.cos(angle + turn), radius * Math.sin(angle + turn), reach))
    .sort((a, b) => a - b)[otherTurns.length >> 1]!;
  return here > overDirections * others && here > overLonger * meanInDisc(tile, kx / 2, ky / 2, reach / 2);
}

/** Share of the tiles in which the ripples stand out. */
export function shareOfTiles({ size, powers }: TileSpectra, kx: number, ky: number): number {
  const agreeing = powers.filter((values) => standsOut({ size, values }, kx, ky));
  return agreeing.length / powers.length;
}

/**
 * Standard uncertainty of a lobe's centre from the spread of the tiles' own centres about it, each weighted by its power
 * in the lobe, over the root of the number of tiles that do not overlap; and, added in quadrature, how far the centre moves
 * where only the lobe's inner half counts.
 */
export function centreUncertainty(
  spectra: TileSpectra,
  rings: Float64Array,
  lobe: RippleLobe,
  independent: number,
): { readonly along: number; readonly across: number } {
  const length = Math.hypot(lobe.kx, lobe.ky);
  let [total, squares, along, across] = [0, 0, 0, 0];
  for (const values of spectra.powers) {
    const centre = centreOfPower({ size: spectra.size, values }, rings, lobe);
    if (!(centre.power > 0)) continue;
    const [dx, dy] = [centre.kx - lobe.kx, centre.ky - lobe.ky];
    total += centre.power;
    squares += centre.power ** 2;
    along += centre.power * ((dx * lobe.kx + dy * lobe.ky) / length) ** 2;
    across += centre.power * ((dy * lobe.kx - dx * lobe.ky) / length) ** 2;
  }
  // Tiles of unlike power count for fewer; a spread needs two.
  const alike = total ** 2 / (squares * spectra.powers.length);
  const count = Math.max(1, independent * alike - 1);
  const { dx, dy } = centreShift({ size: spectra.size, values: spectra.mean }, rings, lobe);
  const uncertainty = (sum: number, shift: number) =>
    Math.hypot(samplingError, Math.sqrt(sum / total / count), shift);
  return {
    along: uncertainty(along, (dx * lobe.kx + dy * lobe.ky) / length),
    across: uncertainty(across, (dy * lobe.kx - dx * lobe.ky) / length),
  };
}
