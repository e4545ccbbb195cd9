import { designGraph } from '../../../lib/design/design.ts';
import { type DesignState, initialState } from '../../../lib/graph/state.ts';
import type { Lecture } from '../../../lib/graph/studies.ts';
import { isShipped, lecturesOf } from '../../lectures/lecturesOf.ts';
import type { Address } from '../keeping/address.ts';

/** The document that lists lectures; behind it stands which one is given, and its step counted from 1. */
export const lecturesDocument = 'lectures';

/** The design that those which come with the program are given over. */
const firstDesign = initialState(designGraph);

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
  const lecture = lecturesOf(open.studies).find((one) => one.id === id);
  if (!lecture || lecture.steps.length === 0) return undefined;
  const design = isShipped(id) ? firstDesign : open;
  return { lecture, place: Number(step) - 1, design };
}

/** The address of a step. */
export const stepAddress = ({ id }: Lecture, place: number) => `#${lecturesDocument}/${id}/${place + 1}`;
