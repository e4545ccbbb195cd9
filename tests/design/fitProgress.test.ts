import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { readLadderFile, readSpotFile } from '../../lib/design/spotFile.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import type { Values } from '../notebooks/designOutcomes.ts';

const textOf = (name: string) =>
  readFileSync(new URL(`../../data/measured/${name}`, import.meta.url), 'utf8');
/** Thirteen rungs of a Gaussian without the plate: a Rayleigh length of 131 µm, a quarter of it apart. */
const rungs = Array.from({ length: 13 }, (_, i) => {
  const zeta = (i - 6) / 4;
  const squared = 2 * 6.557 ** 2 * (1 + zeta ** 2) * Math.log(2 / (1 + zeta ** 2));
  return `0;0.27;${0.131 * zeta};${squared > 0 ? Math.sqrt(squared) * (1 + 0.01 * Math.sin(5 * i)) : 0}`;
});

it.each<[string, Values]>([
  [
    'ladder.fit',
    {
      'plate.stop': 'open',
      'ladder.table': readLadderFile(['plate;E (µJ);z (mm);d (µm)', ...rungs].join('\n'), 'ladder.csv'),
    },
  ],
  [
    'threshold.planeFit',
    { 'threshold.spotTable': readSpotFile(textOf('rain-gauge-spots.csv'), 'rain-gauge-spots.csv') },
  ],
])(
  '%s says how far it is, from near 0 to 1 and never back, and finds the same as when nobody listens',
  (id, design) => {
    const inputs = { ...designGraph.initial, ...design };
    const heard: number[] = [];
    const report = (part: number) => heard.push(part);
    const outcome = createEngine(designGraph, inputs).evaluate([id], { report })[id]!;
    expect('value' in outcome).toBe(true);
    expect(createEngine(designGraph, inputs).evaluate([id])[id]).toEqual(outcome);
    expect(heard).toEqual([...heard].sort((one, other) => one - other));
    expect(heard[0]).toBeLessThan(0.02);
    expect(heard.at(-1)).toBeGreaterThan(0.7);
    expect(heard.at(-1)).toBeLessThanOrEqual(1);
    const gaps = heard.slice(1).map((part, i) => part - heard[i]!);
    expect(Math.max(...gaps)).toBeLessThan(0.2);
  },
  60_000,
);
