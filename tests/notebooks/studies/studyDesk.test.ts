import { expect, test } from 'vitest';
import { derived } from '../../../lib/graph/define.ts';
import { createGraph } from '../../../lib/graph/graph.ts';
import { createStudyAnswers } from '../../../notebooks/page/studies/desk/answerStudy.ts';
import { createStudyDesk } from '../../../notebooks/page/studies/desk/studyDesk.ts';
import type { StudyJob, StudyReply } from '../../../notebooks/page/studies/desk/studyMessages.ts';
import { plainNumber, plainWords } from '../../graph/plainQuantities.ts';

const x = plainNumber('test.x');
const square = derived({
  ...plainWords,
  id: 'test.square',
  name: 'square',
  from: { x },
  compute: ({ x }) => x ** 2,
});
const graph = createGraph([square]);
const inputs = { [x.id]: 3 };
const own = [{ id: 'own.twice', name: 'twice', formula: '2 * test.square' }];
const evaluateSquare = { kind: 'evaluate', inputs, ids: [square.id], own: [] } as const;

/** A desk whose workers answer when the test says so. */
function setUp() {
  const ports: {
    jobs: StudyJob[];
    closed: boolean;
    reply: (reply: StudyReply) => void;
    fail: () => void;
  }[] = [];
  const start = createStudyDesk(graph, (reply, failed) => {
    const port = { jobs: [] as StudyJob[], closed: false, reply, fail: () => failed('out of memory') };
    ports.push(port);
    return { post: (job) => port.jobs.push(job), close: () => (port.closed = true) };
  });
  const answers = createStudyAnswers(graph);
  const work = (place: number) => {
    const { job, request } = ports[place]!.jobs.at(-1)!;
    const reply = ports[place]!.reply;
    reply({ job, outcome: answers(request, (part) => reply({ job, part })) });
  };
  return { ports, start, work };
}

test('a study is posted, tells how far it is and answers; its worker serves the next', async () => {
  const { ports, start, work } = setUp();
  const parts: number[] = [];
  const { answer } = start(evaluateSquare, { progressed: (part) => parts.push(part) });
  work(0);
  expect(await answer).toEqual({ value: { [square.id]: { value: 9 } } });
  expect(parts).toEqual([1]);
  const second = start({
    kind: 'vary',
    inputs,
    over: [{ id: x.id, values: [1, 2] }],
    ids: [square.id],
    own: [],
  });
  work(0);
  expect(await second.answer).toEqual({ value: [{ id: square.id, values: [1, 4] }] });
  expect(ports).toHaveLength(1);
});

test('stopped ones say so at once, end their worker and hear nothing more', async () => {
  const { ports, start } = setUp();
  const parts: number[] = [];
  const study = start(evaluateSquare, { progressed: (part) => parts.push(part) });
  study.stop();
  expect(await study.answer).toMatchObject({ problem: { kind: 'stopped' } });
  expect(ports[0]!.closed).toBe(true);
  ports[0]!.reply({ job: ports[0]!.jobs[0]!.job, part: 0.5 });
  expect(parts).toEqual([]);
  study.stop();
  start(evaluateSquare);
  expect(ports).toHaveLength(2);
});

test('a newer request of a tool takes the place of the older, another tool’s goes on beside it', async () => {
  const { ports, start, work } = setUp();
  const first = start(evaluateSquare, { tool: 'one' });
  const beside = start(evaluateSquare, { tool: 'two' });
  const second = start(evaluateSquare, { tool: 'one' });
  expect(await first.answer).toMatchObject({ problem: { kind: 'stopped' } });
  expect(ports.map(({ closed }) => closed)).toEqual([true, false, false]);
  work(2);
  work(1);
  expect(await second.answer).toMatchObject({ value: {} });
  expect(await beside.answer).toMatchObject({ value: {} });
  // One worker is kept for later; two would hold the graph twice.
  expect(ports.map(({ closed }) => closed)).toEqual([true, true, false]);
});

test('where no worker starts the page computes, and can be stopped before', async () => {
  const { ports, start } = setUp();
  const lost = start(evaluateSquare);
  ports[0]!.fail();
  expect(await lost.answer).toEqual({ value: { [square.id]: { value: 9 } } });
  const next = start(evaluateSquare);
  expect(ports).toHaveLength(1);
  next.stop();
  expect(await next.answer).toMatchObject({ problem: { kind: 'stopped' } });
  const without = createStudyDesk(graph, () => {
    throw new Error('no workers here');
  });
  expect(await without({ kind: 'influence', inputs, id: square.id, own: [] }).answer).toMatchObject({
    value: [{ id: x.id, strength: expect.closeTo(2, 6) }],
  });
});

test('a worker that breaks on the way is a problem in words, and the next study has a new one', async () => {
  const { ports, start, work } = setUp();
  const { answer } = start(evaluateSquare);
  ports[0]!.reply({ ready: true });
  ports[0]!.fail();
  expect(await answer).toMatchObject({
    problem: {
      kind: 'fault',
      message: 'This could not be worked out: out of memory. Try again, or with less at a time.',
    },
  });
  const next = start(evaluateSquare);
  work(1);
  expect(await next.answer).toMatchObject({ value: {} });
});

test('every kind of study is made over the design and the person’s own lines', () => {
  const answers = createStudyAnswers(graph);
  const ask = (request: Parameters<typeof answers>[0]) => answers(request, () => {});
  expect(ask({ kind: 'evaluate', inputs, ids: ['own.twice'], own })).toEqual({
    value: { 'own.twice': { value: 18 } },
  });
  const request = {
    wants: [{ id: 'own.twice', kind: 'value' as const, value: 50 }],
    moves: [{ id: x.id, from: 1, to: 10 }],
  };
  expect(ask({ kind: 'solve', inputs, request, own })).toMatchObject({ value: { met: true } });
  const designs = [
    { name: 'today', inputs },
    { name: 'other', inputs: { [x.id]: 6 } },
  ];
  expect(ask({ kind: 'compare', designs, ids: [square.id], own: [] })).toMatchObject({
    value: { results: [{ id: square.id, texts: ['9', '36'], changes: [0, 3] }] },
  });
});

test('what cannot be is a problem, never an exception', () => {
  const answers = createStudyAnswers(graph);
  const ask = (request: Parameters<typeof answers>[0]) => answers(request, () => {});
  const gone = ask({ kind: 'evaluate', inputs, ids: ['own.twice'], own: [] });
  expect(gone).toMatchObject({
    problem: { message: expect.stringContaining("There is no quantity 'own.twice'") },
  });
  expect(ask({ kind: 'vary', inputs, over: [], ids: [square.id], own: [] })).toMatchObject({
    problem: { kind: 'impossible' },
  });
});
