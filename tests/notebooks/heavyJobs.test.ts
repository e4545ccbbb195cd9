import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { longestJob } from '../../notebooks/page/heavy/heavyJobs.ts';
import { cube, setUpJobs, square, x } from './heavyPorts.ts';

describe('jobs of the worker', () => {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['performance', 'setTimeout', 'clearTimeout'] });
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  test('one job runs and one waits; the latest wins', () => {
    const { ports, answers, ask, answerLast } = setUpJobs();
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
    const { answers, ask, answerLast } = setUpJobs();
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
    const { ports, ask, answerLast } = setUpJobs();
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
    const { ports, answers, ask, answerLast } = setUpJobs();
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
    const { ports, answers, ask, answerLast } = setUpJobs();
    ask(square.id, 2);
    ports[0]!.reply({ ready: true });
    vi.advanceTimersByTime(100 * longestJob);
    answerLast();
    expect(answers).toEqual([[square.id, 2]]);
  });

  test('an answer that was given up for lost is not taken', () => {
    const { ports, answers, ask } = setUpJobs();
    ask(square.id, 2);
    ports[0]!.reply({ ready: true });
    ask(square.id, 3);
    vi.advanceTimersByTime(longestJob + 50);
    ports[0]!.reply({ job: ports[0]!.requests[0]!.job, outcome: { value: 4 } });
    expect(answers).toEqual([]);
  });

  test('with patience it begins when the hand rests, and in time while it does not', () => {
    const { ports, ask, answerLast } = setUpJobs({ rest: 100, most: 500 });
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

  test('without a worker the page computes', () => {
    const { ports, answers, ask } = setUpJobs();
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
