import { designGraph } from '../../../lib/design/design.ts';
import { type DesignState, initialState } from '../../../lib/graph/state.ts';
import type { Lecture } from '../../../lib/graph/studies.ts';
import { allLectures, isShipped } from '../../lectures/allLectures.ts';
import type { Address } from '../keeping/address.ts';

/** The document that lists lectures; behind it stands which one is given, and its step counted from 1. */
export const lecturesDocument = 'lectures';

/** The design that those which come with the program are given over. */
const firstDesign = initialState(designGraph);

/** The design that a lecture is given over: the open one keeps it, unless it comes with the program. */
export const designOf = ({ id }: Lecture, open: DesignState): DesignState =>
  isShipped(id) ? firstDesign : open;

/** What an address wants given. */
export interface LectureAt {
  readonly lecture: Lecture;
  readonly place: number;
  /** The design that the lecture is kept with. */
  readonly design: DesignState;
}

/** The lecture and the step that `#lectures/ID/STEP` names; nothing where there is none, or none with steps. */
export function lectureAt({ document, within }: Address, open: DesignState): LectureAt | undefined {
  const [id = '', step] = within.split('/');
  if (document !== lecturesDocument || step === undefined || !/^\d{1,4}$/.test(step)) return undefined;
  const lecture = allLectures(open.studies).find((one) => one.id === id);
  if (!lecture || lecture.steps.length === 0) return undefined;
  return { lecture, place: Number(step) - 1, design: designOf(lecture, open) };
}

/** The address of a step. */
export const stepAddress = ({ id }: Lecture, place: number) => `#${lecturesDocument}/${id}/${place + 1}`;
