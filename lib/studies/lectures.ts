import { oneLine } from '../design/ownParts.ts';
import { mostLectures, mostSteps } from '../design/savedLectures.ts';
import type { Graph } from '../graph/graph.ts';
import { type DesignState, resolvePatch } from '../graph/state.ts';
import { type Lecture, type LectureStep, noStudies } from '../graph/studies.ts';
import { Problem } from '../problem.ts';
import { freeTitle, freshId, longestTitle } from './freshNames.ts';

type Design = Omit<DesignState, 'revision'>;

/** A step before it has its id. */
export type StepDraft = Omit<LectureStep, 'id'>;

/** A lecture as one begins it. */
export interface LectureDraft {
  readonly title: string;
  readonly about?: string;
  readonly steps?: readonly StepDraft[];
}

export const lecturesOf = ({ studies = noStudies }: Design): readonly Lecture[] => studies.lectures;

const withLectures = (design: Design, lectures: readonly Lecture[]): Design => ({
  ...design,
  studies: { ...(design.studies ?? noStudies), lectures },
});

/** The lecture with that id; a Problem where it is not there any more. */
export function lectureOf(design: Design, id: string): Lecture {
  const lecture = lecturesOf(design).find((one) => one.id === id);
  if (!lecture) throw new Problem('absent', 'This lecture has been taken out; undo brings it back.');
  return lecture;
}

/** The design with a new lecture behind the others, and the lecture; a Problem where its title is empty, or no more fit. */
export function addLecture(
  design: Design,
  { title, about = '', steps = [] }: LectureDraft,
): { readonly design: Design; readonly lecture: Lecture } {
  const lectures = lecturesOf(design);
  if (lectures.length >= mostLectures)
    throw new Problem(
      'impossible',
      `${mostLectures} lectures are kept, and no more fit. Take one out first.`,
      {
        allowed: `up to ${mostLectures}`,
      },
    );
  checkCount(steps.length);
  const lecture: Lecture = {
    id: freshId('lecture', lectures),
    ...described(title, about),
    steps: steps.map((step, i) => ({ ...step, id: `step${i + 1}` })),
  };
  return { design: withLectures(design, [...lectures, lecture]), lecture };
}

/** The same steps as one of the person's own, under a title that is free; what they set is set by inputs alone. */
export function copyLecture(
  graph: Graph,
  design: Design,
  { title, about, steps }: Lecture,
): ReturnType<typeof addLecture> {
  const drafts = steps.map(({ id: _, sets, ...step }) => ({
    ...step,
    ...(sets && { sets: resolvePatch(graph, sets) }),
  }));
  const draft = { title: freeTitle(title, lecturesOf(design)), steps: drafts };
  return addLecture(design, about === undefined ? draft : { ...draft, about });
}

/** The lecture under this title, with these words about it; none where they are empty. */
export function describeLecture(design: Design, id: string, title: string, about: string): Design {
  return changeLecture(design, id, ({ about: _, ...lecture }) => ({
    ...lecture,
    ...described(title, about),
  }));
}

export function takeOutLecture(design: Design, id: string): Design {
  return withLectures(
    design,
    lecturesOf(design).filter((lecture) => lecture.id !== id),
  );
}

/** The design with one lecture changed; the same one where the change leaves it as it is. */
export function changeLecture(design: Design, id: string, change: (lecture: Lecture) => Lecture): Design {
  const lecture = lectureOf(design, id);
  const next = change(lecture);
  if (next === lecture) return design;
  checkCount(next.steps.length);
  return withLectures(
    design,
    lecturesOf(design).map((one) => (one.id === id ? next : one)),
  );
}

function described(title: string, about: string): Pick<Lecture, 'title' | 'about'> {
  const words = oneLine(about, 'description of the lecture', longestAbout, false);
  return {
    title: oneLine(title, 'title of the lecture', longestTitle, true),
    ...(words && { about: words }),
  };
}

/** Signs of the words about a lecture. */
export const longestAbout = 400;

function checkCount(steps: number): void {
  if (steps <= mostSteps) return;
  throw new Problem('impossible', `${steps} steps are too many; up to ${mostSteps} stand in one lecture.`, {
    value: String(steps),
    allowed: `up to ${mostSteps}`,
  });
}
