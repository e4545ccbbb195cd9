import fc from 'fast-check';
import { designGraph } from '../../lib/design/design.ts';
import { drawCaustic, wideBeam } from '../measured/syntheticCaustic.ts';
import { images, ladderTables, markPictures, rippleTables, spots, spotTables } from './files.ts';
import type { Inputs } from './inputs.ts';
import { micrographs } from './micrographFiles.ts';
import { sections } from './sectionFiles.ts';

/** No lenses, a Galilean pair (the initial one) and a Keplerian pair with a focus inside. */
export const expander = fc.constantFrom<Inputs>(
  {},
  { 'expander.kind': 'lenses' },
  {
    'expander.kind': 'lenses',
    'expander.firstFocalLength': 50e-3,
    'expander.secondFocalLength': 100e-3,
    'expander.separation': 150e-3,
  },
);
const table = drawCaustic(wideBeam);
const image = { 'laser.beamImage': images[0], 'laser.beamSource': 'measured' };
// At the wavelength it was drawn for: a shorter one makes M², and with it the profile's cost, three times as large.
const caustic = {
  'laser.causticTable': table,
  'laser.ratioSource': 'measured',
  'laser.wavelength': wideBeam.wavelength,
};
const waist = { 'laser.beamSource': 'caustic', 'expander.waistSource': 'measured' };
const further = {
  'spot.measuredProfile': spots[0],
  'spot.measuredPixelPitch': 1e-6,
  'spot.measuredProfilePlane': 'typed',
  'spot.measuredProfileZ': 5e-5,
  'spot.measuredScaling': 'energy',
};
const spot = {
  'spot.measuredProfile': spots[1],
  'spot.measuredScaling': 'measured',
  'spot.otherProfiles': [further],
};
const threeZ = { z: [-1e-4, 0, 2e-4], diameter: [3e-5, 2e-5, 4e-5], diameterY: [3e-5, 3e-5, 3e-5] };
const focus = {
  'focus.measuredCaustic': { name: 'focus.csv', ...threeZ },
  'focus.measuredCausticOffset': 0,
};
const marks = { 'threshold.spotTable': spotTables[0], 'ripples.series': rippleTables[0] };
const picture = {
  'markPicture.picture': markPictures[0],
  'markPicture.scaleSource': 'typed',
  'markPicture.regionSource': 'whole',
};
const rippled = Object.fromEntries(
  ['micrograph', 'otherMicrograph'].flatMap((prefix) => [
    [`${prefix}.picture`, micrographs[0]],
    [`${prefix}.scaleSource`, 'typed'],
    [`${prefix}.regionSource`, 'whole'],
  ]),
);
const ladder = { 'ladder.table': ladderTables[0] };
const section = { 'groove.sectionFile': sections[0] };
const powers = { 'threshold.spotTable': spotTables[1] };
// Hardly any step and a large tolerance: a focus with a depth, which a tilt limits the field by.
const deep = {
  'plate.source': 'designed',
  'plate.designPhase': 0.3,
  'focus.depthTolerance': 0.3,
  'workpiece.tilt': 1e-3,
};
// Mostly none: what is measured costs time, and few quantities follow from it alone.
export const measured = fc.constantFrom<Inputs>(
  ...Array<Inputs>(4).fill({}),
  image,
  caustic,
  { ...caustic, ...waist },
  { ...spot, ...focus, ...powers, ...picture },
  { ...deep, 'workpiece.z': 0 },
);

/** Designs, factors of the base units and changes that are always tried: few of the drawn ones have every result. */
export const sureToBeMet: [Inputs, number, number, number, Inputs, Inputs][] = [
  [
    designGraph.initial,
    1,
    -2,
    3,
    {},
    {
      ...spot,
      ...focus,
      ...marks,
      ...ladder,
      ...section,
      ...picture,
      ...rippled,
      'micrograph.smoothing': 2,
      'laser.polarisation': 'linear',
    },
  ],
  [designGraph.initial, -1, 2, 1, {}, { ...deep, 'workpiece.z': 0 }],
  [designGraph.initial, 2, 1, -1, {}, image],
  // Lines beyond a minimum of the modulation.
  [designGraph.initial, 1, -1, 2, {}, { 'scan.lineSpacing': 14e-6 }],
];
