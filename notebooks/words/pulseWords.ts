import type { Word } from './word.ts';

/** The light of the laser: wavelength, pulses, polarisation. */
export const pulseWords: readonly Word[] = [
  {
    id: 'wavelength',
    word: 'Wavelength',
    also: ['lambda', 'λ', 'second harmonic', 'SHG'],
    symbol: '\\lambda',
    meaning:
      'Centre wavelength of the light. A step of half a wave at 1030 nm is nearly a whole wave at 515 nm, where it does next to nothing.',
    convention: 'In vacuum.',
    quantities: ['laser.wavelength'],
    see: ['half-wave', 'phase'],
  },
  {
    id: 'pulse-energy',
    word: 'Pulse energy',
    also: ['energy per pulse'],
    symbol: 'E',
    meaning:
      'Energy of one pulse where it is measured. What reaches the workpiece is less: optics, plate and stop each take some.',
    convention: 'Per pulse, before the losses that are named and before the stop.',
    quantities: ['laser.usedPulseEnergy', 'losses.energyAfter'],
    covers: ['laser.pulseEnergy', 'laser.energySource', 'laser.maxPulseEnergy'],
    see: ['average-power', 'transmission', 'peak-fluence'],
  },
  {
    id: 'average-power',
    word: 'Average power',
    also: ['mean power', 'power meter'],
    symbol: 'P',
    meaning: 'Pulse energy times repetition rate: what a power meter reads.',
    convention: 'Mean over time, where the pulse energy is measured.',
    quantities: ['laser.averagePower', 'laser.maxPower'],
    covers: ['laser.typedPower'],
    see: ['pulse-energy', 'repetition-rate', 'peak-power'],
  },
  {
    id: 'repetition-rate',
    word: 'Repetition rate',
    also: ['pulse frequency', 'rep rate', 'prf'],
    symbol: 'f_\\text{rep}',
    meaning: 'Pulses a second, or bursts a second where the laser fires bursts.',
    quantities: ['laser.repetitionRate', 'laser.maxRepetitionRate'],
    see: ['pulse-spacing', 'burst'],
  },
  {
    id: 'pulse-duration',
    word: 'Pulse duration',
    also: ['pulse length', 'pulse width', 'femtosecond', 'picosecond', 'tau'],
    symbol: '\\tau',
    meaning:
      'How long one pulse lasts. It enters the peak irradiance in the glass and on the workpiece, not the fluence.',
    convention: 'Full width at half maximum of a Gaussian pulse.',
    quantities: ['laser.pulseDuration'],
    see: ['full-width', 'irradiance'],
  },
  {
    id: 'peak-power',
    word: 'Peak power',
    symbol: 'P_\\text{peak}',
    meaning:
      'Power at the height of a pulse: $0.94\\,E/\\tau$ for a Gaussian pulse. A microjoule in a quarter of a picosecond is nearly four megawatts.',
    convention: 'Peak in time, per pulse.',
    see: ['average-power', 'irradiance'],
  },
  {
    id: 'burst',
    word: 'Burst',
    also: ['pulse train', 'burst mode'],
    symbol: 'n_\\text{burst}',
    meaning:
      'Several pulses in place of one, nanoseconds apart. They meet the same place of the surface before the scanner has moved.',
    quantities: ['laser.pulsesPerBurst', 'laser.burstPulses', 'laser.burstSpacing'],
    see: ['repetition-rate', 'incubation'],
  },
  {
    id: 'polarisation',
    word: 'Polarisation',
    also: ['polarization', 'linear', 'circular', 'radial', 'azimuthal', 's-polarised', 'p-polarised'],
    symbol: '\\alpha_E',
    meaning:
      'The direction in which the electric field swings. It sets the direction of ripples: on metals their ridges stand at right angles to it.',
    convention: 'Angle against the direction of the scan, counter-clockwise, as seen on the workpiece.',
    quantities: ['laser.polarisationAngle', 'laser.polarisation'],
    see: ['ripples', 'ridges'],
  },
  {
    id: 'wavefront',
    word: 'Wavefront',
    also: ['collimated', 'curvature', 'phase front'],
    meaning:
      'The surface on which light swings in step. A flat one is collimated; a curved one moves the focus, and with it every plane of the family.',
    see: ['phase', 'expander'],
  },
];
