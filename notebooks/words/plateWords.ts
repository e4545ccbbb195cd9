import type { Word } from './word.ts';

/** The plate with its step, the stop, and how the beam must suit them. */
export const plateWords: readonly Word[] = [
  {
    id: 'plate',
    word: 'Plate',
    also: ['phase plate', 'phase mask', 'beam shaper', 'diffractive optic', 'binary phase element'],
    meaning:
      'A window of glass with a shallow round step in its middle. It takes no light away; it delays one part of the beam against the other, and the lens turns that into another spot.',
    convention: 'Diameter of the step, from edge to edge.',
    quantities: ['plate.stepDiameter', 'plate.stepHeight'],
    covers: ['plate.source', 'plate.raised', 'plate.madeHeight', 'plate.thickness'],
    see: ['step', 'phase', 'stop'],
  },
  {
    id: 'step',
    word: 'Step',
    also: ['step diameter', 'step radius', 'step height', '2a', 'a', 'h'],
    symbol: '2a',
    meaning:
      'The round part of the plate that is higher, or lower, than the rest. Ten millimetres across is usual, about a micrometre high.',
    convention: 'Diameter of the step is $2a$, from edge to edge.',
    quantities: ['plate.stepDiameter', 'plate.stepHeight'],
    see: ['plate', 'step-ratio', 'half-wave'],
  },
  {
    id: 'phase',
    word: 'Phase of the step',
    also: ['phase shift', 'delay', 'retardation', 'phi', 'pi step'],
    symbol: '\\varphi',
    meaning:
      'By how much light through the raised part lags behind the light beside it, as a part of a wave: $\\varphi = 2\\pi (n-1) h/\\lambda$. Half a wave is $\\pi$ or 180°: crest meets trough.',
    convention: 'A delay counts as positive.',
    quantities: ['plate.stepPhase', 'plate.designPhase'],
    see: ['half-wave', 'refractive-index'],
  },
  {
    id: 'half-wave',
    word: 'Half a wave',
    also: ['π', 'pi', 'lambda/2', 'half-wave step', '180°'],
    symbol: '\\varphi = \\pi',
    meaning:
      'A delay that turns the sign of the light: what comes from the middle then works against what comes from around it. In fused silica at 1030 nm that takes a step of 1.144 µm.',
    quantities: ['plate.halfWaveHeight', 'explain.axisIrradianceHalfWave'],
    see: ['phase', 'interference', 'wavelength'],
  },
  {
    id: 'refractive-index',
    word: 'Refractive index',
    also: ['n', 'Sellmeier', 'dispersion', 'fused silica', 'glass'],
    symbol: 'n',
    meaning:
      'How much slower light goes in a glass than in air. It depends on the wavelength, and with it the phase of a step of given height.',
    convention: 'Relative to air, at the laser’s wavelength.',
    quantities: ['plate.refractiveIndex'],
    covers: ['plate.typedIndex', 'plate.glass'],
    see: ['phase', 'optical-constants'],
  },
  {
    id: 'step-ratio',
    word: 'Step ratio',
    also: ['kappa', 'κ', 'a/w'],
    symbol: '\\kappa',
    meaning:
      'Step diameter over beam diameter at the plate, $\\kappa = a/w$. At 1 they are equal, which is common practice; the best ratio depends on the stop.',
    convention: 'Step radius over 1/e² radius; the same for diameters.',
    quantities: ['match.stepRatio', 'match.goalRatio'],
    covers: ['match.goal', 'rule.dipInFocus', 'rule.flatTopShare'],
    see: ['stop-ratio', 'dark-ratio', 'flattest-ratio', 'match'],
  },
  {
    id: 'dark-ratio',
    word: 'Dark-centre ratio',
    also: ['null', 'dark centre'],
    symbol: '\\kappa_\\text{dark}',
    meaning:
      'Step ratio at which the middle of the focus is darkest. Without a stop, and with half a wave, it is $\\sqrt{\\ln 2} = 0.8326$: half of the amplitude then comes from inside the step.',
    quantities: ['match.darkRatio', 'match.darkestAxis'],
    see: ['step-ratio', 'ring', 'interference'],
  },
  {
    id: 'flattest-ratio',
    word: 'Flattest ratio',
    also: ['flat maximum'],
    symbol: '\\kappa_\\text{flat}',
    meaning:
      'Step ratio at which the profile in the focus itself has no curvature on the axis: 1.2955 without a stop, with half a wave.',
    quantities: ['match.flattestRatio'],
    see: ['step-ratio', 'zero-curvature'],
  },
  {
    id: 'stop',
    word: 'Stop',
    also: ['aperture', 'clear aperture', 'pupil', '2R'],
    symbol: '2R',
    meaning:
      'The smallest round opening on the way: the edge of the plate, the scanner’s pupil or the lens. It decides as much about the spot as the step does.',
    convention: 'Clear diameter $2R$, taken in the plane of the plate.',
    quantities: ['plate.apertureDiameter', 'plate.stop'],
    see: ['stop-ratio', 'transmission'],
  },
  {
    id: 'stop-ratio',
    word: 'Stop ratio',
    also: ['R/w', 'truncation ratio', 'overfill'],
    symbol: 'R/w',
    meaning:
      'Stop diameter over beam diameter at the plate. The literature’s truncation ratio is usually the other way up, $w/R$.',
    convention: 'Stop radius over 1/e² radius.',
    quantities: ['match.stopRatio'],
    see: ['stop', 'step-ratio'],
  },
  {
    id: 'match',
    word: 'Matching',
    also: ['mode matching', 'beam matching'],
    meaning:
      'Making the beam as wide as the step asks for, by magnification. Five per cent too wide or too narrow already changes the dip.',
    quantities: ['match.magnification', 'sensitivity.dipWiderBeam', 'sensitivity.dipNarrowerBeam'],
    covers: ['sensitivity.*'],
    see: ['step-ratio', 'expander'],
  },
  {
    id: 'centring',
    word: 'Centring',
    also: ['decentring', 'off centre', 'alignment', 'misalignment', 'offset of the beam'],
    symbol: '\\Delta_\\text{off}',
    meaning:
      'Bringing the beam to the middle of the step. With half a wave a beam beside the middle cannot be told in the focus itself, where the spot stays alike on both sides; it shows in a plane before or behind it, most where a ring is about to become a flat spot.',
    convention:
      'Difference of the two sides over the higher one, with the beam 5 % of its 1/e² radius beside the middle. The lesson on alignment takes it over their mean.',
    quantities: [
      'explain.offCentreHere',
      'explain.offCentreFocus',
      'centring.z',
      'centring.rise',
      'centring.offset',
    ],
    see: ['match', 'defocus', 'ellipticity'],
  },
  {
    id: 'transmission',
    word: 'Transmission',
    also: ['losses', 'throughput of optics', 'Fresnel loss', 'clipping', 'coating'],
    symbol: 'T',
    meaning:
      'The part of the energy that goes on. The stop lets $1 - e^{-2(R/w)^2}$ of a Gaussian through; each uncoated surface reflects 3 to 4 % (fused silica, calcium fluoride, common glass; sapphire 7 %).',
    convention: 'Part of the pulse energy incident on the plate.',
    quantities: ['plate.transmission', 'losses.plateTransmission', 'losses.opticsTransmission'],
    see: ['stop', 'pulse-energy', 'incident'],
  },
  {
    id: 'interference',
    word: 'Interference',
    also: ['amplitude', 'superposition', 'amplitudes'],
    symbol: 'U',
    meaning:
      'Light adds as amplitudes, with their sign, not as power. The spot is the sum of what comes through the step and what comes around it; where the two are equal and opposite it is dark.',
    convention: 'Amplitudes relative to the axis of the plain focus.',
    quantities: ['explain.centreAmplitude', 'explain.outerAmplitude', 'explain.axisIrradianceInFocus'],
    see: ['half-wave', 'dark-ratio'],
  },
  {
    id: 'b-integral',
    word: 'B-integral',
    also: ['self-phase modulation', 'nonlinear index', 'n2', 'Kerr'],
    symbol: 'B',
    meaning:
      'Phase that an intense pulse gathers in glass because it raises the refractive index by itself. Well below 1 rad it does the shape no harm.',
    convention: 'On the axis, at the peak of the pulse.',
    quantities: ['scaleUp.bIntegral'],
    covers: ['plate.nonlinearSource', 'plate.typedNonlinearIndex'],
    see: ['irradiance', 'damage-threshold'],
  },
  {
    id: 'damage-threshold',
    word: 'Damage threshold of an optic',
    also: ['LIDT', 'laser-induced damage', 'ISO 21254'],
    symbol: 'F_\\text{d}',
    meaning:
      'Fluence that destroys a coating or a glass. It depends on duration and number of pulses; a supplier’s value for nanoseconds says nothing about femtoseconds.',
    convention: 'Peak fluence per pulse.',
    quantities: ['plate.damageThreshold', 'plate.fluence', 'plate.damageShare'],
    covers: ['plate.damageMargin', 'plate.mostSpots'],
    see: ['threshold', 'peak-fluence'],
  },
  {
    id: 'laser-class',
    word: 'Class 4 laser',
    also: ['laser safety', 'eye safety', 'eyewear', 'goggles', 'safety glasses', 'X-rays'],
    meaning:
      'The class of lasers that injure eyes and skin, directly and by a stray reflection, and can set things on fire. The laser safety officer and local rules decide; no value here is an all-clear.',
    convention: 'Irradiances are peaks in time and space.',
    quantities: ['plate.peakIrradiance', 'spot.peakIrradiance'],
    see: ['irradiance', 'radius-at-1-e'],
  },
];
