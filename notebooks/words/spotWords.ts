import type { Word } from './word.ts';

/** The spot: its kinds, and the numbers that describe a profile. */
export const spotWords: readonly Word[] = [
  {
    id: 'profile',
    word: 'Profile',
    also: ['beam profile', 'cross-section of the spot', 'intensity distribution'],
    meaning:
      'Fluence against the distance from the axis, in one plane. A measured one can be laid over the predicted one.',
    convention: 'Fluence per pulse.',
    quantities: ['spot.measuredDeviation', 'spot.measuredWidth', 'spot.measuredDip'],
    covers: [
      'spot.measuredProfile',
      'spot.otherProfiles',
      'spot.measuredReach',
      'spot.measuredScaling',
      'spot.measuredPeakFluence',
      'spot.predictedDip',
      'spot.predictedPeakFluence',
      'spot.predictedWidth',
    ],
    see: ['flat-top', 'ring', 'peaked'],
  },
  {
    id: 'flat-top',
    word: 'Flat-top',
    also: ['top hat', 'tophat', 'uniform spot', 'super-Gaussian'],
    meaning:
      'A spot whose middle is level. Here it counts as one where the dip is below 5 % and the plateau ratio above 0.30. Its flanks stay soft: a real flat-top is no disc.',
    quantities: ['spot.dip', 'spot.areaRatio'],
    see: ['plateau', 'dip', 'shallow-ring', 'edge-width'],
  },
  {
    id: 'ring',
    word: 'Ring',
    also: ['donut', 'doughnut', 'annular', 'dark centre'],
    meaning: 'A spot with a dip of more than 10 % in its middle and a bright crest around it.',
    convention: 'Diameter of its crest, where the fluence is highest.',
    quantities: ['spot.ringDiameter', 'spot.dip'],
    see: ['dip', 'shallow-ring', 'crest'],
  },
  {
    id: 'shallow-ring',
    word: 'Shallow ring',
    meaning:
      'Between flat-top and ring: a dip of 5 to 10 %. It evens out what a moving spot leaves, since a scanned flat-top doses the middle of its line most.',
    quantities: ['spot.dip'],
    see: ['flat-top', 'ring', 'modulation'],
  },
  {
    id: 'peaked',
    word: 'Peaked spot',
    also: ['peak', 'spiky'],
    meaning: 'A spot that is highest on its axis and has no level middle. A fainter ring may run around it.',
    convention: 'Height of the ring as a part of the peak; diameter of its brightest circle.',
    quantities: ['spot.ringAroundHeight', 'spot.ringAroundDiameter'],
    see: ['profile', 'halo'],
  },
  {
    id: 'dip',
    word: 'Dip',
    also: ['central dip', 'contrast of the ring', 'hollow'],
    symbol: 'D',
    meaning:
      'How far the axis lies below the brightest place: $1 - I(0)/I_\\text{max}$. 0 for a peak or a perfect flat-top, 100 % for a ring with a black middle.',
    convention: 'Part of the peak.',
    quantities: ['spot.dip', 'spot.trough'],
    covers: ['workpiece.deepestDipMet'],
    see: ['ring', 'plateau'],
  },
  {
    id: 'crest',
    word: 'Crest',
    also: ['ring diameter', 'bright ring'],
    symbol: '2\\rho_\\text{max}',
    meaning: 'The circle on which a ring is brightest.',
    convention: 'Its diameter.',
    quantities: ['spot.ringDiameter'],
    see: ['ring'],
  },
  {
    id: 'spot-width',
    word: 'Spot width',
    also: ['spot size', 'spot diameter', 'half-maximum width'],
    symbol: 'd_{0.5}',
    meaning:
      'Diameter of a disc that has the area in which the fluence is above half its peak. It works for rings and uneven spots too. Do not compare it with a 1/e² diameter.',
    convention: 'Half of the peak, by area, from edge to edge.',
    quantities: ['spot.width', 'wish.spotWidth'],
    covers: ['wish.*'],
    see: ['full-width', 'diameter', 'effective-area'],
  },
  {
    id: 'plateau',
    word: 'Plateau',
    also: ['plateau ratio', 'flat part', 'unevenness'],
    symbol: 'A_{0.9}/A_{0.5}',
    meaning:
      'The level part of a spot. The plateau ratio compares the area above 90 % of the peak with that above half: 0.152 for a Gaussian, 1 for a disc.',
    quantities: ['spot.areaRatio', 'spot.unevenness', 'spot.trough'],
    see: ['flat-top', 'uniformity', 'depth-of-focus'],
  },
  {
    id: 'uniformity',
    word: 'Uniformity and flatness',
    also: ['ISO 13694', 'homogeneity', 'flatness', 'beam uniformity'],
    symbol: 'U_\\eta,\\ F_\\eta',
    meaning:
      'Two numbers of ISO 13694, spread and mean of the fluence above a clip. They hardly tell a flat-top from a Gaussian; plateau ratio, dip and edge width do.',
    convention: 'Where the fluence is above half its peak.',
    quantities: ['spot.uniformity', 'spot.flatness'],
    see: ['plateau', 'edge-width'],
  },
  {
    id: 'edge-width',
    word: 'Edge width',
    also: ['edge steepness', '10–90 %'],
    meaning:
      'How far out the flank of a spot reaches from bright to dark. A single step makes no sharp edge: 0.7 to 1 focus radii near the focus, more with a stop than without.',
    convention: 'From 90 % to 10 % of the peak, along the radius.',
    quantities: ['spot.edgeWidth'],
    see: ['flat-top', 'focus-radius'],
  },
  {
    id: 'halo',
    word: 'Halo',
    also: ['tail', 'side lobes', 'wings', 'diffraction rings'],
    meaning:
      'Faint light far from the spot, which every hard edge in the beam sends there. It holds some energy that adds dose and heat beside the marks.',
    quantities: ['spot.energyInHalf'],
    see: ['d4-sigma', 'stop'],
  },
  {
    id: 'effective-area',
    word: 'Effective area',
    also: ['Aeff', 'equivalent area'],
    symbol: 'A_\\text{eff}',
    meaning:
      'Energy over peak fluence: the area that would take all of the energy at the peak throughout. For a Gaussian $\\pi w^2/2$. It is the area to use where a ring has no single radius.',
    convention: 'Energy that passes the stop over peak fluence, per pulse.',
    quantities: ['spot.effectiveArea'],
    see: ['peak-fluence', 'spot-width'],
  },
  {
    id: 'side-lobe',
    word: 'Side lobes',
    also: ['rings around the spot', 'diffraction rings', 'sidelobe'],
    meaning:
      'Faint rings of light around the spot, from the edges of step and stop. Far above the threshold they mark the surface too.',
    see: ['halo', 'mark'],
  },
];
