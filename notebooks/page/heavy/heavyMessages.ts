import type { Outcome } from '../../../lib/graph/outcome.ts';
import type { Patch } from '../../../lib/graph/state.ts';

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

/** A worker as the jobs see it; a test puts a plain object in its place. */
export interface HeavyPort {
  post(request: HeavyRequest): void;
  /** Ends it at once, whatever it is doing. */
  close(): void;
}

/** Opens a worker; `replied` gets what it says, `failed` why it cannot work. */
export type OpenHeavyPort = (
  replied: (reply: HeavyReply) => void,
  failed: (reason: string) => void,
) => HeavyPort;
