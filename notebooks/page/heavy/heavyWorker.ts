import { designGraph } from '../../../lib/design/design.ts';
import { createEngine } from '../../../lib/graph/engine.ts';
import type { HeavyReply, HeavyRequest } from './heavyMessages.ts';

/** The part of a worker's global scope that is used; the page's types have no room for it beside the window's. */
interface WorkerScope {
  onmessage: ((event: { readonly data: HeavyRequest }) => void) | null;
  postMessage(reply: HeavyReply): void;
}

const scope = globalThis as unknown as WorkerScope;
const engine = createEngine(designGraph);
let inputs: Readonly<Record<string, unknown>> = designGraph.initial;

// Outcomes are cloned, not transferred: the engine keeps what it returns for the next time (512 × 401 doubles: 1 to 2 ms).
scope.onmessage = ({ data: { job, id, changes } }) => {
  inputs = { ...inputs, ...changes };
  engine.setInputs(inputs);
  scope.postMessage({ job, outcome: engine.evaluate([id])[id]! });
};
scope.postMessage({ ready: true });
