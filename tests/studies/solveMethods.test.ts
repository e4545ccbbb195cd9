import { describe, expect, it } from 'vitest';
import { derived, number } from '../../lib/graph/define.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import { Problem } from '../../lib/problem.ts';
import { solve } from '../../lib/studies/solve.ts';
import type { Solution, SolveRequest, SolveResult } from '../../lib/studies/solveRequest.ts';
import { expectClose } from '../close.ts';

const plain = { symbol: 'x', unit: '1', about: 'A number to try the search with.' } as const;
const x = number({
  ...plain,
  id: 'test.x',
  name: 'x',
  initial: 0.1,
  range: { min: -10, max: 10 },
  typical: [-4, 4],
});
const y = number({
  ...plain,
  id: 'test.y',
  name: 'y',
  initial: 0.2,
  range: { min: -10, max: 10 },
  typical: [-4, 4],
});
const z = number({
  ...plain,
  id: 'test.z',
  name: 'z',
  initial: 0.3,
  range: { min: -10, max: 10, except: 0 },
});

function of(id: string, f: (x: number, y: number, z: number) => number) {
  return derived({
    ...plain,
    id: `test.${id}`,
    name: id,
    from: { x, y, z },
    compute: ({ x, y, z }) => f(x, y, z),
    formula: 'f(x)',
    source: 'definition',
  });
}

const graph = createGraph([
  of('cubic', (x) => x ** 3 - 4 * x),
  of('closePair', (x) => (x - 1.2345) ** 2 - 1e-6),
  of('touch', (x) => 3 + (Math.exp(x) - 2) ** 2),
  of('jump', (x) => (x < 0.5 ? -1 : 1)),
  of('root', (x) => {
    if (x < 1) throw new Problem('outside', 'x lies below 1; choose more.', { input: 'test.x' });
    return Math.sqrt(x - 1);
  }),
  of('valley', (x, y) => 10 * (y - x * x)),
  of('slope', (x) => 1 - x),
  of('fold', (x, y) => Math.abs(x - 1) + Math.abs(y + 2)),
  of('sum', (x, y, z) => x + y + z),
  of('product', (x, y, z) => x * y * z),
  of('squares', (x, y, z) => x * x + y * y + z * z),
]);

const find = (request: SolveRequest, today = {}): SolveResult =>
  solve(graph, { ...graph.initial, ...today }, request);
const want = (id: string, value: number) => ({ id: `test.${id}`, kind: 'value' as const, value });
const xs = (result: SolveResult) =>
  [result as Solution, ...result.others].map(({ patch }) => patch['test.x'] as number);

describe('one number', () => {
  it('all roots are told, the nearest to today first', () => {
    const found = find({ wants: [want('cubic', 0)], moves: [{ id: 'test.x' }] });
    expect(found.met).toBe(true);
    [0, 2, -2].forEach((root, i) => {
      expectClose(xs(found)[i]!, root, { absolute: 1e-9, source: 'x³ = 4x' });
    });
    expect(found.others).toHaveLength(2);
  });

  it('a root at an end counts', () => {
    const found = find({ wants: [want('cubic', 0)], moves: [{ id: 'test.x', from: 1, to: 2 }] });
    expect(found.met).toBe(true);
    expect(found.patch).toEqual({ 'test.x': 2 });
    expect(found.atLimits).toEqual([{ id: 'test.x', end: 'to', value: 2 }]);
  });

  it('two roots between two steps, and a value that only touches', () => {
    const pair = xs(find({ wants: [want('closePair', 0)], moves: [{ id: 'test.x' }] })).sort();
    expect(pair).toHaveLength(2);
    expectClose(pair[0]!, 1.2335, { relative: 1e-9, source: '(x − 1.2345)² = 1e-6' });
    expectClose(pair[1]!, 1.2355, { relative: 1e-9, source: '(x − 1.2345)² = 1e-6' });
    const [touch, ...more] = xs(find({ wants: [want('touch', 3)], moves: [{ id: 'test.x' }] }));
    // Beside a value of 3, rounding hides the bottom of the square to 1e-8; four differences over h = 2.5e-3 see 1e-13/h.
    expectClose(touch!, Math.LN2, { relative: 1e-9, source: 'eˣ = 2' });
    expect(more).toEqual([]);
  });

  it('a jump is no root', () => {
    const found = find({ wants: [want('jump', 0)], moves: [{ id: 'test.x' }] });
    expect(found.met).toBe(false);
    expect(found.blocked).toEqual({ reason: 'gap', want: 0, below: -1, above: 1 });
  });

  it('a root close to where values end is found, and the problem told where they end before', () => {
    const found = find({ wants: [want('root', 1e-3)], moves: [{ id: 'test.x' }] });
    expectClose(xs(found)[0]!, 1 + 1e-6, { relative: 1e-9, source: 'x = 1 + 1e-6' });
    const none = find({ wants: [want('root', -1)], moves: [{ id: 'test.x' }] });
    expect(none.blocked).toMatchObject({ reason: 'problem', input: 'test.x', problem: { at: 'test.root' } });
    expectClose(none.patch!['test.x'] as number, 1, { absolute: 1e-6, source: 'the end of the values' });
  });

  it('a bound takes the nearest design that meets it, today’s where it does', () => {
    const bound = { id: 'test.cubic', kind: 'atLeast', value: 15 } as const;
    const found = find({ wants: [bound], moves: [{ id: 'test.x' }] });
    expectClose(xs(found)[0]!, 3, { relative: 1e-9, source: '27 − 12 = 15' });
    const today = find({ wants: [bound], moves: [{ id: 'test.x' }] }, { 'test.x': 3.5 });
    expect(xs(today)[0]).toBeCloseTo(3.5, 12);
  });
});

describe('several numbers', () => {
  it('a curved valley is followed to its end', () => {
    const found = find({
      wants: [want('valley', 0), want('slope', 0)],
      moves: [{ id: 'test.x' }, { id: 'test.y' }],
    });
    expect(found.met).toBe(true);
    for (const id of ['test.x', 'test.y'])
      expectClose(found.patch![id] as number, 1, {
        relative: 1e-6,
        source: 'H. H. Rosenbrock (1960) (memory)',
      });
  });

  it('a kink without slopes is walked into', () => {
    const found = find({
      wants: [{ id: 'test.fold', kind: 'value', value: 0, tolerance: 1e-4 }],
      moves: [{ id: 'test.x' }, { id: 'test.y' }],
    });
    expect(found.met).toBe(true);
  });

  it('three wants of three numbers, one of which cannot be 0', () => {
    const found = find({
      wants: [want('sum', 6), want('product', 6), want('squares', 14)],
      moves: ['test.x', 'test.y', 'test.z'].map((id) => ({ id, from: -4, to: 4 })),
    });
    expect(found.met).toBe(true);
    const sorted = Object.values(found.patch!).sort() as number[];
    sorted.forEach((value, i) => {
      expectClose(value, i + 1, { relative: 1e-5, source: '1, 2, 3 alone have these three' });
    });
  });

  it('a bound in several numbers goes no further from today than it must', () => {
    const found = find({
      wants: [{ id: 'test.sum', kind: 'atLeast', value: 3 }],
      moves: [{ id: 'test.x' }, { id: 'test.y' }],
    });
    expect(found.met).toBe(true);
    expectClose(found.values!['test.sum']!, 3, { absolute: 1e-3, source: 'the bound itself' });
  });
});

describe('what a request may be', () => {
  const moves = [{ id: 'test.x' }];
  it.each<[string, SolveRequest, string]>([
    ['nothing wanted', { wants: [], moves }, 'Nothing is wanted'],
    ['nothing moves', { wants: [want('sum', 1)], moves: [] }, 'Nothing may move'],
    ['unknown want', { wants: [want('none', 1)], moves }, "no quantity 'test.none'"],
    ['unknown move', { wants: [want('sum', 1)], moves: [{ id: 'test.w' }] }, "no quantity 'test.w'"],
    [
      'what follows moves',
      { wants: [want('sum', 1)], moves: [{ id: 'test.sum' }] },
      'follows from other values',
    ],
    ['outside the range', { wants: [want('sum', 1)], moves: [{ id: 'test.x', to: 11 }] }, 'not possible'],
    [
      'ends exchanged',
      { wants: [want('sum', 1)], moves: [{ id: 'test.x', from: 2, to: 1 }] },
      'exchange them',
    ],
    ['empty list', { wants: [want('sum', 1)], moves: [{ id: 'test.x', values: [] }] }, 'is empty'],
    [
      'value not allowed',
      { wants: [want('sum', 1)], moves: [{ id: 'test.z', values: [0] }] },
      'not possible',
    ],
    ['the same moved twice', { wants: [want('sum', 1)], moves: [...moves, ...moves] }, 'in two ways at once'],
    [
      'a part that brings what moves',
      { wants: [want('sum', 1)], moves, patches: [{ name: 'A', patch: { 'test.x': 1 } }] },
      'in two ways at once',
    ],
    ['no number', { wants: [want('sum', Number.NaN)], moves }, 'needs numbers'],
    [
      'bounds exchanged',
      { wants: [{ id: 'test.sum', kind: 'between', low: 2, high: 1 }], moves },
      'lower bound',
    ],
  ])('%s is a problem', (_, request, message) => {
    expect(() => find(request)).toThrow(Problem);
    expect(() => find(request)).toThrow(message);
  });

  it('too many combinations are refused', () => {
    const values = Array.from({ length: 80 }, (_, i) => i / 10);
    const lists = ['test.x', 'test.y'].map((id) => ({ id, values }));
    expect(() => find({ wants: [want('sum', 1)], moves: lists })).toThrow('6400 combinations');
  });

  it('lists alone are gone through whole, the pair that meets the wants is found', () => {
    const values = Array.from({ length: 40 }, (_, i) => (i - 20) / 10);
    const lists = ['test.x', 'test.y'].map((id) => ({ id, values }));
    const found = find({ wants: [want('valley', 0), want('slope', -0.3)], moves: lists });
    expect(found.patch).toEqual({ 'test.x': 1.3, 'test.y': 1.7 });
    expect(found.met).toBe(false);
    const exact = find({ wants: [want('valley', 0.1), want('slope', -0.3)], moves: lists });
    expect(exact.met).toBe(true);
    expect(exact.complete).toBe(true);
    expect(exact.patch).toEqual({ 'test.x': 1.3, 'test.y': 1.7 });
  });

  it('tries no more than it may, and says that more was to try', () => {
    const few = find({ wants: [want('cubic', 1.7)], moves, most: 12 });
    expect(few.tried).toBeLessThanOrEqual(24);
    expect(few.complete).toBe(false);
  });

  it('progress never goes back', () => {
    const told: number[] = [];
    solve(graph, graph.initial, { wants: [want('cubic', 0)], moves }, (part) => told.push(part));
    expect(told.length).toBeGreaterThan(10);
    expect([...told].sort((a, b) => a - b)).toEqual(told);
    expect(told.at(-1)).toBeLessThanOrEqual(1);
  });
});
