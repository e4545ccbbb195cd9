import type { Outcome } from '../../../lib/graph/outcome.ts';
import type { Patch } from '../../../lib/graph/state.ts';
import type { OpenPort, WorkerPort } from '../workerPort.ts';

/** To the worker: compute one quantity; `changes` are the inputs that differ from those it was last told. */
export interface HeavyRequest {
  readonly job: number;
  readonly id: string;
  readonly changes: Patch;
}

/** From the worker: it has started, the part of a job that is done, 0…1, or the outcome of a job. */
export type HeavyReply =
  | { readonly ready: true }
  | { readonly job: number; readonly part: number }
  | { readonly job: number; readonly outcome: Outcome };

/** The worker for heavy quantities. */
export type HeavyPort = WorkerPort<HeavyRequest>;
export type OpenHeavyPort = OpenPort<HeavyRequest, HeavyReply>;
