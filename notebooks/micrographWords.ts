import type { RipplePicture } from '../lib/measured/ripplePicture.ts';
import { angleText, percentText } from './shortTexts.ts';

/** What this page calls regular: its own convention, said beside the word. Half-width in rad, phase in periods. */
const regularField = {
  halfWidth: (15 * Math.PI) / 180,
  cell: 0.5,
  weakShare: 0.05,
  periods: 2,
  tileShare: 0.8,
};

/** The convention in words, to stand before a verdict. */
export const regularityRule = `This page calls a field regular where the half-width is at most ${angleText(regularField.halfWidth)}, at most ${percentText(regularField.weakShare)} of the cells lie below ${regularField.cell}, and the ripples keep their phase over ${regularField.periods} periods or more and stand out in at least ${percentText(regularField.tileShare)} of the picture`;

/** Cells of the map of local regularity. */
export const regularityCells = ({ orientation: { regularity } }: RipplePicture) => regularity.values.length;

/** Cells in which the local regularity lies below one half. */
export const weakCells = ({ orientation: { regularity } }: RipplePicture) =>
  regularity.values.filter((value) => value < regularField.cell).length;

/** What keeps ripples from being called regular; empty where nothing does. */
export function irregularities(found: RipplePicture): string[] {
  const { main, orientation } = found;
  const { halfWidth } = orientation;
  const weak = weakCells(found) / regularityCells(found) > regularField.weakShare;
  // What is shown to be "at least" so long is 0.4 of a tile, and a tile holds five periods or more.
  const short = [main!.coherenceAlong, main!.coherenceAcross].some(
    ({ length, atLeast }) => !atLeast && length < regularField.periods * main!.period,
  );
  return [
    ...(halfWidth === undefined || halfWidth > regularField.halfWidth ? ['its half-width'] : []),
    ...(weak ? ['its weak cells'] : []),
    ...(short ? ['the phase that is lost sooner'] : []),
    ...(main!.tileShare < regularField.tileShare ? ['the parts in which the ripples do not stand out'] : []),
  ];
}
