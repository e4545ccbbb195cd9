import type { Part } from '../../lectures/dividing.ts';
import type { Live } from '../live.ts';

/** A part of a page that is chosen to become a step. */
export interface ChosenPart extends Part {
  /** Where it comes from, and which part of it: one key for each. */
  readonly key: string;
}

/** What the person is at among lectures, while they look elsewhere too. */
export interface LectureMemory {
  /** Ids of the lecture that is arranged, and of the step that is open in it. */
  arranging: string | undefined;
  step: string | undefined;
  /** What is typed and not taken yet, by the name of its field. */
  readonly drafts: Map<string, string>;
  /** Parts chosen to become steps, in the order in which they were, and where they are chosen from. */
  parts: readonly ChosenPart[];
  source: string | undefined;
}

const memories = new WeakMap<Live, LectureMemory>();

export function lectureMemory(live: Live): LectureMemory {
  const known = memories.get(live) ?? {
    arranging: undefined,
    step: undefined,
    drafts: new Map<string, string>(),
    parts: [],
    source: undefined,
  };
  memories.set(live, known);
  return known;
}
