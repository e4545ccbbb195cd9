import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { derived, number } from '../../lib/graph/define.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import { createHeavyJobs, longestJob, type Patience } from '../../notebooks/page/heavy/heavyJobs.ts';
import type { HeavyPort, HeavyReply, HeavyRequest } from '../../notebooks/page/heavy/heavyMessages.ts';

const x = number({
  id: 'test.x',
  name: 'x',
  symbol: 'x',
  unit: '1',
  about: '',
  initial: 1,
  range: { min: 0, max: 1e3 },
});
const power = (id: string, exponent: number) =>
  derived({
    id,
    name: 'power',
    symbol: 's',
    unit: '1',
    about: '',
    from: { x },
    compute: ({ x }) => x ** exponent,
    formula: 'x^n',
    source: 'definition',
    heavy: 'picture',
  });
const square = power('test.square', 2);
const cube = power('test.cube', 3);
const graph = createGraph([square, cube]);

/** Ports that answer when the test says so. */
function setUp(patience?: Patience) {
  const ports: {
    requests: HeavyRequest[];
    closed: boolean;
    reply: (r: HeavyReply) => void;
    fail: () => void;
  }[] = [];
  const answers: [string, number][] = [];
  const heard: [string, number | undefined][] = [];
  const jobs = createHeavyJobs(
    graph,
    (reply, failed): HeavyPort => {
      const port = { requests: [] as HeavyRequest[], closed: false, reply, fail: () => failed('no worker') };
      ports.push(port);
      return { post: (request) => port.requests.push(request), close: () => (port.closed = true) };
    },
    {
      answered: (id, _outcome, inputs) => answers.push([id, inputs[x.id] as number]),
      progressed: (id, part) => heard.push([id, part]),
    },
    patience,
  );
  const ask = (id: string, value: number) => jobs.request(id, { [x.id]: value });
  const answerLast = () => {
    const port = ports.at(-1)!;
    port.reply({ job: port.requests.at(-1)!.job, outcome: { value: 0 } });
  };
  return { ports, answers, heard, jobs, ask, answerLast };
}

describe('jobs of the worker', () => {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['performance', 'setTimeout', 'clearTimeout'] });
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  test('one job runs and one waits; the latest wins', () => {
    const { ports, answers, ask, answerLast } = setUp();
    for (const value of [2, 3, 4, 5]) ask(square.id, value);
    expect(ports).toHaveLength(1);
    expect(ports[0]!.requests.map(({ changes }) => changes)).toEqual([{ [x.id]: 2 }]);
    answerLast();
    expect(ports[0]!.requests.map(({ changes }) => changes)).toEqual([{ [x.id]: 2 }, { [x.id]: 5 }]);
    answerLast();
    expect(answers).toEqual([
      [square.id, 2],
      [square.id, 5],
    ]);
  });

  test('of two quantities none starves while both are asked for again and again', () => {
    const { answers, ask, answerLast } = setUp();
    for (let value = 2; value < 12; value++) {
      ask(square.id, value);
      ask(cube.id, value);
      answerLast();
    }
    const times = (id: string) => answers.filter(([other]) => other === id).length;
    expect(times(square.id)).toBe(5);
    expect(times(cube.id)).toBe(5);
  });

  test('only what differs is told, and everything again after a restart', () => {
    const { ports, ask, answerLast } = setUp();
    ask(square.id, 2);
    answerLast();
    ask(cube.id, 2);
    expect(ports[0]!.requests.at(-1)!.changes).toEqual({});
    ports[0]!.reply({ ready: true });
    ask(cube.id, 3);
    vi.advanceTimersByTime(longestJob + 50);
    expect(ports.map(({ closed }) => closed)).toEqual([true, false]);
    expect(ports[1]!.requests.map(({ changes }) => changes)).toEqual([{ [x.id]: 3 }]);
  });

  test('a long job is ended for a newer one, but not twice without an answer between', () => {
    const { ports, answers, ask, answerLast } = setUp();
    ask(square.id, 2);
    ports[0]!.reply({ ready: true });
    vi.advanceTimersByTime(longestJob - 1);
    ask(square.id, 3);
    expect(ports[0]!.closed).toBe(false);
    vi.advanceTimersByTime(50);
    expect(ports).toHaveLength(2);
    ports[1]!.reply({ ready: true });
    ask(square.id, 4);
    vi.advanceTimersByTime(10 * longestJob);
    expect(ports).toHaveLength(2);
    answerLast();
    expect(answers).toEqual([[square.id, 3]]);
    expect(ports[1]!.requests.at(-1)!.changes).toEqual({ [x.id]: 4 });
  });

  test('a long job that nobody asks for again is left to finish', () => {
    const { ports, answers, ask, answerLast } = setUp();
    ask(square.id, 2);
    ports[0]!.reply({ ready: true });
    vi.advanceTimersByTime(100 * longestJob);
    answerLast();
    expect(answers).toEqual([[square.id, 2]]);
  });

  test('an answer that was given up for lost is not taken', () => {
    const { ports, answers, ask } = setUp();
    ask(square.id, 2);
    ports[0]!.reply({ ready: true });
    ask(square.id, 3);
    vi.advanceTimersByTime(longestJob + 50);
    ports[0]!.reply({ job: ports[0]!.requests[0]!.job, outcome: { value: 4 } });
    expect(answers).toEqual([]);
  });

  test('with patience it begins when the hand rests, and in time while it does not', () => {
    const { ports, ask, answerLast } = setUp({ rest: 100, most: 500 });
    ask(square.id, 2);
    expect(ports[0]!.requests, 'what has no answer yet begins at once').toHaveLength(1);
    answerLast();
    ask(square.id, 3);
    vi.advanceTimersByTime(60);
    ask(square.id, 4);
    vi.advanceTimersByTime(60);
    expect(ports[0]!.requests).toHaveLength(1);
    vi.advanceTimersByTime(60);
    expect(ports[0]!.requests.at(-1)!.changes).toEqual({ [x.id]: 4 });
    answerLast();
    for (let i = 0; i < 9; i++) {
      ask(square.id, 10 + i);
      vi.advanceTimersByTime(60);
    }
    expect(ports[0]!.requests, 'nothing starves').toHaveLength(3);
  });

  test('hands on how far the job is that runs, and nothing of others', () => {
    const { ports, heard, ask, answerLast } = setUp();
    ask(square.id, 2);
    ask(cube.id, 2);
    expect(heard, 'the worker still starts').toEqual([]);
    ports[0]!.reply({ ready: true });
    const { job } = ports[0]!.requests[0]!;
    ports[0]!.reply({ job, part: 0.4 });
    answerLast();
    ports[0]!.reply({ job, part: 0.9 });
    expect(heard).toEqual([
      [square.id, undefined],
      [square.id, 0.4],
      [cube.id, undefined],
    ]);
  });

  test('stopped while it runs: its worker is closed at once, and what waits goes on in a new one', () => {
    const { ports, answers, jobs, ask, answerLast } = setUp();
    ask(square.id, 2);
    ask(cube.id, 2);
    const { job } = ports[0]!.requests[0]!;
    jobs.stop(square.id);
    expect(ports.map(({ closed }) => closed)).toEqual([true, false]);
    expect(ports[1]!.requests.map(({ id, changes }) => [id, changes])).toEqual([[cube.id, { [x.id]: 2 }]]);
    ports[0]!.reply({ job, outcome: { value: 4 } });
    expect(answers, 'an answer that comes after the stop is dropped').toEqual([]);
    answerLast();
    expect(answers).toEqual([[cube.id, 2]]);
  });

  test('stopped while a newer request for it waits: neither is answered', () => {
    const { ports, jobs, ask } = setUp();
    ask(square.id, 2);
    ask(square.id, 3);
    jobs.stop(square.id);
    vi.runAllTimers();
    expect(ports.map(({ closed }) => closed)).toEqual([true]);
  });

  test('stopped while it waits: the job that runs is left alone', () => {
    const { ports, answers, jobs, ask, answerLast } = setUp();
    ask(square.id, 2);
    ask(cube.id, 2);
    jobs.stop(cube.id);
    answerLast();
    expect(ports[0]!.closed).toBe(false);
    expect(ports[0]!.requests).toHaveLength(1);
    expect(answers).toEqual([[square.id, 2]]);
  });

  test('stopped before the page itself computes it', () => {
    const { ports, answers, jobs, ask } = setUp();
    ask(square.id, 2);
    ports[0]!.fail();
    jobs.stop(square.id);
    ask(cube.id, 3);
    vi.runAllTimers();
    expect(answers).toEqual([[cube.id, 3]]);
  });

  test('without a worker the page computes', () => {
    const { ports, answers, ask } = setUp();
    ask(square.id, 2);
    ports[0]!.fail();
    vi.runAllTimers();
    ask(cube.id, 3);
    vi.runAllTimers();
    expect(answers).toEqual([
      [square.id, 2],
      [cube.id, 3],
    ]);
    expect(ports).toHaveLength(1);
  });
});
