import type { Outcome } from '../../../lib/graph/outcome.ts';
import type { Paper } from '../../paper/paper.ts';
import type { PaperRequest } from '../../rationale/writePapers.ts';
import type { OpenPort } from '../workerPort.ts';

/** From the worker: it has started, the part that is done, 0…1, or what came of it. */
export type PaperReply =
  | { readonly ready: true }
  | { readonly part: number }
  | { readonly outcome: Outcome<Paper> };

/** Opens a worker that writes papers. */
export type OpenPaperPort = OpenPort<PaperRequest, PaperReply>;
