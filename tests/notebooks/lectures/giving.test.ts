import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { record, startHistory, undo } from '../../../lib/graph/history.ts';
import { applyPatch, initialState } from '../../../lib/graph/state.ts';
import type { Lecture } from '../../../lib/graph/studies.ts';
import { createRandom } from '../../../lib/numerics/random.ts';
import {
  beginGiving,
  beginTime,
  choose,
  designsOf,
  type Giving,
  goBack,
  goOn,
  goTo,
  isWithheld,
  keepDesigns,
  leave,
  preparedDesign,
  roomOf,
  stepOf,
  takeUp,
  toggleBlank,
  withholdAgain,
} from '../../../notebooks/lectures/giving.ts';
import { trialLecture } from '../../trialLecture.ts';

const first = initialState(designGraph);
const begin = (place = 0) => beginGiving(trialLecture, place, 1000);
const at = (giving: Giving) => [giving.place, roomOf(giving).revealed];

describe('going through a lecture', () => {
  it('goes on to what is withheld first, then to the next step, and ends at the last', () => {
    const seen = [begin()];
    for (let i = 0; i < 12; i++) seen.push(goOn(seen.at(-1)!));
    expect(seen.map(at)).toEqual([
      [0, false],
      [1, false],
      [1, true],
      [2, false],
      [3, false],
      [3, true],
      [4, false],
      [4, true],
      [5, false],
      [6, false],
      [6, false],
      [6, false],
      [6, false],
    ]);
  });

  it('stands still in its time while it is left', () => {
    const left = leave(begin(), 61_000);
    expect(takeUp(left, 3_661_000)).toEqual({ ...begin(), began: 3_601_000 });
    expect(takeUp(left, 60_000)).toEqual(begin());
    expect(takeUp(begin(), 3_661_000)).toEqual(begin());
  });

  it('goes back step by step, and finds what was revealed and chosen there', () => {
    const third = goOn(goOn(choose(goOn(begin()), 1)));
    expect(at(third)).toEqual([2, false]);
    const second = goBack(third);
    expect([...at(second), roomOf(second).chosen]).toEqual([1, true, 1]);
    expect(at(goOn(second))).toEqual([2, false]);
    expect(at(goBack(goBack(second)))).toEqual([0, false]);
  });

  it('withholds the pieces from the one that the question names on, until they are revealed', () => {
    const asked = goTo(begin(), 1);
    const withheld = (giving: Giving) => [0, 1, 2].map((piece) => isWithheld(giving, piece));
    expect(withheld(asked)).toEqual([false, true, true]);
    expect(withheld(goOn(asked))).toEqual([false, false, false]);
    expect(withheld(withholdAgain(goOn(asked)))).toEqual([false, true, true]);
    expect(withheld(goTo(begin(), 2))).toEqual([false, false, false]);
  });

  it('goes to the nearest step where there is none, whatever an address says', () => {
    expect([-1, 3.7, 99, Number.NaN].map((place) => begin(place).place)).toEqual([0, 3, 6, 0]);
    expect(goTo(begin(), 99).place).toBe(6);
  });

  it('a question without pieces behind it goes on at once', () => {
    const steps: Lecture['steps'] = [
      { id: 'a', title: 'A', pieces: [], ask: { question: 'Why?', options: ['x'], from: 0 } },
      { id: 'b', title: 'B', pieces: [] },
    ];
    expect(goOn(beginGiving({ id: 'l', title: '', steps }, 0, 0)).place).toBe(1);
  });

  it('marks one option at a time, and none that is not there', () => {
    const asked = goTo(begin(), 1);
    expect([0, 2, 3, -1].map((option) => roomOf(choose(asked, option)).chosen)).toEqual([
      0,
      2,
      undefined,
      undefined,
    ]);
    expect(roomOf(choose(choose(asked, 0), 2)).chosen).toBe(2);
    expect('chosen' in roomOf(choose(choose(asked, 2), 2))).toBe(false);
    expect(choose(begin(), 0)).toEqual(begin());
  });

  it('shows the same step again after a blank screen, by any key that moves', () => {
    const blank = toggleBlank(goTo(begin(), 2));
    for (const move of [goOn, goBack, toggleBlank]) {
      const again = move(blank);
      expect([again.blank, again.place]).toEqual([false, 2]);
    }
    expect(goTo(blank, 0)).toMatchObject({ blank: false, place: 0 });
  });

  it('begins its time anew without losing anything else', () => {
    const there = choose(goTo(begin(), 1), 2);
    expect(beginTime(there, 5000)).toEqual({ ...there, began: 5000 });
  });

  it('a lecture without steps stands still', () => {
    const none = beginGiving({ id: 'l', title: '', steps: [] }, 3, 0);
    const walked = choose(goBack(goOn(withholdAgain(none))), 1);
    expect([walked.place, stepOf(walked), isWithheld(walked, 0)]).toEqual([0, undefined, false]);
  });
});

describe('designs of steps', () => {
  it('each begins with the lecture’s design and what it sets, however it was reached', () => {
    const widths = trialLecture.steps.map(
      (_, place) => designsOf(designGraph, first, goTo(begin(), place)).present.inputs['laser.beamDiameter'],
    );
    const usual = designGraph.initial['laser.beamDiameter'];
    expect(widths).toEqual([usual, usual, 6e-3, usual, usual, 4e-3, usual]);
  });

  it('comes back as it was left, with its steps back, whatever was done in others', () => {
    const random = createRandom(9);
    let giving = begin();
    const left = new Map<number, unknown>();
    for (let i = 0; i < 200; i++) {
      const { place } = giving;
      const history = designsOf(designGraph, first, giving);
      if (left.has(place)) expect(history.present.inputs).toBe(left.get(place));
      const focal = 0.05 + 0.1 * random.uniform();
      const moved = applyPatch(designGraph, history.present, { 'lens.focalLength': focal });
      const next = record(history, moved, true);
      expect(undo(next).present.inputs).toBe(history.present.inputs);
      left.set(place, moved.inputs);
      giving = keepDesigns(giving, next);
      const to = Math.floor(7 * random.uniform());
      giving = [goOn, goBack, (now: Giving) => goTo(now, to)][Math.floor(3 * random.uniform())]!(giving);
    }
    expect(left.size).toBe(7);
  });

  it('taking back a change loses neither the place nor what was revealed, chosen or timed', () => {
    const shown = choose(goOn(goTo(begin(), 1)), 0);
    const prepared = designsOf(designGraph, first, shown);
    const moved = record(
      prepared,
      applyPatch(designGraph, prepared.present, { 'lens.focalLength': 0.2 }),
      true,
    );
    const back = keepDesigns(keepDesigns(shown, moved), undo(moved));
    expect({ ...back, rooms: {} }).toEqual({ ...shown, rooms: {} });
    expect(roomOf(back)).toMatchObject({ revealed: true, chosen: 0 });
    expect(designsOf(designGraph, first, back).present.inputs).toBe(prepared.present.inputs);
  });

  it('sets nothing where one value is not allowed, and says which', () => {
    const step = {
      id: 's',
      title: '',
      pieces: [],
      sets: { 'lens.focalLength': 0.2, 'laser.beamDiameter': -1 },
    };
    const { design, problem } = preparedDesign(designGraph, first, step);
    expect(design).toBe(first);
    expect(problem).toMatch(/^This step sets what cannot be set\. Raw beam diameter of −?-?1.* allowed is/);
    expect(preparedDesign(designGraph, first, undefined)).toEqual({ design: first });
  });

  it('keeps the same history as the same state', () => {
    const history = startHistory(first);
    const kept = keepDesigns(begin(), history);
    expect(keepDesigns(kept, history)).toBe(kept);
  });
});
