import { formatReadable } from '../graph/units.ts';
import type { HandbookDifference, PulseConditions } from '../process/handbook.ts';

const shown = {
  wavelength: { name: 'wavelength', unit: 'm', display: 'nm' },
  pulseDuration: { name: 'pulse duration', unit: 's', display: 'fs' },
  repetitionRate: { name: 'repetition rate', unit: 'Hz', display: 'auto:Hz' },
} as const;

/** A difference in words: "wavelength 775 nm and 800 nm there, 1030 nm here". */
export function differenceText(difference: HandbookDifference, here: PulseConditions): string {
  if (!('published' in difference)) {
    return difference.kind === 'manyPulses'
      ? 'many pulses on a place there, where one alone needs more fluence'
      : 'pulses on a place not said there';
  }
  const { name, unit, display } = shown[difference.kind];
  const show = (value: number) => formatReadable(value, unit, display);
  const values = difference.published.map(show);
  const there = [values.slice(0, -1).join(', '), values.at(-1)].filter(Boolean).join(' and ');
  return `${name} ${there} there, ${show(here[difference.kind])} here`;
}
