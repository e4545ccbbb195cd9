import type { Outcome } from '../../../lib/graph/outcome.ts';
import type { Paper } from '../../paper/paper.ts';
import type { PaperRequest } from '../../rationale/writePapers.ts';

/** From the worker: it has started, the part that is done, 0…1, or what came of it. */
export type PaperReply =
  | { readonly ready: true }
  | { readonly part: number }
  | { readonly outcome: Outcome<Paper> };

/** A worker that writes papers; a test puts a plain object in its place. */
export interface PaperPort {
  post(request: PaperRequest): void;
  /** Ends it at once, whatever it is doing. */
  close(): void;
}

/** Opens a worker; `replied` gets what it says, `failed` why it cannot work. May throw where there are no workers. */
export type OpenPaperPort = (
  replied: (reply: PaperReply) => void,
  failed: (reason: string) => void,
) => PaperPort;
