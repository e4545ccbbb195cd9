import { describe, expect, it } from 'vitest';
import { derived } from '../../lib/graph/define.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import type { Outcome } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { createHeavyPart } from '../../notebooks/page/heavy/heavyPart.ts';
import { leastBetween, seldom } from '../../notebooks/page/heavy/seldom.ts';
import { isTold, longWork } from '../../notebooks/page/heavy/work.ts';
import { plainNumber } from '../graph/plainQuantities.ts';

const x = plainNumber('test.x');
const search = (id: string) =>
  derived({
    id: `test.${id}`,
    name: `${id} of two`,
    symbol: id,
    unit: '1',
    about: '',
    from: { x },
    compute: ({ x }) => x * x,
    formula: 'x^2',
    source: 'definition',
    heavy: 'search',
  });
const [first, second] = [search('first'), search('second')];
const shown = derived({
  id: 'test.shown',
  name: 'shown',
  symbol: 'b',
  unit: '1',
  about: '',
  from: { first },
  compute: ({ first }) => 2 * first,
  formula: '2s',
  source: 'definition',
});
const graph = createGraph([shown, second]);

/** Two searches of one worker, both needed; the clock and the answers come from the test. */
function setUp() {
  let state = initialState(graph);
  let clock = 0;
  let ready = () => {};
  const asked: { id: string; answer: (value: number) => void; tell: (part: number) => void }[] = [];
  const published: [string, Outcome][] = [];
  let closed = 0;
  const part = createHeavyPart(
    graph,
    (replied) => {
      ready = () => replied({ ready: true });
      return {
        post: ({ id, job }) =>
          asked.push({
            id,
            answer: (value) => replied({ job, outcome: { value } }),
            tell: (part) => replied({ job, part }),
          }),
        close: () => {
          closed += 1;
        },
      };
    },
    () => state,
    (id, outcome) => published.push([id, outcome]),
    () => clock,
  );
  part.need(shown.id);
  part.need(second.id);
  return {
    part,
    asked,
    published,
    ready: () => ready(),
    closed: () => closed,
    wait: (time: number) => {
      clock += time;
    },
    told: () => part.works().filter((work) => isTold(work, clock)),
    set: (value: number) => {
      state = applyPatch(graph, state, { [x.id]: value });
      part.changed(new Set([x.id, first.id, second.id, shown.id]));
    },
    states: () => Object.fromEntries(part.works().map(({ id, state }) => [id, state])),
  };
}

const kindOf = (outcome: Outcome) => ('problem' in outcome ? outcome.problem.kind : outcome.value);

describe('long work of a page', () => {
  it('says what runs, with its part, what waits, and since when', () => {
    const { part, asked, wait, ready } = setUp();
    let calls = 0;
    part.onWork(() => {
      calls += 1;
    });
    wait(40);
    ready();
    wait(40);
    asked[0]!.tell(0.25);
    expect(calls).toBe(2);
    const common = { since: 40, pressed: false };
    expect(part.works()).toEqual([
      { ...common, id: first.id, name: 'first of two', state: 'working', part: 0.25 },
      { ...common, id: second.id, name: 'second of two', state: 'waiting', part: undefined },
    ]);
    expect(part.works([shown.id]).map(({ id }) => id)).toEqual([first.id]);
    expect(part.works([x.id])).toEqual([]);
    asked[0]!.answer(1);
    expect(part.works().map(({ id, state }) => [id, state])).toEqual([[second.id, 'working']]);
  });

  it('is told of only when it takes longer than a second, the start of the worker not counted', () => {
    const { asked, wait, told, set, ready } = setUp();
    wait(3 * longWork);
    expect(told()).toEqual([]);
    ready();
    wait(longWork - 1);
    expect(told()).toEqual([]);
    wait(1);
    expect(told().map(({ id }) => id)).toEqual([first.id, second.id]);
    set(3);
    asked[0]!.answer(1);
    expect(told(), 'an older answer has come, and what waited is at its turn').toEqual([]);
    wait(longWork);
    expect(told().map(({ id }) => id)).toEqual([first.id, second.id]);
  });

  it('stopped while it runs: it holds a problem that says how to go on, and the next goes on', () => {
    const { part, asked, published, closed, states, ready } = setUp();
    const late = asked[0]!;
    part.stop(first.id);
    expect(closed()).toBe(1);
    expect(published).toHaveLength(1);
    const [id, outcome] = published[0]!;
    expect(id).toBe(first.id);
    expect(outcome).toEqual({
      problem: {
        kind: 'stopped',
        message:
          'First of two: stopped by you before it was worked out. Choose “Work it out”, or change the design.',
        parts: {},
        at: first.id,
      },
    });
    expect(part.isStale(shown.id), 'it is up to date with that').toBe(false);
    expect(states()).toEqual({ [first.id]: 'stopped', [second.id]: 'waiting' });
    ready();
    expect(states()).toEqual({ [first.id]: 'stopped', [second.id]: 'working' });
    late.answer(1);
    expect(published, 'an answer that comes after the stop is dropped').toHaveLength(1);
    expect(asked.map(({ id }) => id)).toEqual([first.id, second.id]);
    asked[1]!.answer(1);
    part.stop(second.id);
    expect(closed(), 'what is up to date is not stopped').toBe(1);
  });

  it('stopped while it waits: it is not asked for, and the one that runs is left alone', () => {
    const { part, asked, closed, states } = setUp();
    part.stop(second.id);
    asked[0]!.answer(1);
    expect(closed()).toBe(0);
    expect(asked.map(({ id }) => id)).toEqual([first.id]);
    expect(states()).toEqual({ [second.id]: 'stopped' });
  });

  it('stopped, then other inputs: it is asked for again; the stop holds for the inputs it was made for', () => {
    const { part, asked, published, states, set, ready } = setUp();
    part.stop(first.id);
    ready();
    set(3);
    expect(part.isStale(shown.id)).toBe(true);
    expect(states()).toEqual({ [first.id]: 'waiting', [second.id]: 'working' });
    set(1);
    expect(states()[first.id]).toBe('stopped');
    set(3);
    asked.at(-1)!.answer(9);
    asked.at(-1)!.answer(9);
    asked.at(-1)!.answer(9);
    expect(published.filter(([id]) => id === first.id).map(([, outcome]) => kindOf(outcome))).toEqual([
      'stopped',
      'stopped',
      9,
    ]);
    expect(states()).toEqual({});
  });

  it('stopped, then worked out after all: told of at once, and answered as ever', () => {
    const { part, asked, told, published } = setUp();
    part.stop(first.id);
    part.workOut(second.id);
    expect(asked, 'what was not stopped is not asked for twice').toHaveLength(2);
    part.workOut(first.id);
    expect(part.isStale(shown.id)).toBe(true);
    expect(told().map(({ id, state }) => [id, state])).toEqual([[first.id, 'waiting']]);
    asked[1]!.answer(1);
    asked[2]!.answer(1);
    expect(published.map(([id, outcome]) => [id, kindOf(outcome)])).toEqual([
      [first.id, 'stopped'],
      [second.id, 1],
      [first.id, 1],
    ]);
    expect(told()).toEqual([]);
  });
});

describe('what a worker tells of a job', () => {
  it('comes not more often than every 50 ms', () => {
    let clock = 0;
    const said: number[] = [];
    const tell = seldom(
      (part) => said.push(part),
      () => clock,
    );
    for (let i = 0; i <= 20; i++) {
      clock = 10 * i;
      tell(i / 20);
    }
    expect(said).toEqual([1, 2, 3, 4].map((i) => (i * leastBetween) / 200));
  });
});
