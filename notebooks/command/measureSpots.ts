import { designGraph } from '../../lib/design/design.ts';
import { spotTable } from '../../lib/design/spots.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue, valueOrThrow } from '../../lib/graph/outcome.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { Problem } from '../../lib/problem.ts';
import type { CommandIo } from './commandIo.ts';
import { designOptions, openDesign } from './openDesign.ts';
import { readOptions } from './options.ts';

const fits = [
  'threshold.gaussianFit',
  'threshold.profileFit',
  'threshold.planeFit',
  'threshold.incubationFit',
];
const chosen = ['threshold.fittedFluence', 'threshold.fittedUncertainty'];

/**
 * `measure spots FILE [DESIGN]`: JSON of the fits of a table of spots with the design's beam, plate and losses (the
 * initial design without one). A fit that the marks do not allow is given as its problem; the threshold of the chosen
 * fit stands at the end.
 */
export function measureSpotsFile(args: readonly string[], io: CommandIo): string {
  const { words, ...options } = readOptions(
    args,
    designOptions.filter((name) => name !== 'spots'),
  );
  const [file, ...design] = words;
  if (file === undefined) {
    throw new Problem('unreadable', 'Give the table of spots, as in measure spots FILE [DESIGN].');
  }
  const state = openDesign(
    {
      words: design,
      one: (name) => (name === 'spots' ? file : options.one(name)),
      all: (name) => (name === 'spots' ? [file] : options.all(name)),
    },
    io,
  );
  const outcomes = createEngine(designGraph, state.inputs).evaluate([
    spotTable.id,
    'threshold.usedMarks',
    ...fits,
    ...chosen,
  ]);
  const marks = outcomes['threshold.usedMarks']!;
  valueOrThrow(marks);
  const entries = [...fits, ...chosen].map((id): [string, unknown] => {
    const outcome = outcomes[id]!;
    if (!hasValue(outcome)) return [id, { problem: outcome.problem.message }];
    const quantity = designGraph.quantities.get(id)!;
    const note = outcome.note === undefined ? {} : { note: outcome.note };
    const shown = shownValue(quantity, outcome);
    const single = typeof outcome.value === 'number';
    return [
      id,
      single
        ? { value: outcome.value, unit: quantity.unit, shown, ...note }
        : { shown, ...(outcome.value as object) },
    ];
  });
  return `${JSON.stringify(Object.fromEntries(entries), plainArrays, 2)}\n`;
}

function plainArrays(_key: string, value: unknown): unknown {
  return value instanceof Float64Array ? Array.from(value) : value;
}
