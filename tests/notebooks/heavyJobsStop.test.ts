import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { longestJob } from '../../notebooks/page/heavy/heavyJobs.ts';
import { cube, setUpJobs, square, x } from './heavyPorts.ts';

describe('progress and stop of the worker', () => {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['performance', 'setTimeout', 'clearTimeout'] });
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  test('hands on how far the job is that runs, and nothing of others', () => {
    const { ports, heard, ask, answerLast } = setUpJobs();
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
    const { ports, answers, jobs, ask, answerLast } = setUpJobs();
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

  test('a long job whose answer is of no more use is ended where others wait, and left alone where none do', () => {
    const { ports, answers, jobs, ask, answerLast } = setUpJobs();
    ask(square.id, 2);
    ports[0]!.reply({ ready: true });
    jobs.drop(square.id);
    vi.advanceTimersByTime(10 * longestJob);
    expect(ports.map(({ closed }) => closed)).toEqual([false]);
    ask(cube.id, 3);
    expect(ports.map(({ closed }) => closed)).toEqual([true, false]);
    answerLast();
    expect(answers).toEqual([[cube.id, 3]]);
    ask(square.id, 4);
    jobs.drop(square.id);
    ask(square.id, 5);
    ask(cube.id, 5);
    answerLast();
    expect(ports.at(-1)!.requests.at(-1)!.changes, 'asked for again, it runs on').toEqual({ [x.id]: 5 });
  });

  test('stopped while a newer request for it waits: neither is answered', () => {
    const { ports, jobs, ask } = setUpJobs();
    ask(square.id, 2);
    ask(square.id, 3);
    jobs.stop(square.id);
    vi.runAllTimers();
    expect(ports.map(({ closed }) => closed)).toEqual([true]);
  });

  test('stopped while it waits: the job that runs is left alone', () => {
    const { ports, answers, jobs, ask, answerLast } = setUpJobs();
    ask(square.id, 2);
    ask(cube.id, 2);
    jobs.stop(cube.id);
    answerLast();
    expect(ports[0]!.closed).toBe(false);
    expect(ports[0]!.requests).toHaveLength(1);
    expect(answers).toEqual([[square.id, 2]]);
  });

  test('stopped before the page itself computes it', () => {
    const { ports, answers, jobs, ask } = setUpJobs();
    ask(square.id, 2);
    ports[0]!.fail();
    jobs.stop(square.id);
    ask(cube.id, 3);
    vi.runAllTimers();
    expect(answers).toEqual([[cube.id, 3]]);
  });
});
