import type { DesignState } from '../../lib/graph/state.ts';
import { type LectureStep, noStudies } from '../../lib/graph/studies.ts';

type Design = Omit<DesignState, 'revision'>;

/** The design as students get it: with this lecture alone, and without what the lecturer says. */
export function studentsDesign(design: Design, id: string): Design {
  const { studies = noStudies } = design;
  const lectures = studies.lectures
    .filter((lecture) => lecture.id === id)
    .map((lecture) => ({ ...lecture, steps: lecture.steps.map(withoutNotes) }));
  return { ...design, studies: { ...studies, lectures } };
}

const withoutNotes = ({ notes: _, ...step }: LectureStep): LectureStep => step;
