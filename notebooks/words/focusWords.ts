import type { Word } from './word.ts';

/** Lens and focus, and the places along the beam. */
export const focusWords: readonly Word[] = [
  {
    id: 'focal-length',
    word: 'Focal length',
    also: ['lens', 'f-theta lens', 'scan lens', 'f'],
    symbol: 'f',
    meaning:
      'Distance behind a lens at which it gathers a collimated beam. Twice the focal length makes a spot twice as wide and four times as deep.',
    quantities: ['lens.focalLength'],
    covers: ['lens.distanceMode', 'lens.typedPlateDistance'],
    see: ['focus', 'convergence'],
  },
  {
    id: 'focus',
    word: 'Focus',
    also: ['focal plane', 'focal point'],
    meaning:
      'The plane in which the lens gathers the plain beam most narrowly. The shaped beam need not be narrowest, nor flattest, there.',
    quantities: ['ladder.zero'],
    see: ['focus-radius', 'defocus', 'focus-ladder'],
  },
  {
    id: 'focus-radius',
    word: 'Focus radius',
    also: ['spot radius', 'w0', 'diffraction limit', 'focal spot size'],
    symbol: 'w_0',
    meaning:
      'Radius of the plain beam in its focus, $w_0 = \\lambda f/(\\pi w)$: the scale in which every shaped spot is measured. A wider beam before the lens makes it smaller.',
    convention: '1/e² radius of the plain beam, without M².',
    quantities: ['focus.radius', 'unshaped.focus.width'],
    see: ['rayleigh-length', 'plain-beam', 'radius'],
  },
  {
    id: 'rayleigh-length',
    word: 'Rayleigh length',
    also: ['Rayleigh range', 'zR'],
    symbol: 'z_R',
    meaning:
      'Distance from the focus at which the plain beam is $\\sqrt2$ wider and half as bright on its axis: $z_R = \\pi w_0^2/\\lambda$. Distances along the beam are counted in it.',
    convention:
      'From the focus to one side, without M² (that of a measured caustic contains it). Twice as much, from side to side, is the confocal parameter.',
    quantities: ['focus.rayleighLength', 'laser.causticRayleighLength'],
    covers: ['laser.causticRayleighLengthUncertainty'],
    see: ['focus-radius', 'defocus', 'depth-of-focus'],
  },
  {
    id: 'defocus',
    word: 'Defocus',
    also: ['zeta', 'ζ', 'out of focus', 'above focus', 'below focus', 'side of the focus'],
    symbol: '\\zeta',
    meaning:
      'How far the workpiece is from the focus, in Rayleigh lengths. Above 0 it lies behind the focus, further from the lens. The two sides are alike for half a wave, a flat wavefront and a plate one focal length before the lens.',
    quantities: ['focus.defocus', 'workpiece.z'],
    see: ['z', 'rayleigh-length'],
  },
  {
    id: 'z',
    word: 'z',
    also: ['position of the workpiece', 'height', 'z axis', 'focus position'],
    symbol: 'z',
    meaning:
      'Place along the beam, 0 in the focal plane of the lens, growing away from the lens. A machine’s own scale may run the other way: the set-up sheet says which.',
    quantities: ['workpiece.z', 'ladder.zero'],
    covers: ['ladder.zeroUncertainty'],
    see: ['defocus', 'plane'],
  },
  {
    id: 'plane',
    word: 'Plane',
    also: ['usable plane', 'working plane', 'z plane'],
    meaning:
      'A place along the beam, and the spot that is found there. Moving the workpiece from plane to plane chooses flat-top, ring or peak.',
    quantities: ['workpiece.z'],
    covers: [
      'focus.planeGoal',
      'focus.searchedRange',
      'focus.largestDip',
      'focus.leastContrast',
      'focus.stripStep',
      'spot.measuredPlane',
      'spot.measuredProfilePlane',
      'spot.measuredProfileZ',
    ],
    see: ['family', 'depth-of-focus', 'zero-curvature'],
  },
  {
    id: 'family',
    word: 'Family of spots',
    also: ['through-focus family', 'sequence along the focus'],
    meaning:
      'All the spots that one plate gives along the beam: flat-tops, rings and peaked ones that follow one another. Which, in which order and how wide, is worked out for each design.',
    quantities: ['rule.flatTopShare', 'rule.dipInFocus'],
    see: ['plane', 'flat-top', 'ring'],
  },
  {
    id: 'zero-curvature',
    word: 'Zero-curvature plane',
    also: ['level centre'],
    symbol: 'z_i',
    meaning:
      'A plane in which the profile is neither hill nor hollow on its axis. That alone does not make a flat-top: further out it may still rise to a ring.',
    quantities: ['focus.zeroCurvaturePlanes'],
    see: ['flat-top', 'dip'],
  },
  {
    id: 'depth-of-focus',
    word: 'Depth of focus',
    also: ['depth of field', 'focal depth', 'DOF', 'confocal parameter'],
    symbol: '\\Delta z',
    meaning:
      'Stretch along z over which the plateau keeps its fluence within a tolerance you choose. For a plain beam people often quote $2z_R$, at whose ends the beam is 1.41 times as wide: that is a much looser demand.',
    convention: 'Whole stretch, from end to end, at the stated tolerance of the fluence.',
    quantities: ['spot.depthOfFocus', 'focus.depthTolerance'],
    see: ['depth-in-use', 'rayleigh-length', 'plateau'],
  },
  {
    id: 'depth-in-use',
    word: 'Depth in use',
    also: ['z budget', 'flatness of the part', 'levelling', 'height error'],
    symbol: '\\Delta z_\\text{F}',
    meaning:
      'How far the surface strays from its plane over a field: by tilt, uneven height, the curved focus of the scan lens, and warm optics. It must fit into the depth of focus.',
    convention: 'Whole stretch, all causes at their worst.',
    quantities: ['workpiece.zSpread', 'workpiece.heightError'],
    covers: ['workpiece.zMetSpread', 'workpiece.zWidthSpread', 'workpiece.allowedHeightError'],
    see: ['tilt', 'field-curvature', 'thermal-shift', 'depth-of-focus'],
  },
  {
    id: 'tilt',
    word: 'Tilt',
    also: ['slope of the workpiece', 'levelling'],
    symbol: '\\alpha',
    meaning:
      'Angle by which the surface leans against the focal plane, by mistake. Over a field it moves one edge nearer and the other further off.',
    quantities: ['workpiece.tilt', 'workpiece.allowedTilt', 'workpiece.allowedFieldTilt'],
    covers: ['workpiece.tiltDirection'],
    see: ['incidence', 'depth-in-use'],
  },
  {
    id: 'field-curvature',
    word: 'Field curvature',
    also: ['curved focal plane', 'petzval'],
    meaning:
      'How much further off, or nearer, a scan lens focuses at the edge of its field than in the middle.',
    quantities: ['scan.fieldCurvature'],
    see: ['depth-in-use', 'field'],
  },
  {
    id: 'thermal-shift',
    word: 'Thermal focus shift',
    also: ['thermal lens', 'warm optics'],
    symbol: '\\delta',
    meaning: 'How far the focus moves once lenses and windows are warm from the light that they absorb.',
    quantities: ['lens.thermalShift', 'scaleUp.absorbedPower'],
    covers: ['scaleUp.opticsAbsorption'],
    see: ['depth-in-use'],
  },
  {
    id: 'convergence',
    word: 'Convergence',
    also: ['numerical aperture', 'NA', 'f-number', 'paraxial'],
    symbol: '\\sin\\theta',
    meaning:
      'How steeply the edge of the beam (its 1/e² radius, or the stop where that is smaller) comes to the focus. The model is paraxial: it takes angles as small, and its error grows with their square.',
    convention: 'Half angle.',
    quantities: ['lens.convergence', 'lens.paraxialError'],
    see: ['focal-length', 'divergence'],
  },
];
