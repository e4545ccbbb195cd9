import type { Case } from './sentenceCases.ts';

/** What is said of the step's height, and of what surrounds a peak or hollows a plateau. */
export const profileCases: readonly Case[] = [
  {
    says: 'heightSaid',
    design: { 'laser.wavelength': 515e-9 },
    text: /designed for a phase: the height of its step, 557\.9\snm now, follows the wavelength\. .* choose “made with a height”/,
    // Half a wave in fused silica, n = 1.4615 at 515 nm (Malitson 1965): 558 nm.
    truth: (value) => Math.abs(value('plate.stepHeight') - 558e-9) < 1e-9,
  },
  {
    says: 'heightSaid',
    design: { 'laser.wavelength': 515e-9, 'plate.source': 'made' },
    text: /made with a height: its step stays 1144\snm high at any wavelength/,
    truth: (value) => value('plate.stepHeight') === value('plate.madeHeight'),
  },
];
