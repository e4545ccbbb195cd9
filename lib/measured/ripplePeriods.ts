import { type HalfSpectrum, smoothSpectrum, valueAt, visitDisc } from './halfSpectrum.ts';
import { type Candidate, findCandidates, leastPeriodsInTile, ringMedians } from './rippleCandidates.ts';
import { type CoherenceLength, coherenceLength } from './rippleCoherence.ts';
import { centreLobe, type RippleLobe } from './rippleLobe.ts';
import type { TileSpectra } from './rippleSpectrum.ts';
import { centreUncertainty, shareOfTiles } from './rippleTiles.ts';

/** Ripples of one period; lengths in pixels (`measureRipples` may scale them), angles in rad. */
export interface RipplePeriod {
  /**
   * From the centre of the power of the lobe; standard uncertainty from the spread over the picture and from how much of
   * the lobe counts. Where the local wave vector scatters by 0.3 of itself or more, the centre may be off by more.
   */
  readonly period: number;
  readonly periodUncertainty: number;
  /** Of the wave vector, from the picture's x towards its y, which points down; 0 to π. Ridges lie at right angles. */
  readonly direction: number;
  readonly directionUncertainty: number;
  /** Over which the ripples keep their phase: along the wave vector, and across it, along the ridges. */
  readonly coherenceAlong: CoherenceLength;
  readonly coherenceAcross: CoherenceLength;
  /** Highest power over the median of that of other directions at the same period. */
  readonly overBackground: number;
  /** Share of the tiles in which they stand out. */
  readonly tileShare: number;
  /** Root mean square of their grey values, counts. */
  readonly amplitude: number;
}

/** Why a picture has no period. */
export type WithoutPeriod = 'blank' | 'no-direction' | 'no-spacing' | 'not-repeated' | 'coarse';

/** The ripples of a picture, or why there are none. */
export interface RipplePeriods {
  readonly main?: RipplePeriod;
  /** A second kind of ripples, neither a harmonic of the first nor beside it. */
  readonly second?: RipplePeriod;
  readonly without?: WithoutPeriod;
}

/**
 * What a lobe must show. Of 1000 seeded pictures without ripples (noise, grain, blur, edges, scratches) of 128² to 512²
 * pixels one does, with scratches evenly spaced by chance (measured); ripples of a tenth of the noise's variance still do
 * in 512² pixels.
 */
const least = { overRing: 4, overValley: 3, share: 0.5 };
/**
 * Where lines run through whole tiles, the tiles along them show the same lines, and a few at random places can look
 * evenly spaced; then the valley must be deeper.
 */
const leastValleyOfLines = 10;
/** Of the variance that rounding may leave, the share that one lobe may have. */
const roundingLobe = 0.2;
/** Power of a second lobe, as a share of the first's. */
const leastSecond = 0.01;

/**
 * Finds the ripples of a picture in the spectra of its tiles. `independent` is the number of tiles that do not overlap;
 * what varies by less than `rounding`, squared counts, may come from the rounding of grey values alone.
 */
export function findPeriods(spectra: TileSpectra, independent: number, rounding: number): RipplePeriods {
  const raw: HalfSpectrum = { size: spectra.size, values: spectra.mean };
  if (variance(raw) < rounding) return { without: 'blank' };
  const smooth = smoothSpectrum(raw);
  const rings = ringMedians(smooth);
  const judged = findCandidates(smooth, rings).map((one) => judge(one, spectra));
  const passing = judged
    .filter(({ fault }) => fault === undefined)
    .map((one) => ({ ...one, lobe: centreLobe(raw, rings, one) }))
    .filter(({ lobe }) => 2 * lobe.power > roundingLobe * rounding)
    .filter((one) => one.overValley >= leastValleyOfLines || !isLines(raw, rings, one.lobe));
  const first = fundamental(passing);
  if (!first) return { without: faultOf(judged) };
  if (isCoarse(smooth, first)) return { without: 'coarse' };
  const second = passing.find(
    ({ lobe }) => isApart(lobe, first.lobe) && lobe.power > leastSecond * first.lobe.power,
  );
  const ripplesOf = (one: Passing) => describeRipples(one, { spectra, raw, rings, independent });
  return { main: ripplesOf(first), ...(second && { second: ripplesOf(second) }) };
}

interface Judged extends Candidate {
  readonly share: number;
  readonly fault: WithoutPeriod | undefined;
}

interface Passing extends Judged {
  readonly lobe: RippleLobe;
}

function variance({ values, size }: HalfSpectrum): number {
  let sum = 0;
  // The first and the last row are their own mirrors.
  for (let i = 0; i < values.length; i++) sum += (i < size || i >= values.length - size ? 1 : 2) * values[i]!;
  return sum;
}

function judge(one: Candidate, spectra: TileSpectra): Judged {
  if (one.overRing < least.overRing) return { ...one, share: 0, fault: 'no-direction' };
  if (length(one) < leastPeriodsInTile) return { ...one, share: 0, fault: 'coarse' };
  if (one.overValley < least.overValley) return { ...one, share: 0, fault: 'no-spacing' };
  const share = shareOfTiles(spectra, one.kx, one.ky);
  return { ...one, share, fault: share > least.share ? undefined : 'not-repeated' };
}

/** The fault of the strongest candidate that has a direction; one without a fault was too much like lines. */
function faultOf(judged: readonly Judged[]): WithoutPeriod {
  const directed = judged.find(({ fault }) => fault !== 'no-direction');
  return directed ? (directed.fault ?? 'no-spacing') : 'no-direction';
}

/** True where the ridges keep their phase through whole tiles. */
function isLines(raw: HalfSpectrum, rings: Float64Array, lobe: RippleLobe): boolean {
  return coherenceLength(raw, rings, lobe, Math.atan2(lobe.ky, lobe.kx) + Math.PI / 2).atLeast;
}

/** The strongest that passes, or the one of which it is the second or third harmonic. */
function fundamental(passing: readonly Passing[]): Passing | undefined {
  const first = passing[0];
  if (!first) return undefined;
  const { kx, ky } = first.lobe;
  const below = passing.find(
    ({ score, lobe }) =>
      score > 0.2 * first.score &&
      [2, 3].some((order) => distance(lobe, { kx: kx / order, ky: ky / order }) < 0.12 * length(first)),
  );
  return below ?? first;
}

/** True where ripples of twice the period are stronger and too few to a tile: this is their second harmonic. */
function isCoarse(smooth: HalfSpectrum, { kx, ky }: Candidate): boolean {
  if (Math.hypot(kx, ky) / 2 >= leastPeriodsInTile) return false;
  let highest = 0;
  visitDisc(smooth.size, kx / 2, ky / 2, 1.5, (x, y) => {
    if (Math.hypot(x, y) >= 2) highest = Math.max(highest, valueAt(smooth, x, y));
  });
  return highest > valueAt(smooth, kx, ky);
}

/** Neither in the lobe of the first ripples nor in those of their harmonics, which widen with the order. */
function isApart(one: RippleLobe, lobe: RippleLobe): boolean {
  return [1, 2, 3, 4].every((order) =>
    [-1, 1].every((sign) => {
      const centre = { kx: sign * order * lobe.kx, ky: sign * order * lobe.ky };
      return distance(one, centre) > Math.max(lobe.radius, 0.35 * order * length(lobe));
    }),
  );
}

interface LobeSurroundings {
  readonly spectra: TileSpectra;
  readonly raw: HalfSpectrum;
  readonly rings: Float64Array;
  readonly independent: number;
}

function describeRipples({ lobe, overRing, share }: Passing, around: LobeSurroundings): RipplePeriod {
  const { spectra, raw, rings, independent } = around;
  const frequency = length(lobe);
  const uncertainty = centreUncertainty(spectra, rings, lobe, independent);
  const angle = Math.atan2(lobe.ky, lobe.kx);
  const period = spectra.size / frequency;
  return {
    period,
    periodUncertainty: (period * uncertainty.along) / frequency,
    direction: (angle + Math.PI) % Math.PI,
    directionUncertainty: uncertainty.across / frequency,
    coherenceAlong: coherenceLength(raw, rings, lobe, angle),
    coherenceAcross: coherenceLength(raw, rings, lobe, angle + Math.PI / 2),
    overBackground: overRing,
    tileShare: share,
    // Both halves of the spectrum hold it.
    amplitude: Math.sqrt(2 * lobe.power),
  };
}

function length({ kx, ky }: { readonly kx: number; readonly ky: number }): number {
  return Math.hypot(kx, ky);
}

function distance(a: { kx: number; ky: number }, b: { kx: number; ky: number }): number {
  return Math.hypot(a.kx - b.kx, a.ky - b.ky);
}
