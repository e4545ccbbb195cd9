import type { Outcome } from '../../../../lib/graph/outcome.ts';
import type { Patch } from '../../../../lib/graph/state.ts';
import type { OwnLine } from '../../../../lib/graph/studies.ts';
import type { ComparedDesign, Comparison } from '../../../../lib/studies/compare.ts';
import type { Influence } from '../../../../lib/studies/influence.ts';
import type { SolveRequest, SolveResult } from '../../../../lib/studies/solveRequest.ts';
import type { VariedInput, VariedResult } from '../../../../lib/studies/vary.ts';
import type { OpenPort, WorkerPort } from '../../workerPort.ts';

/** What each kind of study needs besides its kind and the person's own quantities; plain data, SI. */
interface StudyNeeds {
  readonly vary: {
    readonly inputs: Patch;
    readonly over: readonly VariedInput[];
    readonly ids: readonly string[];
  };
  readonly solve: { readonly inputs: Patch; readonly request: SolveRequest };
  readonly influence: { readonly inputs: Patch; readonly id: string };
  readonly compare: {
    readonly designs: readonly ComparedDesign[];
    readonly ids: readonly string[];
    /** With the numbers that take a longer computation. */
    readonly all?: boolean;
  };
  readonly evaluate: { readonly inputs: Patch; readonly ids: readonly string[] };
}

/** What comes of each kind of study. */
export interface StudyAnswers {
  readonly vary: readonly VariedResult[];
  readonly solve: SolveResult;
  readonly influence: readonly Influence[];
  readonly compare: Comparison;
  /** Outcomes by id. */
  readonly evaluate: Readonly<Record<string, Outcome>>;
}

export type StudyKind = keyof StudyNeeds;

/** A study to be made away from the page. */
export type StudyRequest<K extends StudyKind = StudyKind> = {
  readonly [P in K]: StudyNeeds[P] & {
    readonly kind: P;
    /** Lines of the person's own quantities, which stand in the graph beside those of the design. */
    readonly own: readonly OwnLine[];
  };
}[K];

/** To the worker. */
export interface StudyJob {
  readonly job: number;
  readonly request: StudyRequest;
}

/** From the worker: it has started, the part of a job that is done, 0…1, or what came of it. */
export type StudyReply =
  | { readonly ready: true }
  | { readonly job: number; readonly part: number }
  | { readonly job: number; readonly outcome: Outcome<StudyAnswers[StudyKind]> };

/** A worker for studies. */
export type StudyPort = WorkerPort<StudyJob>;
export type OpenStudyPort = OpenPort<StudyJob, StudyReply>;
