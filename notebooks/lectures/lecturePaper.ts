import { designGraph } from '../../lib/design/design.ts';
import type { Report } from '../../lib/graph/quantity.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { type Lecture, noStudies } from '../../lib/graph/studies.ts';
import { ownGraph } from '../../lib/studies/ownGraph.ts';
import type { Paper } from '../paper/paper.ts';
import type { Made } from '../rationale/facts.ts';
import { composeLecture } from './composeLecture.ts';
import { workOutLecture } from './workOutLecture.ts';

/** What a printed lecture is asked for with; plain data. */
export interface LectureRequest {
  readonly name: 'lecture';
  readonly lecture: Lecture;
  /** The design that it is kept with. */
  readonly design: Omit<DesignState, 'revision'>;
  /** The lecturer's copy has the notes, that of the students has not. */
  readonly notes: boolean;
  readonly made: Made;
}

/** Works a lecture out and writes it, without a page: plain data. `report` hears how far it is. */
export function lecturePaper({ lecture, design, notes, made }: LectureRequest, report?: Report): Paper {
  const { graph } = ownGraph(designGraph, (design.studies ?? noStudies).ownLines);
  const steps = workOutLecture(graph, { ...design, revision: 0 }, lecture, report);
  return composeLecture(lecture, steps, made, { notes });
}
