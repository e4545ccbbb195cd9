import { designGraph } from '../../../lib/design/design.ts';
import { createEngine } from '../../../lib/graph/engine.ts';
import { detachable } from './detachable.ts';
import type { HeavyReply, HeavyRequest } from './heavyMessages.ts';
import { seldom } from './seldom.ts';

/** The part of a worker's global scope that is used; the page's types have no room for it beside the window's. */
interface WorkerScope {
  onmessage: ((event: { readonly data: HeavyRequest }) => void) | null;
  postMessage(reply: HeavyReply, transferred?: readonly ArrayBuffer[]): void;
}

const scope = globalThis as unknown as WorkerScope;
const engine = createEngine(designGraph);
let inputs: Readonly<Record<string, unknown>> = designGraph.initial;

scope.onmessage = ({ data: { job, id, changes } }) => {
  inputs = { ...inputs, ...changes };
  engine.setInputs(inputs);
  const report = seldom((part) => scope.postMessage({ job, part }));
  const { copy, buffers } = detachable(engine.evaluate([id], { report })[id]!);
  scope.postMessage({ job, outcome: copy }, buffers);
};
scope.postMessage({ ready: true });
