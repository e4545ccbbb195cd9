import type { LimitKind } from '../lib/process/scanLimits.ts';

/** What binds, in words that stand after "beyond" and "is". */
export const limitWords: Readonly<Record<LimitKind, string>> = {
  'scanner speed': 'the highest speed of the scanner',
  acceleration: 'the acceleration of the scanner',
  'repetition rate': 'the highest repetition rate of the laser',
  power: 'the highest average power of the laser',
  heat: 'the temperature rise that is allowed',
};

/** What would help where that binds. */
export const limitHelp: Readonly<Record<LimitKind, string>> = {
  'scanner speed':
    'Lines further apart, or a scanner or lens that moves the spot faster, would help; more pulses a second would not.',
  acceleration:
    'Longer lines would help, since each turn then serves more of the field; more power would not.',
  'repetition rate':
    'A larger spot with its pulses further apart would help, or a laser with more pulses a second; a faster scanner would not.',
  power:
    'More power would help, or less energy to the same area: pulses or lines further apart, or a pulse energy no higher than the window asks for. A faster scanner would not.',
  heat: 'Less heat to the same area, or longer pauses for it to flow away, would help; more power would not.',
};
