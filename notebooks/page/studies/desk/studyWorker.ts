import { designGraph } from '../../../../lib/design/design.ts';
import { noteOf } from '../../../../lib/graph/outcome.ts';
import { detachable } from '../../heavy/detachable.ts';
import { seldom } from '../../heavy/seldom.ts';
import { createStudyAnswers } from './answerStudy.ts';
import type { StudyJob, StudyReply } from './studyMessages.ts';

/** The part of a worker's global scope that is used; the page's types have no room for it beside the window's. */
interface WorkerScope {
  onmessage: ((event: { readonly data: StudyJob }) => void) | null;
  postMessage(reply: StudyReply, transferred?: readonly ArrayBuffer[]): void;
}

const scope = globalThis as unknown as WorkerScope;
const answer = createStudyAnswers(designGraph);

scope.onmessage = ({ data: { job, request } }) => {
  const outcome = answer(
    request,
    seldom((part) => scope.postMessage({ job, part })),
  );
  try {
    const { copy, buffers } = detachable(outcome);
    scope.postMessage({ job, outcome: copy }, buffers);
  } catch (error) {
    // A value that cannot leave the worker must not leave the page waiting.
    scope.postMessage({ job, outcome: { problem: noteOf(error, request.kind) } });
  }
};
scope.postMessage({ ready: true });
