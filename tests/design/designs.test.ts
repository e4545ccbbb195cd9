import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { makeDesigns } from '../../data/designs/make.ts';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import { isInput } from '../../lib/graph/quantity.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { readDesign } from '../../notebooks/keeping/readDesign.ts';

const folder = new URL('../../data/designs/', import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith('.json'));
const read = (name: string) => readFileSync(new URL(name, folder), 'utf8');
const open = (name: string) => readDesign(readFileSync(new URL(name, folder)), name);
const ids = [...designGraph.quantities.keys()];
const written = designGraph.order.filter(isInput);
const made = makeDesigns();

it('the folder holds what the script makes', () => {
  expect(files.sort()).toEqual(Object.keys(made).sort());
});

describe.each(files)('%s', (file) => {
  const { name, about, inputs: patch, kept } = open(file);
  const { inputs } = applyPatch(designGraph, initialState(designGraph), patch);

  it('is what the script makes', () => {
    expect(read(file)).toBe(made[file]);
  });

  it('opens with a name, a text and every input', () => {
    expect(name).not.toBe(file);
    expect(about.length).toBeGreaterThan(40);
    expect(kept).toEqual({ inputs: {}, files: {} });
    expect(Object.keys(patch).sort()).toEqual(written.map(({ id }) => id).sort());
  });

  it('evaluates without fault; what has no value is absent, and says so', () => {
    const outcomes = createEngine(designGraph, inputs).evaluate(ids);
    const without = ids.filter((id) => !hasValue(outcomes[id]!));
    const kinds = without.map((id) => {
      const outcome = outcomes[id]!;
      return `${id}: ${hasValue(outcome) ? '' : `${outcome.problem.kind}, ${outcome.problem.message}`}`;
    });
    expect(kinds.filter((text) => !text.includes(': absent'))).toEqual([]);
    for (const id of ['spot.relativePeak', 'spot.dip', 'laser.averagePower'])
      expect(without, id).not.toContain(id);
  });
});

it('the lecture table is the initial design', () => {
  const initial = initialState(designGraph);
  expect(applyPatch(designGraph, initial, open('lecture-table.json').inputs)).toBe(initial);
});
