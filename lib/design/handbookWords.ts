import { formatReadable } from '../graph/units.ts';
import { citation } from '../materials/bibliography.ts';
import type { HandbookDifference, PublishedThreshold, PulseConditions } from '../process/handbook.ts';

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

/** A published threshold in words: "0.16 J/cm² (ablation): 775 nm, 150 fs, 100 Hz; P. T. Mannion et al., …". */
export function publishedText(row: PublishedThreshold): string {
  const { fluence, criterion, wavelength, duration, repetitionRate, pulses, source } = row;
  const durations = [...new Set(duration)].map((value) => formatReadable(value, 's', 'fs')).join(' to ');
  const conditions = [
    formatReadable(wavelength, 'm', 'nm'),
    durations,
    repetitionRate === undefined ? '' : formatReadable(repetitionRate, 'Hz', 'auto:Hz'),
    pulses === 'unknown' ? '' : `${pulses} pulse${pulses === 'one' ? '' : 's'} on a place`,
  ];
  return `${formatReadable(fluence, 'J/m^2', 'J/cm^2')} (${criterion}): ${conditions.filter(Boolean).join(', ')}; ${citation(source)}`;
}
