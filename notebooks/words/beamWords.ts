import type { Word } from './word.ts';

/** The beam: its size, however it is given, and its quality. */
export const beamWords: readonly Word[] = [
  {
    id: 'gaussian-beam',
    word: 'Gaussian beam',
    also: ['Gauss', 'bell-shaped beam', 'TEM00'],
    symbol: 'e^{-2r^2/w^2}',
    meaning:
      'A beam that is brightest on its axis and falls off like a bell: $I(r) = I_0\\, e^{-2r^2/w^2}$. It stays a Gaussian wherever one looks along it, only wider or narrower.',
    see: ['radius', 'plain-beam'],
  },
  {
    id: 'raw-beam',
    word: 'Raw beam',
    also: ['laser beam', 'input beam'],
    meaning: 'The beam as it leaves the laser, before the expander.',
    convention: '1/e² diameter.',
    quantities: ['laser.usedBeamDiameter', 'laser.beamDiameter'],
    covers: ['laser.beamSource'],
    see: ['expander', 'diameter'],
  },
  {
    id: 'radius',
    word: '1/e² radius',
    also: ['beam radius', 'Gaussian radius', 'w', '1/e2', '13.5 % radius'],
    symbol: 'w',
    meaning:
      'Distance from the axis to where the irradiance has fallen to $1/e^2$, or 13.5 %, of the peak. “Beam radius” means this one throughout. 86.5 % of the power lies inside.',
    convention: '1/e² of the irradiance, from the axis to the edge.',
    see: ['diameter', 'radius-at-1-e', 'full-width', 'sigma'],
  },
  {
    id: 'diameter',
    word: '1/e² diameter',
    also: ['beam diameter', 'beam width', '2w', '13.5 % diameter'],
    symbol: '2w',
    meaning:
      'Twice the 1/e² radius: from edge to edge where the irradiance is 13.5 % of the peak. All beam diameters here are this one. For a Gaussian it equals D4σ and is 1.699 times the full width at half maximum.',
    convention: '1/e² of the irradiance, from edge to edge.',
    quantities: ['plate.beamDiameter', 'laser.usedBeamDiameter'],
    see: ['radius', 'd4-sigma', 'full-width'],
  },
  {
    id: 'radius-at-1-e',
    word: '1/e radius',
    also: ['1/e diameter', '36.8 %', 'eye safety', 'd63'],
    symbol: 'w/\\sqrt{2}',
    meaning:
      'Where the irradiance has fallen to $1/e$, or 36.8 %, of the peak: smaller than the 1/e² radius by $\\sqrt2$. Laser safety standards use it, and papers now and then: read which of the two is meant before you compare.',
    convention: '1/e of the irradiance; not used for any number here.',
    see: ['radius', 'laser-class'],
  },
  {
    id: 'full-width',
    word: 'Full width at half maximum',
    also: ['FWHM', 'half-width', 'half maximum', 'half-power width'],
    symbol: '\\mathrm{FWHM}',
    meaning:
      'From edge to edge where a curve is at half its peak. For a Gaussian beam it is 1.177 times the 1/e² radius, so that $2w = 1.699\\,\\mathrm{FWHM}$. Pulse durations are given this way here.',
    convention: 'Half of the irradiance, from edge to edge.',
    see: ['diameter', 'pulse-duration', 'spot-width'],
  },
  {
    id: 'sigma',
    word: 'Standard deviation of a beam',
    also: ['sigma', 'σ', 'rms width', 'second moment'],
    symbol: '\\sigma',
    meaning:
      'Root of the second moment along one axis. For a Gaussian it is half the 1/e² radius: $w = 2\\sigma$. It is not the σ of an uncertainty.',
    convention: 'From the axis, along one direction.',
    see: ['d4-sigma', 'standard-uncertainty'],
  },
  {
    id: 'd4-sigma',
    word: 'D4σ diameter',
    also: ['second-moment diameter', 'ISO 11146', 'D4sigma', '4 sigma'],
    symbol: 'D_{4\\sigma}',
    meaning:
      'Four times σ, as beam cameras report it (ISO 11146). For a Gaussian it is the 1/e² diameter. A hard edge in the plate sends a faint tail far out, so for a shaped spot the number depends on the window in which it is taken.',
    convention: 'Second moments, from edge to edge, in a window of stated size.',
    quantities: ['spot.secondMomentDiameter'],
    see: ['diameter', 'halo'],
  },
  {
    id: 'propagation-ratio',
    word: 'M²',
    also: ['M squared', 'M2', 'beam propagation ratio', 'beam quality', 'times diffraction limited'],
    symbol: 'M^2',
    meaning:
      'How much wider the focus is than that of a perfect Gaussian of the same diameter before the lens; 1 is perfect. The focus radius $w_0$ and the Rayleigh length here never contain it: they are those of M² = 1.',
    convention: 'The same in both axes.',
    quantities: ['laser.usedBeamPropagationRatio', 'laser.beamPropagationRatio', 'laser.causticRatio'],
    covers: ['laser.ratioSource', 'laser.causticRatioUncertainty'],
    see: ['caustic', 'coherence', 'focus-radius'],
  },
  {
    id: 'waist',
    word: 'Waist',
    also: ['beam waist', 'd0'],
    symbol: 'd_0',
    meaning:
      'The narrowest place of a beam. A raw beam has one too, often inside the laser; how far the first lens is from it decides where an expander puts the light.',
    convention: '1/e² diameter.',
    quantities: ['laser.causticWaistDiameter', 'laser.causticWaistPosition', 'expander.usedWaistDistance'],
    covers: [
      'laser.causticWaistDiameterUncertainty',
      'laser.causticWaistPositionUncertainty',
      'expander.waistDistance',
      'expander.waistSource',
      'expander.causticOrigin',
    ],
    see: ['caustic', 'rayleigh-length'],
  },
  {
    id: 'caustic',
    word: 'Caustic',
    also: ['beam caustic', 'M² measurement', 'through-focus measurement'],
    meaning:
      'How the width of a beam changes along it. Measured at several places, it gives waist, Rayleigh length and M² in one fit.',
    convention: 'Table of places and diameters.',
    quantities: ['laser.causticScatter', 'focus.measuredCausticExcess', 'focus.measuredCausticDeviation'],
    covers: [
      'laser.causticTable',
      'focus.measuredCaustic',
      'focus.measuredCausticOffset',
      'focus.measuredCausticMeaning',
    ],
    see: ['waist', 'propagation-ratio', 'rayleigh-length'],
  },
  {
    id: 'divergence',
    word: 'Divergence',
    also: ['full angle', 'half angle'],
    symbol: '\\theta',
    meaning:
      'How fast a beam widens far from its waist. The smaller the waist, the larger the divergence: a wide beam before the lens makes a small focus.',
    convention: 'Full angle of the 1/e² diameter.',
    see: ['waist', 'convergence'],
  },
  {
    id: 'ellipticity',
    word: 'Ellipticity',
    also: ['elliptical beam', 'roundness', 'astigmatism'],
    symbol: '\\varepsilon',
    meaning:
      'Smaller over larger diameter of a beam, along its own two axes; above 0.87 it counts as round. A round step turns an elliptical beam into an uneven spot.',
    convention: 'Ratio of second-moment diameters.',
    quantities: [
      'laser.measuredEllipticity',
      'laser.measuredDiameterX',
      'laser.measuredDiameterY',
      'laser.measuredAngle',
    ],
    see: ['d4-sigma', 'beam-image'],
  },
  {
    id: 'beam-image',
    word: 'Beam image',
    also: ['camera image', 'beam profiler', 'beam camera'],
    meaning:
      'A picture of the beam on a camera chip, from which its diameter is measured. It must be neither saturated nor cut off, with a dark picture or a dark border to subtract.',
    convention: 'Second-moment diameter over a window three times as wide; a Gaussian fit beside it.',
    quantities: ['laser.measuredDiameter', 'laser.gaussianFitDiameter', 'laser.measuredUncertainty'],
    covers: ['laser.beamImage'],
    see: ['pixel-pitch', 'd4-sigma'],
  },
  {
    id: 'coherence',
    word: 'Coherence',
    also: ['Schell model', 'partially coherent'],
    meaning:
      'How well the light at two places of the beam keeps step. M² above 1 is taken here as a lack of it, the same everywhere: the pattern is then blurred a little, which can even help a flat-top. A beam whose M² comes from a warped wavefront behaves otherwise.',
    see: ['propagation-ratio'],
  },
  {
    id: 'plain-beam',
    word: 'Plain beam',
    also: ['unshaped beam', 'without the step', 'without the plate', 'Gaussian instead'],
    meaning:
      'The same beam with the plate taken out, or with a plate that has no step: what the shaped spot is compared with. Its focus is smaller, and at the same energy several times brighter: mind that before the plate comes out.',
    convention: 'Its focus radius is the 1/e² radius without M²; peaks are per pulse.',
    quantities: ['focus.radius', 'unshaped.focus.width', 'unshaped.spot.peakFluence'],
    covers: ['unshaped.*', 'ripples.unshapedRuns', 'ladder.unshaped.energy'],
    see: ['gaussian-beam', 'focus-radius'],
  },
  {
    id: 'expander',
    word: 'Expander',
    also: ['telescope', 'Galilean', 'Keplerian', 'beam expander'],
    meaning:
      'Two lenses that make the beam wider, to suit the step. A Keplerian one has a focus inside, where the air itself may break down; a Galilean one has none.',
    convention: 'The irradiance in the focus inside is the peak in time and space.',
    quantities: ['expander.magnification', 'expander.internalFocusIrradiance'],
    covers: ['expander.*'],
    see: ['magnification', 'match'],
  },
  {
    id: 'magnification',
    word: 'Magnification',
    symbol: 'm',
    meaning: 'Beam diameter behind the expander over that before it.',
    convention: 'Ratio of 1/e² diameters.',
    quantities: ['expander.magnification', 'match.magnification'],
    see: ['expander', 'match'],
  },
];
