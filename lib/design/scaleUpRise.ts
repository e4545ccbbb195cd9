import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import { type SpotsRise, spotsHeatRate, spotsRise } from '../process/scaleUpHeat.ts';
import { riseLimit } from './heatInputs.ts';
import { scaled } from './scaleUp.ts';
import { heatTable } from './scaleUpHeatLimit.ts';
import { spotDistance } from './scaleUpInputs.ts';
import { work } from './scaleUpWork.ts';

export const spotsHeat = derived({
  id: 'scaleUp.spotsRise',
  name: 'temperature rise with all spots',
  symbol: '(\\Delta T_\\text{own}, \\Delta T_\\text{beside}, \\Delta T_\\text{before})',
  unit: { own: 'K', beside: 'K', before: 'K', sum: 'K' },
  about:
    'Highest rise just before a pulse at the repetition rate used: of the lines of the spot itself as if it wrote the field alone, of the other spots in the same scan and in all scans before; the sum is between 2\u202f% below and 7\u202f% above that of every pulse of every spot.',
  from: { table: heatTable, distance: spotDistance, work, field: scaled },
  compute: ({ table, distance, work, field }): SpotsRise =>
    spotsRise(work, { ...table, distance }, field.repetitionRate),
  shownAs: ({ sum }) => formatReadable(sum, 'K', 'K', 3),
  formula: '\\sum\\Delta T',
  source: 'scaling',
});

/** A part of it, with a number of its own. */
const part = (
  key: keyof SpotsRise,
  text: { readonly id: string; readonly name: string; readonly symbol: string; readonly about: string },
) =>
  derived({
    ...text,
    unit: 'K',
    digits: 3,
    from: { rises: spotsHeat },
    compute: ({ rises }) => rises[key],
    formula: text.symbol,
    source: 'scaling',
  });

export const ownPartRise = part('own', {
  id: 'scaleUp.ownRise',
  name: 'rise by a spot’s own lines',
  symbol: '\\Delta T_\\text{own}',
  about:
    'Highest rise just before a pulse that one spot would leave if it wrote the field alone at the repetition rate of the larger machine, worked out as under Throughput.',
});

export const besideRise = part('beside', {
  id: 'scaleUp.besideRise',
  name: 'rise by the other spots in the same scan',
  symbol: '\\Delta T_\\text{beside}',
  about: 'What the lines add that the other spots are writing beside the middle one, half-way along them.',
});

export const beforeRise = part('before', {
  id: 'scaleUp.beforeRise',
  name: 'rise by earlier lines of the other spots',
  symbol: '\\Delta T_\\text{before}',
  about: 'What all lines add that the other spots wrote before, in the middle of the row.',
});

export const allSpotsRise = part('sum', {
  id: 'scaleUp.allSpotsRise',
  name: 'highest rise with all spots',
  symbol: '\\Delta T_\\text{L}',
  about: 'Highest rise just before a pulse by all lines of all spots: the three parts together.',
});

export const spotsHeatLimit = derived({
  id: 'scaleUp.heatRate',
  name: 'repetition rate at the limit of heat with all spots',
  symbol: 'f_\\text{heat,L}',
  unit: 'Hz',
  display: 'kHz',
  digits: 3,
  about:
    'Repetition rate at which all spots together bring the hottest place to the rise that is allowed, pulses and lines on their places.',
  from: { table: heatTable, distance: spotDistance, work, limit: riseLimit },
  compute: ({ table, distance, work, limit }) => {
    const rate = spotsHeatRate(work, { ...table, distance });
    if (rate !== undefined) return rate;
    const highest = table.own.rates[0]!;
    throw new Problem(
      'absent',
      `Up to ${formatReadable(highest, 'Hz', 'kHz', 3)}, the highest repetition rate of the larger laser, the surface does not become ${formatReadable(limit, 'K', 'K', 3)} warmer with these spots: heat does not limit them.`,
      { input: riseLimit.id, value: formatReadable(limit, 'K', 'K', 3) },
    );
  },
  formula: '\\Delta T_\\text{L}(f)=\\Delta T_\\text{max}',
  source: 'search',
});
