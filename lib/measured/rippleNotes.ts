import type { WrittenRows } from './captionBar.ts';
import type { PictureRegion } from './markLevels.ts';
import type { OrientationDistribution } from './orientationMap.ts';
import type { RipplePeriod, WithoutPeriod } from './ripplePeriods.ts';

/** Why a picture has no period, with the next step; `fewestRidges` across the shorter side would have been seen. */
export function whyWithout(
  kind: WithoutPeriod,
  { width, height }: PictureRegion,
  fewestRidges: number,
): string {
  const texts: Readonly<Record<WithoutPeriod, string>> = {
    blank:
      'The grey values vary by no more than their rounding, so nothing can repeat. Take the picture with more contrast.',
    'no-direction': `Of what could repeat ${fewestRidges} times across the shorter side no direction stands out: it is alike along all of them, as in noise, grain or blur, or ridges too coarse for a region of this size.`,
    'no-spacing': 'Lines have a direction but no spacing that repeats, as scratches and edges do.',
    'not-repeated':
      'A spacing stands out in half of the region or less, so it is not counted as ripples. Choose a region in which they are everywhere.',
    coarse: `Something lies along a direction, but repeats too few times in ${width} × ${height} pixels to be told from scratches or a change of the background: in a region of this size that takes ${fewestRidges} ridges across the shorter side. Choose a region half as large again or more, or a lower magnification.`,
  };
  return texts[kind];
}

/** Few pixels to a ridge. */
const fewPixels = 6;
/** A peak that stands out less than this from other directions is faint. */
const faint = 8;
/** JPEG compresses blocks of so many pixels. */
const block = 8;

/** What tells against a measurement, or what was left out of it. */
export function rippleNotes(found: {
  readonly main: RipplePeriod | undefined;
  readonly orientation: OrientationDistribution;
  readonly written: readonly WrittenRows[];
}): string[] {
  const { main, orientation, written } = found;
  const notes = written.map(
    ({ first, last, kind }) =>
      `Rows ${first} to ${last} hold a ${kind === 'caption' ? 'caption' : 'scale bar'} and are left out.`,
  );
  if (!main) return notes;
  const { period } = main;
  if (period < fewPixels)
    notes.push(`The period is ${period.toFixed(1)} pixels only: take the picture at a larger magnification.`);
  if (main.overBackground < faint)
    notes.push(
      `The ripples stand out from other directions by ${main.overBackground.toFixed(1)} times only.`,
    );
  if (main.tileShare < 0.8)
    notes.push(
      `The ripples stand out in ${(100 * main.tileShare).toFixed(0)} % of the region: see the map of regularity.`,
    );
  if (isBlock(main))
    notes.push(
      `A period of ${block} pixels along the picture's own axis is what the blocks of a JPEG leave: measure the picture as it was before compression.`,
    );
  if (orientation.smoothing > period / 4)
    notes.push(
      `The smoothing of ${orientation.smoothing} pixels blurs ridges of ${period.toFixed(1)} pixels: take a quarter of the period at most.`,
    );
  return notes;
}

/** A period of 8 or 4 pixels to 1 %, within half a degree of an axis. */
function isBlock({ period, direction }: RipplePeriod): boolean {
  const aligned = Math.abs(Math.sin(2 * direction)) < 0.0175;
  return aligned && [block, block / 2].some((length) => Math.abs(period / length - 1) < 0.01);
}
