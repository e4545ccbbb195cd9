import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { choice, constant, derived, number, picked } from '../../lib/graph/define.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import { hasValue, valueOrThrow } from '../../lib/graph/outcome.ts';
import { Problem } from '../../lib/problem.ts';

/** A small graph that counts how often each result is computed. */
function counted() {
  const runs: Record<string, number> = {};
  const count = <T>(id: string, value: T): T => {
    runs[id] = (runs[id] ?? 0) + 1;
    return value;
  };
  const words = { symbol: 'x', about: 'of a test', unit: '1' } as const;
  const made = { ...words, formula: 'x', source: 'definition' } as const;
  const input = (id: string, initial: number) =>
    number({ ...words, id, name: id, initial, range: { min: -10, max: 10 } });
  const a = input('in.a', 1);
  const b = input('in.b', 2);
  const two = constant({ ...words, id: 'is.two', name: 'two', value: 2, source: 'definition' });
  const square = derived({
    ...made,
    id: 'out.square',
    name: 'square',
    from: { a },
    compute: ({ a }) => count('square', a * a),
  });
  const twice = derived({
    ...made,
    id: 'out.twice',
    name: 'twice',
    from: { square, two },
    compute: ({ square, two }) => count('twice', square * two),
  });
  const root = derived({
    ...made,
    id: 'out.root',
    name: 'root',
    from: { b },
    compute: ({ b }) => {
      if (b < 0) throw new Problem('impossible', 'No root below 0.', { input: 'in.b' });
      if (b === 9) throw new TypeError('broken');
      return b === 0 ? Number.NaN : Math.sqrt(b);
    },
  });
  const after = derived({
    ...made,
    id: 'out.after',
    name: 'after',
    from: { root },
    compute: ({ root }) => count('after', root + 1),
  });
  const way = choice({
    id: 'in.way',
    name: 'way',
    symbol: 'x',
    about: 'of a test',
    initial: 'square',
    options: { square: 'a square', root: 'a root' },
  });
  const chosen = picked({ ...made, id: 'out.chosen', name: 'chosen', by: way, cases: { square, root } });
  const graph = createGraph([twice, after, chosen]);
  return { engine: createEngine(graph), initial: graph.initial, runs };
}

describe('the engine', () => {
  it('computes once, and gives the same outcome objects for the same inputs', () => {
    const { engine, runs, initial } = counted();
    const first = engine.evaluate(['out.twice', 'out.after']);
    engine.setInputs({ ...initial });
    const second = engine.evaluate(['out.twice', 'out.after']);
    expect(first['out.twice']).toEqual({ value: 2 });
    expect(second['out.twice']).toBe(first['out.twice']);
    expect(second['out.after']).toBe(first['out.after']);
    expect(runs).toEqual({ square: 1, twice: 1, after: 1 });
  });

  it('computes only what follows from a change, and stops where a result stays equal', () => {
    const { engine, runs, initial } = counted();
    engine.evaluate(['out.twice', 'out.after']);
    engine.setInputs({ ...initial, 'in.a': -1 });
    engine.evaluate(['out.twice', 'out.after']);
    expect(runs).toEqual({ square: 2, twice: 1, after: 1 });
  });

  it('pins inputs, constants and results, and forgets them afterwards', () => {
    const { engine } = counted();
    const read = (pins: Record<string, unknown>) =>
      valueOrThrow(engine.evaluate(['out.twice'], { pins })['out.twice']!);
    expect(read({ 'in.a': 3 })).toBe(18);
    expect(read({ 'is.two': 5 })).toBe(5);
    expect(read({ 'out.square': 7 })).toBe(14);
    expect(read({})).toBe(2);
  });

  it('passes a problem on to what follows, with the place where it arose', () => {
    const { engine, initial } = counted();
    const at = (b: number) => {
      engine.setInputs({ ...initial, 'in.b': b });
      const outcome = engine.evaluate(['out.after'])['out.after']!;
      return hasValue(outcome) ? outcome.value : outcome.problem;
    };
    expect(at(-1)).toEqual({
      kind: 'impossible',
      message: 'No root below 0.',
      parts: { input: 'in.b' },
      at: 'out.root',
    });
    expect(at(9)).toMatchObject({ kind: 'fault', at: 'out.root' });
    expect(at(0)).toMatchObject({ kind: 'fault', message: expect.stringContaining('NaN') });
    expect(at(4)).toBe(3);
  });

  it('a choice hides the problems of what was not chosen', () => {
    const { engine, initial } = counted();
    engine.setInputs({ ...initial, 'in.b': -1 });
    expect(engine.evaluate(['out.chosen'])['out.chosen']).toEqual({ value: 1 });
    engine.setInputs({ ...initial, 'in.b': -1, 'in.way': 'root' });
    expect(engine.evaluate(['out.chosen'])['out.chosen']).toHaveProperty('problem');
  });

  it('works out nothing for a case that is not chosen, unless the choice is pinned', () => {
    const { engine, initial, runs } = counted();
    engine.setInputs({ ...initial, 'in.way': 'root' });
    expect(valueOrThrow(engine.evaluate(['out.chosen'])['out.chosen']!)).toBe(Math.SQRT2);
    expect(runs).toEqual({});
    const pinned = engine.evaluate(['out.chosen'], { pins: { 'in.way': 'square' } });
    expect(valueOrThrow(pinned['out.chosen']!)).toBe(1);
    engine.setInputs({ ...initial, 'in.a': 3 });
    expect(valueOrThrow(engine.evaluate(['out.chosen'])['out.chosen']!)).toBe(9);
  });

  it('two quantities of one id make no graph', () => {
    const twin = () =>
      number({
        id: 'in.a',
        name: 'a',
        symbol: 'a',
        unit: '1',
        about: 'twin',
        initial: 0,
        range: { min: 0, max: 1 },
      });
    expect(() => createGraph([twin(), twin()])).toThrow('in.a');
  });
});

describe('the design, kept between moves', () => {
  const ids = ['spot.kernel', 'spot.width', 'focus.radius', 'spot.peakFluence', 'rule.family'];
  const change = (patch: Record<string, number>) => {
    const engine = createEngine(designGraph);
    const before = engine.evaluate(ids);
    engine.setInputs({ ...designGraph.initial, ...patch });
    return { before, after: engine.evaluate(ids) };
  };

  it('a slightly other beam keeps the Bessel matrix and changes the spot', () => {
    const { before, after } = change({ 'laser.beamDiameter': 4.98e-3 });
    expect(after['spot.kernel']).toBe(before['spot.kernel']);
    expect(after['rule.family']).toBe(before['rule.family']);
    expect(after['spot.width']).not.toEqual(before['spot.width']);
  });

  it('another energy changes the fluence and nothing of the shape', () => {
    const { before, after } = change({ 'laser.pulseEnergy': 40e-6 });
    for (const id of ['spot.kernel', 'spot.width', 'focus.radius']) expect(after[id]).toBe(before[id]);
    const fluence = [before, after].map((all) => valueOrThrow<number>(all['spot.peakFluence'] as never));
    expect(fluence[1]).toBe(2 * fluence[0]!);
  });

  it('an engine moved about gives the same bits as a new one', () => {
    const engine = createEngine(designGraph);
    for (const diameter of [5e-3, 2e-3, 7e-3, 4.4e-3]) {
      const inputs = { ...designGraph.initial, 'laser.beamDiameter': diameter };
      engine.setInputs(inputs);
      expect(engine.evaluate(['spot.width', 'spot.dip'])).toEqual(
        createEngine(designGraph, inputs).evaluate(['spot.width', 'spot.dip']),
      );
    }
  });
});
