import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { choice, derived, picked } from '../../lib/graph/define.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import { createKeptOutcomes } from '../../lib/studies/keptOutcomes.ts';
import { plainNumber } from '../graph/plainQuantities.ts';

const words = { symbol: 'x', about: 'of a test', unit: '1', formula: 'x', source: 'definition' } as const;
const runs = { long: 0, other: 0, after: 0 };
const x = plainNumber('in.x');
const long = derived({
  ...words,
  id: 'out.long',
  name: 'long',
  from: { x },
  heavy: 'search',
  compute: ({ x }) => {
    runs.long += 1;
    return 2 * x;
  },
});
const other = derived({
  ...words,
  id: 'out.other',
  name: 'other',
  from: { x },
  compute: ({ x }) => {
    runs.other += 1;
    return -x;
  },
});
const after = derived({
  ...words,
  id: 'out.after',
  name: 'after',
  from: { long, x },
  compute: ({ long, x }) => {
    runs.after += 1;
    return long + x;
  },
});
const way = choice({
  id: 'in.way',
  name: 'way',
  symbol: 'x',
  about: 'of a test',
  initial: 'after',
  options: { after: 'after', other: 'other' },
});
const chosen = picked({ ...words, id: 'out.chosen', name: 'chosen', by: way, cases: { after, other } });
const graph = createGraph([chosen]);

describe('outcomes of kept designs', () => {
  const outcomes = createKeptOutcomes(graph);
  const inputs = { ...graph.initial, 'in.x': 3 };

  it('wait for long work, and are worked out here once that has been brought', () => {
    expect(outcomes.workFor(inputs, ['out.chosen', 'out.long', 'out.gone'])).toEqual(['out.long']);
    expect(outcomes.of(inputs, ['out.chosen', 'in.x', 'out.gone'])).toEqual({
      'out.chosen': undefined,
      'in.x': { value: 3 },
      'out.gone': undefined,
    });
    outcomes.bring(inputs, { 'out.long': { value: 60 } });
    expect(outcomes.workFor(inputs, ['out.chosen'])).toEqual([]);
    // 60 is not what the search would find: it is the answer that was brought.
    expect(outcomes.of(inputs, ['out.chosen', 'out.long'])).toEqual({
      'out.chosen': { value: 63 },
      'out.long': { value: 60 },
    });
    expect(runs).toEqual({ long: 0, other: 0, after: 1 });
    outcomes.of(inputs, ['out.chosen']);
    expect(runs.after).toBe(1);
  });

  it('of another design know nothing of it, and what is not chosen does not count', () => {
    const light = { ...inputs, 'in.way': 'other' };
    expect(outcomes.workFor(light, ['out.chosen'])).toEqual([]);
    expect(outcomes.of(light, ['out.chosen'])['out.chosen']).toEqual({ value: -3 });
    expect(outcomes.workFor({ ...inputs }, ['out.chosen'])).toEqual(['out.long']);
  });

  it('pass on why long work has no value', () => {
    const failed = { ...inputs };
    const problem = { kind: 'outside', message: 'It is too far.', parts: {}, at: 'out.long' } as const;
    outcomes.bring(failed, { 'out.long': { problem } });
    expect(outcomes.of(failed, ['out.chosen'])['out.chosen']).toEqual({ problem });
  });

  it('are those of a whole engine: light ones, and a groove once its cut is brought', () => {
    const real = createKeptOutcomes(designGraph);
    const design = { ...designGraph.initial, 'expander.magnification': 2.3 };
    const engine = createEngine(designGraph, design);
    const ids = ['spot.width', 'groove.depth'];
    const work = real.workFor(design, ids);
    expect(work).not.toContain('spot.width');
    real.bring(design, engine.evaluate(work));
    expect(real.of(design, ids)).toEqual(engine.evaluate(ids));
  });
});

it('a pinned result asks nothing of what it rests on, and cases not chosen are not worked out', () => {
  const before = { ...runs };
  const engine = createEngine(graph);
  const read = (pins: Record<string, unknown>) => engine.evaluate(['out.chosen'], { pins })['out.chosen'];
  expect(read({ 'out.long': 5 })).toEqual({ value: 6 });
  expect(runs).toEqual({ ...before, after: before.after + 1 });
  engine.changeInputs({ 'in.way': 'other' });
  expect(read({ 'out.long': 5 })).toEqual({ value: -1 });
  expect(runs.long).toBe(before.long);
  expect(read({ 'in.way': 'after' })).toEqual({ value: 3 });
});

it('some inputs can be changed alone, and the inputs that were given stay as they are', () => {
  const given = { ...graph.initial, 'in.x': 2 };
  const engine = createEngine(graph, given);
  engine.changeInputs({ 'in.x': 4 });
  expect(engine.evaluate(['out.other'])['out.other']).toEqual({ value: -4 });
  expect(given['in.x']).toBe(2);
  engine.changeInputs({ 'in.way': 'other' });
  expect(engine.evaluate(['out.chosen'])['out.chosen']).toEqual({ value: -4 });
  engine.setInputs(given);
  expect(engine.evaluate(['out.chosen'])['out.chosen']).toEqual({ value: 6 });
});
