import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { designs as invented } from '../../data/designs/make.ts';
import { designGraph } from '../../lib/design/design.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { Problem } from '../../lib/problem.ts';
import { readFileAsPatch } from '../../notebooks/measuredFiles.ts';
import { cases } from '../cases.ts';
import { markPictures } from '../design/files.ts';
import { usualDesigns } from '../design/inputs.ts';
import type { Values } from './designOutcomes.ts';
import { cleaned } from './fitCases.ts';

const section = 'cold-plate-section.csv';
const sectionBytes = readFileSync(new URL(`../../data/measured/${section}`, import.meta.url));
const groove = {
  ...invented['cold-plate-channels.json']!.patch,
  ...readFileAsPatch('groove.sectionFile', sectionBytes, section),
};

/** Marks of a Gaussian of 15 µm for 1, 10 and 100 pulses. */
const rows = [1, 10, 100].flatMap((pulses) =>
  [1.3, 1.8, 2.5, 4, 6].map((energy) => {
    const diameter = 10 * Math.sqrt(4.5 * Math.log(energy / (0.7 * pulses ** -0.15)));
    return `${energy},${diameter.toFixed(2)},${pulses}`;
  }),
);
const severalPulses = {
  'threshold.fitModel': 'gaussian',
  ...readFileAsPatch(
    'threshold.spotTable',
    new TextEncoder().encode(['E (uJ),D (um),N', ...rows].join('\n')),
    'pulses.csv',
  ),
};
const markInPicture = {
  'markPicture.picture': markPictures.find(({ name }) => name === 'ring'),
  'markPicture.scaleSource': 'typed',
  'markPicture.pixelPitch': 0.3e-6,
};

/** Seeded places are drawn in Rayleigh lengths, which may lie further out than the workpiece can be. */
function isAllowed(design: Values): boolean {
  try {
    applyPatch(designGraph, initialState(designGraph), design);
    return true;
  } catch (error) {
    if (error instanceof Problem) return false;
    throw error;
  }
}

/** What links are tried on: the initial design, the invented ones, some that hold files, and seeded ones. */
export const linkDesigns: readonly (readonly [name: string, design: Values])[] = [
  ['initial', {}],
  ['no stop, a little behind the focus', { 'plate.stop': 'open', 'workpiece.z': 58e-6 }],
  ['two lenses, no material of the handbook', { 'expander.kind': 'lenses', 'workpiece.material': 'gold' }],
  ['a target within reach', { 'scaleUp.target': 1e-6 }],
  ...Object.entries(invented).map(([name, { patch }]) => [name, patch] as const),
  ['a measured groove', groove],
  ['a table of spots', cleaned],
  ['a table of spots on gold, which the handbook lacks', { ...cleaned, 'workpiece.material': 'gold' }],
  ['marks of several numbers of pulses', severalPulses],
  ['a mark in a picture', markInPicture],
  ...fc
    .sample(usualDesigns, { numRuns: cases(20, 6), seed: 5090 })
    .filter(isAllowed)
    .map((design, i) => [`seeded ${i}`, design] as const),
];
