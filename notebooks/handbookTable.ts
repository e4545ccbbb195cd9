import { handbookRange, material } from '../lib/design/material.ts';
import { thresholdSource, typedThreshold, typedUncertainty } from '../lib/design/threshold.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { citation } from '../lib/materials/bibliography.ts';
import { handbookMaterials, type PublishedThreshold } from '../lib/process/handbook.ts';
import type { ChoiceRow, ChoicesSpec } from './choicesSpec.ts';
import { choices } from './document.ts';

/** The published thresholds of the material, each with its conditions and source; one can be taken over. */
export const handbookTable = choices({
  id: 'handbook',
  needs: [handbookRange],
  from: { material, source: thresholdSource, typed: typedThreshold },
  view: ({ material: id, source, typed }): ChoicesSpec => {
    // Views run before a block is hidden: for a material that the handbook lacks the list is empty.
    const rows = handbookMaterials.find((row) => row.id === id)?.rows ?? [];
    return {
      caption: `Published thresholds of ${material.options[id]}`,
      columns: [
        'threshold',
        'wavelength',
        'pulse duration',
        'repetition rate',
        'pulses on a place',
        'taken as threshold',
      ],
      rows: rows.map((row) => rowOf(row, source === 'typed' && typed === row.fluence)),
      summary: `${rows.length === 1 ? 'One threshold has' : `${rows.length} thresholds have`} been read in abstracts; incident peak fluence of each pulse.`,
      hint: 'Choosing one takes it over as the typed threshold.',
    };
  },
});

const pulsesSaid: Readonly<Record<string, string>> = { one: 'one', many: 'many', unknown: 'not said' };

function rowOf(row: PublishedThreshold, chosen: boolean): ChoiceRow {
  const threshold = formatReadable(row.fluence, 'J/m^2', 'J/cm^2');
  const durations = [...new Set(row.duration)].map((duration) => formatReadable(duration, 's', 'fs'));
  return {
    key: row,
    name: threshold,
    does: `Take ${threshold} as the typed threshold`,
    cells: [
      formatReadable(row.wavelength, 'm', 'nm'),
      durations.join(' to '),
      row.repetitionRate === undefined ? 'not said' : formatReadable(row.repetitionRate, 'Hz', 'auto:Hz'),
      pulsesSaid[row.pulses] ?? row.pulses,
      row.criterion,
    ],
    more: [['source', citation(row.source)]],
    about: 'As its abstract gives it, without an uncertainty of its own; a value to start from.',
    patch: { [thresholdSource.id]: 'typed', [typedThreshold.id]: row.fluence, [typedUncertainty.id]: 0 },
    chosen,
  };
}
