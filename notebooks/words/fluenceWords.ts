import type { Word } from './word.ts';

/** Fluence, threshold and marks. */
export const fluenceWords: readonly Word[] = [
  {
    id: 'fluence',
    word: 'Fluence',
    also: ['energy density', 'J/cm²', 'dose'],
    symbol: 'F',
    meaning:
      'Energy per area that one pulse puts down, different at every place of the spot. “The fluence” alone says too little: peak or mean, per pulse or accumulated.',
    convention: 'Incident, per pulse, unless said otherwise.',
    quantities: ['spot.peakFluence', 'spot.meanFluence'],
    covers: ['threshold.fluenceScale', 'focus.mapScale'],
    see: ['peak-fluence', 'mean-fluence', 'accumulated-fluence', 'irradiance'],
  },
  {
    id: 'peak-fluence',
    word: 'Peak fluence',
    also: ['F0', 'maximum fluence', 'F peak'],
    symbol: 'F_\\text{peak}',
    meaning:
      'Fluence of the brightest place of the spot. For a Gaussian $2E/(\\pi w^2)$: twice the energy over the area of the 1/e² circle. Thresholds compare with this one.',
    convention: 'Peak, per pulse, incident.',
    quantities: ['spot.peakFluence', 'unshaped.spot.peakFluence'],
    covers: ['workpiece.highestPeakMet', 'workpiece.lowestPeakMet', 'ripples.surfacePeak'],
    see: ['mean-fluence', 'threshold'],
  },
  {
    id: 'mean-fluence',
    word: 'Mean fluence',
    also: ['average fluence'],
    symbol: '\\bar F',
    meaning:
      'Fluence averaged over an area, which must be named. Papers often take energy over $\\pi w^2$, half the peak of a Gaussian; here the mean over the mark is meant.',
    convention: 'Mean over the marked area, per pulse, incident.',
    quantities: ['spot.meanFluence'],
    see: ['peak-fluence', 'effective-area'],
  },
  {
    id: 'accumulated-fluence',
    word: 'Accumulated fluence',
    also: ['dose', 'total fluence', 'cumulative fluence'],
    symbol: 'N_\\text{acc}',
    meaning:
      'Fluence of all pulses that reach a place, added up. It says how much came, not whether any single pulse was above the threshold.',
    convention: 'All lines, passes and bursts together, in peak fluences of one pulse.',
    quantities: ['scan.accumulatedPulses', 'scan.edgeExcess'],
    see: ['pulses-per-spot', 'modulation', 'peak-fluence'],
  },
  {
    id: 'irradiance',
    word: 'Irradiance',
    also: ['intensity', 'power density', 'W/cm²'],
    symbol: 'I',
    meaning:
      'Power per area. For a short pulse it is the fluence over its duration, times 0.94 at the height of a Gaussian pulse. Often called intensity.',
    convention: 'Peak in time and space.',
    quantities: ['spot.peakIrradiance', 'plate.peakIrradiance'],
    see: ['fluence', 'peak-power', 'b-integral'],
  },
  {
    id: 'incident',
    word: 'Incident',
    also: ['absorbed', 'transmitted', 'reflected'],
    meaning:
      'Of the light as it arrives. A metal reflects a part, absorbs the rest; thresholds of the literature are mostly of incident fluence. Percentages here say whether they are of incident or of transmitted energy.',
    quantities: ['heat.absorptance'],
    see: ['absorptance', 'transmission'],
  },
  {
    id: 'threshold',
    word: 'Threshold fluence',
    also: ['threshold', 'ablation threshold', 'Fth', 'damage threshold of the workpiece'],
    symbol: 'F_\\text{th}',
    meaning:
      'Fluence above which a pulse leaves a mark, and below which it does not. Values of the literature are a place to start; measure your own.',
    convention: 'Incident peak fluence per pulse, on a fresh surface unless a number of pulses is named.',
    quantities: ['threshold.fluence', 'threshold.fluenceAtN'],
    covers: [
      'threshold.source',
      'threshold.typedFluence',
      'threshold.typedUncertainty',
      'threshold.uncertainty',
      'workpiece.material',
    ],
    see: ['incubation', 'mark', 'diameter-squared'],
  },
  {
    id: 'incubation',
    word: 'Incubation',
    also: ['incubation exponent', 'S', 'accumulation', 'multi-pulse threshold'],
    symbol: 'F_\\text{th}(N) = F_\\text{th}(1)\\, N^{S-1}',
    meaning:
      'Pulses on one place make the next one more effective: the threshold falls with their number. An exponent of 1 means that it stays, 0.8 to 0.9 is usual for metals.',
    convention: 'Threshold per pulse, for N pulses on one place.',
    quantities: ['threshold.incubationExponent', 'threshold.fluenceAtN', 'threshold.floor'],
    covers: ['groove.countedFrom'],
    see: ['threshold', 'pulses-on-place'],
  },
  {
    id: 'pulses-on-place',
    word: 'Pulses on one place',
    also: ['N', 'shots per spot', 'number of pulses'],
    symbol: 'N',
    meaning:
      'How many pulses land in exactly one place: of a spot that stands still, or, in a scanned field, passes times pulses per burst. Pulses along a line are pulses per spot.',
    quantities: ['threshold.pulses', 'scan.pulsesInPlace'],
    see: ['incubation', 'pulses-per-spot'],
  },
  {
    id: 'mark',
    word: 'Mark',
    also: ['ablated spot', 'crater', 'imprint'],
    meaning: 'What a pulse leaves where it is above the threshold. A ring may leave an unmarked middle.',
    convention: 'Diameter of a disc with the same area.',
    quantities: ['spot.markDiameter', 'spot.markArea', 'spot.markInnerDiameter'],
    covers: ['spot.growthAgainst', 'spot.growthShows'],
    see: ['threshold', 'mark-picture', 'crater'],
  },
  {
    id: 'diameter-squared',
    word: 'D² plot',
    also: ['Liu plot', 'diameter squared', 'J. M. Liu', 'threshold plot'],
    symbol: 'D^2 = 2w^2\\ln(E/E_\\text{th})',
    meaning:
      'Squares of mark diameters against the logarithm of the pulse energy. For a Gaussian they lie on a line: its slope gives the beam radius, its foot the threshold. A shaped spot bends it, and is fitted with its own profile.',
    convention: '$D$ is the mark’s diameter, $w$ the 1/e² radius on the workpiece.',
    quantities: ['threshold.fittedFluence', 'threshold.fittedBeamRadius'],
    covers: ['threshold.fitModel', 'threshold.fittedUncertainty', 'threshold.fittedOffset'],
    see: ['threshold', 'coupon', 'fit'],
  },
  {
    id: 'coupon',
    word: 'Coupon',
    also: ['test piece', 'matrix of spots', 'energy series'],
    meaning:
      'A test piece with single spots at many energies, planes and numbers of pulses, from whose marks your own threshold follows.',
    quantities: ['coupon.lowEnergy', 'coupon.highEnergy'],
    covers: ['coupon.*', 'threshold.spotTable', 'threshold.leftOut'],
    see: ['diameter-squared', 'mark'],
  },
  {
    id: 'focus-ladder',
    word: 'Focus ladder',
    also: ['focus search', 'z scan', 'focus finding'],
    meaning:
      'A row of marks, each a little further along z. With the plain beam the row is alike on both sides of its middle, and the middle is the focus.',
    quantities: ['ladder.step', 'ladder.zero'],
    covers: ['ladder.*'],
    see: ['focus', 'z'],
  },
  {
    id: 'fluence-window',
    word: 'Fluence window',
    also: ['process window', 'F1', 'F2'],
    symbol: 'F_1 \\ldots F_2',
    meaning:
      'Fluences between which the surface becomes what is wanted. The narrower the window, the more a flat spot gains over a Gaussian.',
    convention: 'Incident fluence per pulse.',
    quantities: ['window.lowFluence', 'window.highFluence', 'window.gain', 'window.bestPeak'],
    covers: ['window.gainAtTop'],
    see: ['ripple-window', 'gain'],
  },
];
