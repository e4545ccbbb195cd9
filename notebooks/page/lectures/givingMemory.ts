import { designGraph } from '../../../lib/design/design.ts';
import type { DesignState } from '../../../lib/graph/state.ts';
import { beginGiving, type Giving, goTo, takeUp } from '../../lectures/giving.ts';
import { type GivenOver, readGivings, restoreGiving, saveGiving } from '../../lectures/savedGiving.ts';
import type { LectureAt } from './lectureAt.ts';

interface Kept {
  readonly giving: Giving;
  readonly inputs: DesignState['inputs'];
}

/** A lecture to be given, and whether the lecturer’s page stood beside it when the page was loaded again. */
export interface Recalled {
  readonly giving: Giving;
  readonly beside: boolean;
}

/** Lectures as they were left on this page, by id: who leaves by mistake comes back to everything as it was. */
const left = new Map<string, Kept>();
const storageKey = 'stepwell.giving';

/** A lecture as it was left, or begun where it or its design is another since. */
export function recalled(window: Window, { place, ...over }: LectureAt, now: number): Recalled {
  const known = asLeft(window, over);
  if (!known) return { giving: beginGiving(over.lecture, place, now), beside: false };
  return { ...known, giving: goTo(takeUp(known.giving, now), place) };
}

/** Place of the step at which a lecture was left; none where it was not given yet, or is another since. */
export function leftAt(window: Window, over: GivenOver): number | undefined {
  return asLeft(window, over)?.giving.place;
}

/** Keeps a lecture, here and where it outlasts the page; `beside`: the lecturer’s page is open. */
export function remember(window: Window, giving: Giving, design: DesignState, beside = false): void {
  const { id } = giving.lecture;
  left.set(id, { giving, inputs: design.inputs });
  const saved = saveGiving(designGraph, giving, design, beside);
  write(window, { ...stored(window), [id]: saved });
}

/** The next time the lecture begins anew. */
export function forget(window: Window, id: string): void {
  left.delete(id);
  const { [id]: _, ...others } = stored(window);
  write(window, others);
}

function asLeft(window: Window, { lecture, design }: GivenOver): Recalled | undefined {
  const known = left.get(lecture.id);
  if (known) {
    const isSame =
      JSON.stringify(known.giving.lecture) === JSON.stringify(lecture) &&
      Object.keys(design.inputs).every((id) => Object.is(known.inputs[id], design.inputs[id]));
    return isSame ? { giving: known.giving, beside: false } : undefined;
  }
  const saved = stored(window)[lecture.id];
  const giving = saved && restoreGiving(designGraph, saved, { lecture, design });
  return giving && { giving, beside: saved.beside };
}

function stored(window: Window): ReturnType<typeof readGivings> {
  try {
    return readGivings(window.sessionStorage.getItem(storageKey));
  } catch {
    return {};
  }
}

function write(window: Window, givings: ReturnType<typeof readGivings>): void {
  try {
    window.sessionStorage.setItem(storageKey, JSON.stringify(givings));
  } catch {
    // Without room the lecture is kept as long as the page is open.
  }
}
