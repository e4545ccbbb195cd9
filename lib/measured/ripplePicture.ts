import { Problem } from '../problem.ts';
import type { CameraImage } from './cameraImage.ts';
import { findWrittenRows, type WrittenRows, withoutRows } from './captionBar.ts';
import { type PictureRegion, takeRegion } from './markLevels.ts';
import { checkSmoothing, findOrientation, type OrientationDistribution } from './orientationMap.ts';
import { rippleNotes, whyWithout } from './rippleNotes.ts';
import type { RipplePeriod, WithoutPeriod } from './ripplePeriods.ts';
import { scaleRipples, searchRipples } from './rippleSearch.ts';
import type { SpectrumCrop } from './spectrumCrop.ts';

/** How ripples are measured in a micrograph. */
export interface RippleOptions {
  /** Metres a pixel on the workpiece, the same along both axes; without it lengths stay in pixels. */
  readonly pixelPitch?: number;
  /** Part of the picture, pixels; the whole picture where left out. Rows of a caption are left out of either. */
  readonly region?: PictureRegion;
  /** Standard deviation of the Gaussian behind the local gradients, pixels; 2 where left out. */
  readonly smoothing?: number;
}

/**
 * What a micrograph says of its ripples. Angles in rad, from the picture's x towards its y, which points down. Places in
 * the picture, tiles, cells and the smoothing are always in pixels.
 */
export interface RipplePicture {
  /** Of the lengths in `main` and `second`: metres where the pixel pitch is known, else pixels. */
  readonly unit: 'm' | 'px';
  /** The ripples; undefined where the picture has none that stand out, then `without` says why. */
  readonly main: RipplePeriod | undefined;
  /** A second kind, such as fine ripples across the others. */
  readonly second: RipplePeriod | undefined;
  readonly without: { readonly kind: WithoutPeriod; readonly text: string } | undefined;
  readonly orientation: OrientationDistribution;
  /** The part that was measured, pixels of the whole picture. */
  readonly region: PictureRegion;
  /** Rows of the region asked for that are written on and were left out. */
  readonly written: readonly WrittenRows[];
  /** Side of the tiles whose spectra were averaged, pixels, and how many there were. */
  readonly tile: { readonly size: number; readonly count: number };
  /** The mean power spectrum of the tiles, which the period was read from; frequencies in periods a pixel. */
  readonly spectrum: SpectrumCrop;
  readonly notes: readonly string[];
}

/** Smaller regions hold too few ridges: two tiles of 32 pixels along each side. */
const leastSide = 64;
export const initialSmoothing = 2;
/** Ridges across a cell of the map of regularity: fewer and a cell shows the ridges themselves. */
const periodsInCell = 2;
/** Share of the time that the spectra take (measured). */
const spectraShare = 0.6;

/**
 * Measures period, direction, coherence and regularity of ripples, in steps: each yields the share that is done, so
 * that a worker can show it and stop between two steps. The period comes from the average spectrum of overlapping tiles
 * (`searchRipples`), the orientation from local gradients (`findOrientation`). Throws Problem 'impossible'
 * where the region or the smoothing cannot be; a picture without ripples is an answer and no problem.
 */
export function* rippleSteps(
  image: CameraImage,
  options: RippleOptions = {},
): Generator<number, RipplePicture> {
  const { smoothing = initialSmoothing, pixelPitch } = options;
  const { region, written } = readRegionOf(image, options.region);
  const part = takeRegion(image, region);
  checkSmoothing(smoothing, part);
  const rounding = roundingOf(image);
  const { main, second, without, tile, fewestRidges, spectrum } = yield* scaled(
    searchRipples(part, rounding),
    0,
    spectraShare,
  );
  const cell = periodsInCell * (main?.period ?? tile.size / 8);
  const orientation = yield* scaled(findOrientation(part, smoothing, cell), spectraShare, 1);
  const found = { main, region, written, orientation };
  return {
    ...found,
    unit: pixelPitch === undefined ? 'px' : 'm',
    main: main && scaleRipples(main, pixelPitch ?? 1),
    second: second && scaleRipples(second, pixelPitch ?? 1),
    without: without && { kind: without, text: whyWithout(without, region, fewestRidges) },
    tile,
    spectrum,
    notes: rippleNotes(found),
  };
}

/** Watches a measurement. */
export interface Watch {
  /** Called with the share that is done, 0 to 1. */
  readonly progress?: (share: number) => void;
  /** Asked after each step; where true, the measurement ends with Problem 'absent'. */
  readonly shouldStop?: () => boolean;
}

/** `rippleSteps` to its end. */
export function measureRipples(
  image: CameraImage,
  options: RippleOptions = {},
  watch: Watch = {},
): RipplePicture {
  const steps = rippleSteps(image, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    watch.progress?.(step.value);
    if (watch.shouldStop?.()) throw new Problem('absent', `The measurement of "${image.name}" was stopped.`);
  }
}

/** Variance that rounding may leave: half a count squared, or what four-byte numbers cannot tell, sixfold. */
function roundingOf({ samples }: CameraImage): number {
  if (samples instanceof Uint16Array) return 0.5;
  let most = 0;
  for (const value of samples) most = Math.max(most, Math.abs(value));
  return Math.max(Number.MIN_VALUE, 1e-13 * most * most);
}

function* scaled<T>(steps: Generator<number, T>, from: number, to: number): Generator<number, T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield from + (to - from) * step.value;
  }
}

/** The region without the rows of it that are written on; throws Problem 'impossible' where too little is left. */
function readRegionOf(
  image: CameraImage,
  region: PictureRegion = { left: 0, top: 0, width: image.width, height: image.height },
): { readonly region: PictureRegion; readonly written: readonly WrittenRows[] } {
  const written = findWrittenRows(image).filter(
    ({ first, last }) => last >= region.top && first < region.top + region.height,
  );
  const kept = withoutRows(region, written);
  const whole = kept !== undefined && kept.width >= leastSide && kept.height >= leastSide;
  if (whole) return { region: kept, written };
  const lost = written.length > 0 ? ', without the rows of its caption' : '';
  throw new Problem(
    'impossible',
    `The region of ${region.width} × ${region.height} pixels of "${image.name}"${lost} is too small for ripples; choose one of at least ${leastSide} × ${leastSide}.`,
    { value: `${region.width} × ${region.height}`, allowed: `${leastSide} × ${leastSide} pixels or more` },
  );
}
