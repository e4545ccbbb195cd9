import { noteOf } from '../../../lib/graph/outcome.ts';
import { type PaperRequest, paperOf } from '../../rationale/writePapers.ts';
import { seldom } from '../heavy/seldom.ts';
import type { PaperReply } from './paperMessages.ts';

/** The part of a worker's global scope that is used; the page's types have no room for it beside the window's. */
interface WorkerScope {
  onmessage: ((event: { readonly data: PaperRequest }) => void) | null;
  postMessage(reply: PaperReply): void;
}

const scope = globalThis as unknown as WorkerScope;

scope.onmessage = ({ data }) => {
  try {
    const report = seldom((part) => scope.postMessage({ part }));
    scope.postMessage({ outcome: { value: paperOf(data, report) } });
  } catch (error) {
    scope.postMessage({ outcome: { problem: noteOf(error, data.name) } });
  }
};
scope.postMessage({ ready: true });
