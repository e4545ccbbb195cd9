import { beforeEach, describe, expect, it, vi } from 'vitest';
import { derived } from '../../lib/graph/define.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import { noStudies, type OwnLine } from '../../lib/graph/studies.ts';
import type { OpenHeavyPort } from '../../notebooks/page/heavy/heavyMessages.ts';
import { createLive } from '../../notebooks/page/live.ts';
import { plainNumber } from '../graph/plainQuantities.ts';
import { line } from '../studies/ownOnes.ts';

const x = plainNumber('test.x');
const y = plainNumber('test.y');
const common = { symbol: 's', unit: '1', about: '', formula: 'x', source: 'definition' };
const from = { x };
let computed = 0;
const counted = derived({
  ...common,
  id: 'test.counted',
  name: 'counted',
  from: { y },
  compute: ({ y }) => {
    computed += 1;
    return y;
  },
});
const search = derived({
  ...common,
  id: 'test.search',
  name: 'search',
  from,
  compute: ({ x }) => x,
  heavy: 'search',
});
const graph = createGraph([search, counted]);

function setUp(lines: readonly OwnLine[]) {
  const answers: ((value: number) => void)[] = [];
  const open: OpenHeavyPort = (replied) => ({
    post: ({ job }) => answers.push((value) => replied({ job, outcome: { value } })),
    close: () => {},
  });
  const studies = { ...noStudies, ownLines: lines };
  const live = createLive(graph, { inputs: graph.initial, studies, revision: 0 }, open);
  const said: Record<string, string[]> = {};
  const watch = (id: string) => {
    said[id] = [];
    const quantity = live.graph.quantities.get(id) ?? ({ ...counted, id } as Quantity);
    return live.watch(quantity, {
      pending: () => said[id]!.push('older'),
      changed: (outcome) =>
        said[id]!.push('value' in outcome ? String(outcome.value) : outcome.problem.message),
      settled: () => said[id]!.push('settled'),
    });
  };
  const write = (ownLines: readonly OwnLine[]) =>
    live.open({ ...live.state(), studies: { ...noStudies, ownLines } });
  const rest = () => vi.advanceTimersByTimeAsync(0);
  const taken = async (id: string) => {
    await rest();
    return said[id]!.splice(0);
  };
  return { live, watch, write, rest, taken, answers };
}

const sum = line('sum', 'test.x + test.y');
const twice = line('twice', '2 * own.sum');

describe('own quantities on the page', () => {
  beforeEach(() => {
    vi.useFakeTimers();
    return () => vi.useRealTimers();
  });

  it('follow the inputs like any other, and one another', async () => {
    const { live, watch, taken } = setUp([twice, sum]);
    watch('own.twice');
    expect(await taken('own.twice')).toEqual(['4', 'settled']);
    live.set({ [x.id]: 4 });
    expect(await taken('own.twice')).toEqual(['older', '10', 'settled']);
    expect(live.read({ own: live.graph.quantities.get('own.twice')! })).toEqual({ own: 10 });
  });

  it('a changed formula counts at once, also in what rests on it, and back', async () => {
    const { live, watch, write, taken } = setUp([sum, twice]);
    watch('own.twice');
    await taken('own.twice');
    write([{ ...sum, formula: 'test.x + 6' }, twice]);
    expect(await taken('own.twice')).toEqual(['older', '14', 'settled']);
    expect(live.read({ own: live.graph.quantities.get('own.twice')! })).toEqual({ own: 14 });
    live.undo();
    expect(await taken('own.twice')).toEqual(['older', '4', 'settled']);
    live.redo();
    expect(await taken('own.twice')).toEqual(['older', '14', 'settled']);
  });

  it('one taken out says so where it is shown, and works again when it comes back', async () => {
    const { live, watch, write, taken } = setUp([sum]);
    const quantity = live.graph.quantities.get('own.sum')!;
    watch('own.sum');
    await taken('own.sum');
    write([]);
    expect(live.graph).toBe(graph);
    expect(await taken('own.sum')).toEqual(['older', expect.stringMatching(/has been taken out/), 'settled']);
    expect(() => live.read({ quantity })).toThrow(/has been taken out/);
    live.set({ [x.id]: 5 });
    live.undo();
    live.undo();
    expect((await taken('own.sum')).slice(-2)).toEqual(['2', 'settled']);
    live.set({ [x.id]: 2 });
    expect(await taken('own.sum')).toEqual(['older', '3', 'settled']);
  });

  it('one that is not there yet is told of when it comes', async () => {
    const { watch, write, taken } = setUp([]);
    const stop = watch('own.sum');
    expect((await taken('own.sum'))[0]).toMatch(/has been taken out/);
    write([sum]);
    expect((await taken('own.sum')).slice(-2)).toEqual(['2', 'settled']);
    stop();
    write([]);
    expect(await taken('own.sum')).toEqual([]);
  });

  it('other lines and other quantities are not worked out again', async () => {
    const { watch, write, taken } = setUp([line('kept', 'test.counted')]);
    watch('own.kept');
    await taken('own.kept');
    const before = computed;
    write([line('kept', 'test.counted'), sum]);
    expect(await taken('own.kept')).toEqual(['settled']);
    expect(computed).toBe(before);
  });

  it('a line that rests on work of a worker is older until the answer comes, and asks for what it needs', async () => {
    const { live, watch, write, taken, answers } = setUp([sum]);
    watch('own.sum');
    await taken('own.sum');
    expect(answers).toHaveLength(0);
    write([{ ...sum, formula: 'test.search * 3' }]);
    expect(await taken('own.sum')).toEqual(['older']);
    answers[0]!(1);
    expect(await taken('own.sum')).toEqual(['3', 'settled']);
    live.set({ [x.id]: 2 });
    expect(await taken('own.sum')).toEqual(['older']);
    await vi.advanceTimersByTimeAsync(2000);
    answers[1]!(2);
    expect(await taken('own.sum')).toEqual(['6', 'settled']);
    write([sum]);
    expect(await taken('own.sum')).toEqual(['older', '3', 'settled']);
    live.set({ [x.id]: 3 });
    await vi.advanceTimersByTimeAsync(2000);
    // Nothing shown rests on the worker any more.
    expect(answers).toHaveLength(2);
  });
});
