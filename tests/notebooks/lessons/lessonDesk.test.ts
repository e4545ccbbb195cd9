import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../lib/numerics/random.ts';
import { createLessonAnswers } from '../../../notebooks/page/lessons/desk/answerLesson.ts';
import { createLessonDesk } from '../../../notebooks/page/lessons/desk/lessonDesk.ts';
import type { LessonJob, LessonWord } from '../../../notebooks/page/lessons/desk/lessonMessages.ts';
import { expectClose } from '../../close.ts';
import { smallLesson } from './smallLesson.ts';

const lessons = [smallLesson];
const seed = 11;
/** The raw beam of the case, m; the expander doubles it at first. */
const raw = smallLesson.draw(createRandom(seed))['laser.beamDiameter'] as number;
const noWorkers = () => {
  throw new Error('no workers here');
};

describe('questions about a lesson, on the page where no worker starts', () => {
  const desk = createLessonDesk(lessons, noWorkers);

  it('draws the case: what tasks set adds up', async () => {
    const reply = await desk.ask('small', seed, { kind: 'open' });
    const first = { 'laser.beamDiameter': raw };
    const later = { ...first, 'expander.magnification': 3 };
    expect(reply).toEqual({ answer: { width: first, side: later, place: later } });
  });

  it('judges what was typed, chosen and marked', async () => {
    const judge = async (task: string, given: string | number) => {
      const reply = await desk.ask('small', seed, { kind: 'judge', task, given });
      return 'answer' in reply ? reply.answer : reply;
    };
    expect(await judge('width', `${2e3 * raw}`)).toEqual({ kind: 'right' });
    expect(await judge('width', `${1e3 * raw} mm`)).toMatchObject({ kind: 'error', error: 'radius' });
    expect(await judge('width', '1 m')).toMatchObject({ kind: 'other' });
    expect(await judge('width', '3 kg')).toMatchObject({ kind: 'unreadable' });
    expect(await judge('side', 'wider')).toEqual({ kind: 'right' });
    expect(await judge('side', 'narrower')).toMatchObject({ kind: 'other' });
    expect(await judge('place', 3e3 * raw)).toEqual({ kind: 'right' });
    expect(await judge('place', 1.5e3 * raw)).toMatchObject({ kind: 'error', error: 'half' });
  });

  it('tells the right answer', async () => {
    const reply = await desk.ask('small', seed, { kind: 'solution', task: 'place' });
    if (!('answer' in reply)) throw new Error(reply.fault);
    expectClose(reply.answer.value as number, 3e3 * raw, { relative: 1e-12 });
    expect(reply.answer.text).toMatch(/mm$/);
  });

  it('says why there is no answer', async () => {
    expect(await desk.ask('none', seed, { kind: 'open' })).toEqual({ fault: 'there is no lesson ‘none’' });
    expect(await desk.ask('small', seed, { kind: 'solution', task: 'none' })).toEqual({
      fault: expect.stringContaining("no task 'none'"),
    });
  });
});

describe('a desk with a worker', () => {
  /** Workers that answer when told to. */
  function openWorkers() {
    const workers: {
      readonly jobs: LessonJob[];
      closed: boolean;
      say(word: LessonWord): void;
      fail(reason: string): void;
    }[] = [];
    const desk = createLessonDesk(lessons, (told, failed) => {
      const worker = { jobs: [] as LessonJob[], closed: false, say: told, fail: failed };
      workers.push(worker);
      return {
        post: (job) => worker.jobs.push(job),
        close: () => {
          worker.closed = true;
        },
      };
    });
    return { desk, workers };
  }

  it('opens one with the first question, and gives each answer to whoever asked', async () => {
    const { desk, workers } = openWorkers();
    expect(workers).toHaveLength(0);
    const [one, two] = [1, 2].map((number) => desk.ask('small', number, { kind: 'open' }));
    expect(workers).toHaveLength(1);
    const answers = createLessonAnswers(lessons);
    for (const { job, request } of [...workers[0]!.jobs].reverse())
      workers[0]!.say({ job, reply: answers(request) });
    const drawn = (number: number) => smallLesson.draw(createRandom(number));
    expect(await one).toMatchObject({ answer: { width: drawn(1) } });
    expect(await two).toMatchObject({ answer: { width: drawn(2) } });
    desk.close();
    expect(workers[0]!.closed).toBe(true);
  });

  it('computes on the page where the worker cannot be started', async () => {
    const { desk, workers } = openWorkers();
    const asked = desk.ask('small', seed, { kind: 'solution', task: 'side' });
    workers[0]!.fail('not found');
    expect(await asked).toEqual({ answer: { value: 'wider', text: 'It gets wider' } });
    expect(await desk.ask('small', seed, { kind: 'judge', task: 'side', given: 'wider' })).toEqual({
      answer: { kind: 'right' },
    });
    expect(workers).toHaveLength(1);
  });

  it('says so where the worker breaks down later, and opens another for the next question', async () => {
    const { desk, workers } = openWorkers();
    const asked = desk.ask('small', seed, { kind: 'open' });
    workers[0]!.say({ ready: true });
    workers[0]!.fail('out of memory');
    expect(await asked).toEqual({ fault: 'out of memory' });
    void desk.ask('small', seed, { kind: 'open' });
    expect(workers.map(({ closed, jobs }) => [closed, jobs.length])).toEqual([
      [true, 1],
      [false, 1],
    ]);
  });
});
