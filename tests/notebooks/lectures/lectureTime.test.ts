import { describe, expect, it } from 'vitest';
import type { Lecture } from '../../../lib/graph/studies.ts';
import { beginGiving, choose, goOn, goTo, toggleBlank } from '../../../notebooks/lectures/giving.ts';
import { roomSaid, stateSaid, stepHeard } from '../../../notebooks/lectures/givingWords.ts';
import {
  meantSaid,
  meantTime,
  minutesText,
  paceSaid,
  timeText,
} from '../../../notebooks/lectures/lectureTime.ts';
import { trialLecture } from '../../trialLecture.ts';

const lectureOf = (...minutes: readonly (number | undefined)[]): Lecture => ({
  id: 'l',
  title: '',
  steps: minutes.map((one, i) => ({
    id: String(i),
    title: '',
    pieces: [],
    ...(one === undefined ? {} : { minutes: one }),
  })),
});
const minutes = (count: number) => count * 60_000;

describe('time of a lecture', () => {
  it('adds up what is meant for the steps', () => {
    expect(meantTime(lectureOf(3, 4, 5), 1)).toEqual({ from: 3, until: 7, whole: 12, isPartial: false });
    expect(meantTime(lectureOf(3, undefined), 1)).toEqual({ from: 3, until: 3, whole: 3, isPartial: true });
    expect([meantTime(lectureOf(undefined), 0), meantTime(lectureOf(), 0)]).toEqual([undefined, undefined]);
  });

  it('writes spans as a clock does', () => {
    const spans = [-5, 0, 999, 1000, 59_999, 61_000, 3_599_000, 3_600_000, 45_296_000];
    expect(spans.map(timeText)).toEqual([
      '0:00',
      '0:00',
      '0:00',
      '0:01',
      '0:59',
      '1:01',
      '59:59',
      '1:00:00',
      '12:34:56',
    ]);
    expect([2, 2.5, 1 / 3].map(minutesText)).toEqual(['2 min', '2.5 min', '0.3 min']);
  });

  it('says ahead, in time or behind, from half a minute on', () => {
    const said = (spent: number) => paceSaid(lectureOf(3, 4, 5), 1, minutes(spent));
    expect(said(1.25)).toBe('1:45 ahead of time');
    expect(said(2.5)).toBe('0:30 ahead of time');
    expect([2.6, 3, 6.9, 7.4].map(said)).toEqual(['in time', 'in time', 'in time', 'in time']);
    expect(said(7.5)).toBe('0:30 behind time');
    expect(said(72)).toBe('1:05:00 behind time');
    expect(paceSaid(lectureOf(3, undefined), 0, 0)).toBe('in time, as far as steps say their time');
    expect(paceSaid(lectureOf(undefined), 0, 0)).toBe('No step says how long it is meant to take.');
  });

  it('says until when a step is meant to last', () => {
    expect(meantSaid(lectureOf(3, 4.5), 1)).toBe('This step is meant to end at 7.5 min of 7.5 min.');
    expect(meantSaid(lectureOf(undefined), 0)).toBe('');
  });
});

describe('what the lecturer is told', () => {
  const begin = beginGiving(trialLecture, 0, 0);
  const asked = goTo(begin, 1);

  it('says what the room sees', () => {
    expect(stateSaid(begin)).toBe('');
    expect(stateSaid(asked)).toMatch(/does not see the answer yet/);
    expect(stateSaid(goOn(asked))).toBe('The room sees the answer.');
    expect(stateSaid(toggleBlank(asked))).toMatch(/blank/);
    const open = { id: 'a', title: '', pieces: [], ask: { question: '?', options: [], from: 0 } };
    expect(stateSaid(beginGiving({ id: 'l', title: '', steps: [open] }, 0, 0))).toBe(
      'The room is asked; nothing is withheld.',
    );
  });

  it('says what the room takes for right, and which step is open', () => {
    expect([roomSaid(asked), roomSaid(choose(asked, 1))]).toEqual(['', 'The room says: It becomes darker']);
    expect(stepHeard(asked)).toBe('Step 2 of 7: Half a wave in the middle');
    expect(stepHeard(beginGiving({ id: 'l', title: '', steps: [] }, 0, 0))).toBe('Step 1 of 0: ');
  });
});
