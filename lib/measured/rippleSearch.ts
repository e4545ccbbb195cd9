import type { PicturePart } from './markLevels.ts';
import { leastPeriodsInTile } from './rippleCandidates.ts';
import type { CoherenceLength } from './rippleCoherence.ts';
import { findPeriods, type RipplePeriod, type RipplePeriods } from './ripplePeriods.ts';
import { largestTile, tileSize, tileSpectra } from './rippleSpectrum.ts';
import { cropSpectrum, type SpectrumCrop } from './spectrumCrop.ts';

/** Ripples of a part, in pixels of it, with the tiles that showed them or did not. */
export interface RippleSearch extends RipplePeriods {
  /** Side of the tiles in pixels, and how many there were. */
  readonly tile: { readonly size: number; readonly count: number };
  /** Ridges across the shorter side below which ripples are not told from a background. */
  readonly fewestRidges: number;
  /** The mean over the tiles, about frequency 0. */
  readonly spectrum: SpectrumCrop;
}

/**
 * Looks for ripples in tiles of `tileSize` and, where these show none that are fine enough, in tiles twice as large, up
 * to two thirds of the shorter side; beyond 512 pixels the part is shrunk to half instead. `rounding` as in
 * `findPeriods`. Yields the share of the first look that is done.
 */
export function* searchRipples(part: PicturePart, rounding: number): Generator<number, RippleSearch> {
  let size = tileSize(part.width, part.height);
  let found = yield* look(part, size, rounding, 1);
  const side = Math.min(part.width, part.height);
  let [shrunk, factor] = [part, 1];
  while (isUnseen(found) && 3 * size * factor <= side) {
    if (2 * size <= largestTile) size *= 2;
    else [shrunk, factor] = [shrink(shrunk), 2 * factor];
    const next = yield* look(shrunk, size, rounding, factor);
    // What larger tiles cannot tell either is said of the smaller ones, where there are more of them.
    if (next.main || [found, next].some(({ without }) => without === 'coarse')) found = next;
  }
  return found;
}

/** True where larger tiles may show ripples. */
function isUnseen({ without }: RippleSearch): boolean {
  return without === 'coarse' || without === 'no-direction';
}

function* look(
  part: PicturePart,
  size: number,
  rounding: number,
  factor: number,
): Generator<number, RippleSearch> {
  const steps = tileSpectra(part, size);
  let step = steps.next();
  for (; !step.done; step = steps.next()) yield factor === 1 ? step.value : 1;
  const independent = (part.width * part.height) / size ** 2;
  const { main, second, without } = findPeriods(step.value, independent, rounding);
  const spectrum = { size, values: step.value.mean };
  return {
    spectrum: cropSpectrum(spectrum, factor, main && size / main.period),
    ...(main && { main: scaleRipples(main, factor) }),
    ...(second && { second: scaleRipples(second, factor) }),
    ...(without && { without }),
    tile: { size: size * factor, count: step.value.powers.length },
    fewestRidges: Math.ceil((leastPeriodsInTile * Math.min(part.width, part.height)) / size),
  };
}

/** The same ripples with their lengths times `factor`. */
export function scaleRipples(ripples: RipplePeriod, factor: number): RipplePeriod {
  const scale = (coherence: CoherenceLength) => ({ ...coherence, length: coherence.length * factor });
  return {
    ...ripples,
    period: ripples.period * factor,
    periodUncertainty: ripples.periodUncertainty * factor,
    coherenceAlong: scale(ripples.coherenceAlong),
    coherenceAcross: scale(ripples.coherenceAcross),
  };
}

/** Means of two by two pixels; an odd last row or column is left out. */
function shrink({ left, top, width, height, samples }: PicturePart): PicturePart {
  const [columns, rows] = [width >> 1, height >> 1];
  const means = new Float64Array(columns * rows);
  for (let y = 0, i = 0; y < rows; y++) {
    for (let x = 0, j = 2 * y * width; x < columns; x++, i++, j += 2)
      means[i] = (samples[j]! + samples[j + 1]! + samples[j + width]! + samples[j + width + 1]!) / 4;
  }
  return { left, top, width: columns, height: rows, samples: means };
}
