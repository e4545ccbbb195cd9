import type { DesignState } from '../../../lib/graph/state.ts';
import { beginGiving, type Giving, goTo } from '../../lectures/giving.ts';
import type { LectureAt } from './lectureAt.ts';

interface Kept {
  readonly giving: Giving;
  readonly inputs: DesignState['inputs'];
}

/** Lectures as they were left on this page, by id: who leaves by mistake comes back to everything as it was. */
const left = new Map<string, Kept>();

/** A lecture as it was left, or begun where it or its design is another since. */
export function recalled({ lecture, place, design }: LectureAt, now: number): Giving {
  const known = left.get(lecture.id);
  const ids = Object.keys(design.inputs);
  const isSame =
    known !== undefined &&
    JSON.stringify(known.giving.lecture) === JSON.stringify(lecture) &&
    ids.every((id) => Object.is(known.inputs[id], design.inputs[id]));
  return isSame ? goTo(known.giving, place) : beginGiving(lecture, place, now);
}

/** Keeps a lecture as it is left. */
export function remember(giving: Giving, { inputs }: DesignState): void {
  left.set(giving.lecture.id, { giving, inputs });
}
