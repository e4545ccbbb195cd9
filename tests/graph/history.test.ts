import { describe, expect, it } from 'vitest';
import { type History, record, redo, startHistory, undo } from '../../lib/graph/history.ts';
import type { DesignState } from '../../lib/graph/state.ts';

const state = (x: number, revision = x): DesignState => ({ inputs: { x }, revision });
const xOf = (history: { readonly present: DesignState }) => history.present.inputs['x'];

describe('undo and redo', () => {
  const three = [1, 2, 3].reduce((history, x) => record(history, state(x), true), startHistory(state(0)));

  it('walk back to the start and forward to the end', () => {
    const walk = (from: History, step: (history: History) => History) => {
      const trail = [from];
      for (let i = 0; i < 4; i++) trail.push(step(trail[i]!));
      return trail;
    };
    const back = walk(three, undo);
    expect(back.map(xOf)).toEqual([3, 2, 1, 0, 0]);
    expect(walk(back[4]!, redo).map(xOf)).toEqual([0, 1, 2, 3, 3]);
  });

  it('go on counting revisions, so that no shown number seems older than it is', () => {
    const back = undo(three);
    expect(back.present.revision).toBe(4);
    expect(redo(back).present.revision).toBe(5);
  });

  it('at either end return the same history', () => {
    expect(redo(three)).toBe(three);
    const first = startHistory(state(0));
    expect(undo(first)).toBe(first);
  });

  it('a new change after undo forgets what was ahead', () => {
    const history = record(undo(undo(three)), state(9), true);
    expect(history.future).toEqual([]);
    expect(xOf(undo(history))).toBe(1);
  });
});

describe('a drag', () => {
  const dragged = [1, 2, 3].reduce((history, x) => record(history, state(x), false), startHistory(state(0)));

  it('is one step back, however many states it went through', () => {
    expect(dragged.past).toHaveLength(1);
    const ended = record(dragged, state(4), true);
    expect(ended.past).toHaveLength(1);
    expect(xOf(undo(ended))).toBe(0);
    expect(xOf(redo(undo(ended)))).toBe(4);
  });

  it('ends by a final state equal to the last one, and the next change is a step of its own', () => {
    const ended = record(dragged, dragged.present, true);
    expect(ended.open).toBe(false);
    const next = record(ended, state(5), true);
    expect(xOf(undo(next))).toBe(3);
  });

  it('is ended by undo', () => {
    const back = undo(dragged);
    expect(xOf(back)).toBe(0);
    expect(xOf(undo(record(back, state(7), true)))).toBe(0);
  });

  it('that changes nothing leaves no step', () => {
    const start = startHistory(state(0));
    expect(record(start, start.present, false).past).toEqual([]);
  });
});
