import { noteOf, type Outcome } from '../../../lib/graph/outcome.ts';
import type { Report } from '../../../lib/graph/quantity.ts';
import type { Paper } from '../../paper/paper.ts';
import { type PaperRequest, paperOf } from '../../rationale/writePapers.ts';
import type { Study } from '../studies/desk/studyDesk.ts';
import type { OpenPaperPort, PaperReply } from './paperMessages.ts';

const stopped: Outcome<Paper> = {
  problem: { kind: 'stopped', message: 'Stopped before it was worked out.', parts: {}, at: 'paper' },
};

/** Works a paper out away from the page, in a worker of its own that ends with it; where none starts, on the page. */
export function startPaper(request: PaperRequest, open: OpenPaperPort, report: Report): Study<Paper> {
  let over = false;
  let close = () => {};
  let finish: (outcome: Outcome<Paper>) => void = () => {};
  const answer = new Promise<Outcome<Paper>>((resolve) => {
    finish = resolve;
  });
  const end = (outcome: Outcome<Paper>) => {
    if (over) return;
    over = true;
    close();
    finish(outcome);
  };
  // In a task of its own: what the person pressed shows first.
  const here = () => setTimeout(() => over || end(written(request, report)));
  let ready = false;
  const replied = (reply: PaperReply) => {
    if ('ready' in reply) ready = true;
    else if ('outcome' in reply) end(reply.outcome);
    else if (!over) report(reply.part);
  };
  const failed = (reason: string) => {
    if (ready) end({ problem: noteOf(new Error(reason), request.name) });
    else here();
  };
  try {
    const port = open(replied, failed);
    close = () => port.close();
    port.post(request);
  } catch {
    here();
  }
  return { answer, stop: () => end(stopped) };
}

function written(request: PaperRequest, report: Report): Outcome<Paper> {
  try {
    return { value: paperOf(request, report) };
  } catch (error) {
    return { problem: noteOf(error, request.name) };
  }
}
