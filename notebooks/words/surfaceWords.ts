import type { Word } from './word.ts';

/** Ripples, and what a surface with them does. */
export const surfaceWords: readonly Word[] = [
  {
    id: 'ripples',
    word: 'Ripples',
    also: ['LIPSS', 'laser-induced periodic surface structures', 'LSFL', 'HSFL', 'nanoripples'],
    meaning:
      'Fine parallel ridges that ultrashort pulses write near the threshold, about a wavelength apart. Much finer ones, of less than half a wavelength, come about otherwise and are left out here.',
    quantities: ['ripples.period', 'ripples.direction'],
    covers: ['ripples.directionIfThere', 'ripples.longPeriod'],
    see: ['period', 'ridges', 'ripple-window'],
  },
  {
    id: 'period',
    word: 'Period',
    also: ['ripple spacing', 'lambda', 'Λ', 'spatial period'],
    symbol: '\\Lambda',
    meaning:
      'Distance from ridge to ridge. The surface-wave model gives an upper mark; measured periods are usually 5 to 30 % of a wavelength shorter, and fall with more pulses.',
    convention: 'At right angles to the ridges.',
    quantities: ['ripples.period', 'micrograph.period'],
    covers: ['ripples.series'],
    see: ['surface-wave', 'incidence', 'micrograph'],
  },
  {
    id: 'ridges',
    word: 'Ridges',
    also: ['direction of ripples', 'orientation', 'wave vector'],
    symbol: '\\beta',
    meaning:
      'The raised lines between two valleys. The wave vector, as a Fourier transform shows it, stands at right angles to them.',
    convention: 'Direction in which they run, against the direction of the scan.',
    quantities: ['ripples.direction', 'micrograph.ridgesToScan'],
    see: ['polarisation', 'ripples'],
  },
  {
    id: 'surface-wave',
    word: 'Surface wave',
    also: ['surface plasmon', 'SPP', 'surface-plasmon polariton'],
    meaning:
      'A wave of light and electrons bound to the surface of a metal. Where it meets the incoming light the surface is heated in stripes, which is thought to seed ripples. Not every metal binds one at every wavelength.',
    quantities: ['ripples.period'],
    see: ['optical-constants', 'period'],
  },
  {
    id: 'optical-constants',
    word: 'Optical constants',
    also: ['n and k', 'extinction coefficient', 'complex index', 'permittivity'],
    symbol: 'n + ik',
    meaning:
      'Refractive index and extinction coefficient of a metal. They set how much it absorbs and how far apart ripples are expected; samples differ.',
    convention: 'Of the bulk, at the laser’s wavelength.',
    quantities: ['ripples.typedIndex', 'ripples.typedExtinction'],
    covers: ['ripples.constantsSource', 'workpiece.ambientIndex'],
    see: ['absorptance', 'surface-wave'],
  },
  {
    id: 'incidence',
    word: 'Angle of incidence',
    also: ['incidence', 'tilted workpiece', 's and p', 'footprint'],
    symbol: '\\theta',
    meaning:
      'Angle between beam and the normal of the surface, set on purpose. The spot grows long by $1/\\cos\\theta$, the fluence falls by $\\cos\\theta$, and in p polarisation the period splits in two; in s it grows a little.',
    convention: 'In air; 0 where the beam falls straight onto the surface.',
    quantities: ['workpiece.incidence'],
    covers: ['workpiece.incidenceDirection'],
    see: ['tilt', 'period'],
  },
  {
    id: 'ripple-window',
    word: 'Ripple window',
    also: ['window for ripples', 'ripple regime'],
    meaning:
      'Fluence and number of pulses between which ripples grow: below nothing, above grooves and spikes. Both bounds are for you to find on your material.',
    convention: 'Incident fluence per pulse; pulses in each place.',
    quantities: ['ripples.windowLow', 'ripples.windowHigh', 'ripples.areaInWindow'],
    covers: ['ripples.pulsesLow', 'ripples.pulsesHigh', 'ripples.pulseGain', 'ripples.pulseGainAtTop'],
    see: ['fluence-window', 'ripples'],
  },
  {
    id: 'regularity',
    word: 'Regularity',
    also: ['orientation half-width', 'DLOA', 'coherence length', 'dispersion of orientation'],
    symbol: '\\delta\\varphi',
    meaning:
      'How parallel and even ripples are: the spread of their local direction, and the distance over which they keep step. Both depend on the smoothing, which is printed with them.',
    convention:
      'Half-width at half maximum of the direction; length at which the correlation has fallen to 1/e.',
    quantities: ['micrograph.halfWidth', 'micrograph.coherenceAlong', 'micrograph.coherenceAcross'],
    covers: ['micrograph.smoothing'],
    see: ['micrograph', 'ripples'],
  },
  {
    id: 'micrograph',
    word: 'Micrograph',
    also: ['SEM picture', 'electron micrograph', 'microscope picture'],
    meaning:
      'A picture of the surface through a microscope. With its scale known, the period, direction and regularity of ripples are measured in it.',
    quantities: ['micrograph.period', 'micrograph.direction'],
    covers: ['micrograph.*', 'otherMicrograph.*'],
    see: ['scale-bar', 'regularity', 'period'],
  },
  {
    id: 'contact-angle',
    word: 'Contact angle',
    also: ['wetting', 'hydrophobic', 'Young', 'water drop'],
    symbol: '\\theta_\\text{Y}',
    meaning:
      'Angle at which a drop meets the surface: below 90° it wets, above it does not. Fresh laser-treated steel often wets, and changes over days to weeks.',
    quantities: ['ripples.flatAngle', 'ripples.wenzelAngle', 'ripples.cassieAngle'],
    see: ['wenzel-cassie'],
  },
  {
    id: 'wenzel-cassie',
    word: 'Wenzel and Cassie',
    also: ['Cassie–Baxter', 'roughness factor', 'air in the valleys'],
    symbol: 'r\\cos\\theta',
    meaning:
      'Two estimates of the contact angle on a rough surface: the liquid fills the valleys (Wenzel), or it rests on the ridges with air below (Cassie and Baxter).',
    quantities: ['ripples.roughness', 'ripples.depth', 'ripples.solidFraction'],
    see: ['contact-angle'],
  },
  {
    id: 'wave-vector',
    word: 'Wave vector',
    also: ['grating vector', 'direction of a pattern', 'k vector'],
    meaning:
      'The direction in which a pattern of waves or ridges repeats, at right angles to the ridges. Its length is $2\\pi$ over the period.',
    see: ['period', 'ridges'],
  },
  {
    id: 'incidence-plane',
    word: 'Plane of incidence',
    also: ['p polarisation', 's polarisation', 'parallel and perpendicular'],
    meaning:
      'The plane that holds the beam and the upright of the surface. Light whose field swings in it is p-polarised, light whose field swings across it s-polarised.',
    see: ['incidence', 'polarisation'],
  },
];
