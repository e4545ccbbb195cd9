import type { Case } from './sentenceCases.ts';

const bullsEye = { 'laser.beamDiameter': 9e-3, 'plate.apertureDiameter': 30e-3 };

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
  {
    says: 'profileSaid',
    // A bull’s-eye: raw beam of 9 mm on a step of 10 mm, almost without a stop, in the focus.
    design: bullsEye,
    text: /is peaked, with a ring around it, 12\.6\sµm across, that reaches 52\s% of its highest fluence of .* peak and ring above half of it together\.$/,
    truth: (value) => value('spot.ringAroundHeight') > 0.5 && value('spot.dip') === 0,
  },
  {
    says: 'profileSaid',
    design: { 'workpiece.z': -0.62013e-3 },
    text: /but it is uneven: .* A trough around the axis lies 17\s% below the highest fluence, deeper than the centre\.$/,
    truth: (value) => value('spot.trough') > value('spot.dip') + 0.1,
  },
];
