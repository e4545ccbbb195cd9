import type { ProfileKind } from '../lib/optics/profileMetrics.ts';

/** What each kind is good for (common practice, no source). */
export const uses: Readonly<Record<ProfileKind, string>> = {
  'flat-top':
    'Flat-tops that have a depth of focus give nearly the same fluence all over their plateau: for removal to an even depth, for ripples that are alike from place to place, for single spots and spots side by side.',
  'shallow ring':
    'Shallow rings even out what a moving spot leaves: a scanned flat-top doses the middle of its line most, the dip takes some of that back.',
  ring: 'Rings put the fluence on their crest and spare the middle: for ring-shaped marks, and for lines that are to be dosed as much at their sides as in the middle.',
  peaked:
    'Peaked planes put the most fluence on the smallest spot: for thin lines, for holes, and for finding the focus; they are not flat.',
};
