import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { record, startHistory, undo } from '../../../lib/graph/history.ts';
import { applyPatch, initialState } from '../../../lib/graph/state.ts';
import {
  beginGiving,
  choose,
  designsOf,
  type Giving,
  goOn,
  goTo,
  isWithheld,
  keepDesigns,
  leave,
  preparedDesign,
  roomOf,
  stepOf,
  takeUp,
} from '../../../notebooks/lectures/giving.ts';
import { readGivings, restoreGiving, saveGiving } from '../../../notebooks/lectures/savedGiving.ts';
import { trialLecture } from '../../trialLecture.ts';

const design = initialState(designGraph);
const over = { lecture: trialLecture, design };
const began = 1_700_000_000_000;

/** Step 2 is answered and marked, in step 3 the beam was made narrower than it is prepared there. */
function given(): Giving {
  const asked = goOn(choose(goTo(beginGiving(trialLecture, 0, began), 1), 1));
  const next = goOn(asked);
  const prepared = preparedDesign(designGraph, design, stepOf(next)).design;
  const moved = applyPatch(designGraph, prepared, { 'laser.beamDiameter': 5e-3 });
  return keepDesigns(next, record(startHistory(prepared), moved, true));
}

const throughText = (giving: Giving, beside = false) => {
  const saved = saveGiving(designGraph, giving, design, beside);
  return readGivings(JSON.stringify({ [trialLecture.id]: saved }))[trialLecture.id]!;
};

describe('a lecture that is given, kept beyond its page', () => {
  it('comes back with its place, its time, what was shown and marked, and what was moved', () => {
    const saved = throughText(given(), true);
    expect(saved.beside).toBe(true);
    const back = restoreGiving(designGraph, saved, over)!;
    expect(back).toMatchObject({ place: 2, began, blank: false });
    const inputs = designsOf(designGraph, design, back).present.inputs;
    expect(inputs['laser.beamDiameter']).toBe(5e-3);
    expect(inputs['lens.focalLength']).toBe(design.inputs['lens.focalLength']);
    const asked = goTo(back, 1);
    expect(roomOf(asked)).toMatchObject({ revealed: true, chosen: 1 });
    expect(isWithheld(asked, 1)).toBe(false);
    expect(isWithheld(goTo(back, 3), 0)).toBe(true);
  });

  it('knows when it was left', () => {
    const back = restoreGiving(designGraph, throughText(leave(given(), began + 5000)), over)!;
    expect(takeUp(back, began + 65_000).began).toBe(began + 60_000);
    expect(takeUp(restoreGiving(designGraph, throughText(given()), over)!, began + 65_000).began).toBe(began);
  });

  it('takes what was moved back to what the step prepared', () => {
    const back = restoreGiving(designGraph, throughText(given()), over)!;
    expect(undo(designsOf(designGraph, design, back)).present.inputs['laser.beamDiameter']).toBe(6e-3);
  });

  it('begins anew where the lecture or its design is another since', () => {
    const saved = throughText(given());
    const title = { ...trialLecture, title: 'Another' };
    expect(restoreGiving(designGraph, saved, { ...over, lecture: title })).toBeUndefined();
    const shorter = { ...trialLecture, steps: trialLecture.steps.slice(0, 6) };
    expect(restoreGiving(designGraph, saved, { ...over, lecture: shorter })).toBeUndefined();
    const wider = applyPatch(designGraph, design, { 'lens.focalLength': 0.2 });
    expect(restoreGiving(designGraph, saved, { ...over, design: wider })).toBeUndefined();
  });

  it('leaves out what cannot be read or set, and keeps the rest', () => {
    expect(readGivings(null)).toEqual({});
    expect(readGivings('{"a')).toEqual({});
    expect(readGivings('[1, null]')).toEqual({});
    const saved = throughText(given());
    expect(Object.keys(readGivings(JSON.stringify({ a: { ...saved, version: 2 }, b: saved })))).toEqual([
      'b',
    ]);
    const profile = { revealed: true, chosen: 8 };
    const wider = { revealed: true, moved: { 'laser.beamDiameter': 'wide' } };
    const odd = { ...saved, rooms: { profile, wider, gone: profile } };
    const back = restoreGiving(designGraph, odd, over)!;
    expect(Object.keys(back.rooms)).toEqual(['profile', 'wider']);
    expect(back.rooms['profile']).toEqual({ revealed: true });
    expect(back.rooms['wider']).toEqual({ revealed: true });
    expect(restoreGiving(designGraph, { ...saved, place: 7 }, over)).toBeUndefined();
  });
});
