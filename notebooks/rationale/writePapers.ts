import { designGraph } from '../../lib/design/design.ts';
import type { Report } from '../../lib/graph/quantity.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { ownGraph } from '../../lib/studies/ownGraph.ts';
import { type LectureRequest, lecturePaper } from '../lectures/lecturePaper.ts';
import type { Paper } from '../paper/paper.ts';
import { composeSetUpSheet } from '../setUpSheet/composeSetUpSheet.ts';
import { workOutSheet } from '../setUpSheet/workOutSheet.ts';
import { composeRationale } from './composeRationale.ts';
import type { Made } from './facts.ts';
import { workOut } from './workOut.ts';

/** The papers that a design can be written as. */
export const paperNames = { rationale: 'Design rationale', 'set-up-sheet': 'Set-up sheet' } as const;
export type PaperName = keyof typeof paperNames;

/** What a paper of a design is asked for with; plain data. */
export interface DesignPaperRequest {
  readonly name: PaperName;
  readonly design: Omit<DesignState, 'revision'>;
  readonly made: Made;
}

export type PaperRequest = DesignPaperRequest | LectureRequest;

/** Works a paper out and writes it, without a page: plain data. `report` hears how far it is. */
export function paperOf(request: PaperRequest, report?: Report): Paper {
  if (request.name === 'lecture') return lecturePaper(request, report);
  const { name, design, made } = request;
  const { ownLines } = design.studies ?? noStudies;
  const { graph } = ownGraph(designGraph, ownLines);
  return name === 'rationale'
    ? composeRationale(workOut(graph, design, report), made)
    : composeSetUpSheet(workOutSheet(graph, design, report), made);
}
