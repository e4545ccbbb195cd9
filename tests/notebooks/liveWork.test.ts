import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { derived } from '../../lib/graph/define.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import type { OpenHeavyPort } from '../../notebooks/page/heavy/heavyMessages.ts';
import { createLive } from '../../notebooks/page/live.ts';
import { plainNumber } from '../graph/plainQuantities.ts';

const x = plainNumber('test.x');
const common = { symbol: 's', unit: '1', about: '', formula: 'x', source: 'definition' };
const search = derived({
  ...common,
  id: 'test.search',
  name: 'search',
  from: { x },
  compute: ({ x }) => x,
  heavy: 'search',
});
const shown = derived({
  ...common,
  id: 'test.shown',
  name: 'shown',
  from: { search },
  compute: ({ search }) => 2 * search,
});
const graph = createGraph([shown]);

function setUp() {
  const answers: ((value: number) => void)[] = [];
  const open: OpenHeavyPort = (replied) => ({
    post: ({ job }) => answers.push((value) => replied({ job, outcome: { value } })),
    close: () => {},
  });
  const live = createLive(graph, undefined, open);
  const said: string[] = [];
  live.watch(shown, {
    pending: () => said.push('older'),
    changed: (outcome) => said.push('value' in outcome ? String(outcome.value) : outcome.problem.kind),
    settled: (revision) => said.push(`settled ${revision}`),
  });
  const rest = () => vi.advanceTimersByTimeAsync(0);
  return { live, answers, rest, taken: () => said.splice(0) };
}

describe('stopping on the page', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('what rests on stopped work says so and is settled; worked out after all, it is older until it is there', async () => {
    const { live, answers, rest, taken } = setUp();
    await rest();
    expect(taken()).toEqual([]);
    let settled = 0;
    void live.settled().then(() => {
      settled += 1;
    });
    live.stop(search.id);
    await rest();
    expect(taken()).toEqual(['stopped', 'settled 0']);
    expect(settled).toBe(1);
    live.workOut(search.id);
    await rest();
    expect(taken()).toEqual(['older']);
    void live.settled().then(() => {
      settled += 1;
    });
    await rest();
    expect(settled).toBe(1);
    answers.at(-1)!(3);
    await rest();
    expect(taken()).toEqual(['6', 'settled 0']);
    expect(settled).toBe(2);
    expect(live.works()).toEqual([]);
  });

  it('stopped under old inputs, and the design moved on', async () => {
    const { live, answers, rest, taken } = setUp();
    live.stop(search.id);
    live.set({ [x.id]: 4 });
    await rest();
    answers.at(-1)!(4);
    await rest();
    expect(taken().slice(-2)).toEqual(['8', 'settled 1']);
  });
});
