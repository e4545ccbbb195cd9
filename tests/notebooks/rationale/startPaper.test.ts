import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import type { Outcome } from '../../../lib/graph/outcome.ts';
import type { OpenPaperPort, PaperReply } from '../../../notebooks/page/writeUp/paperMessages.ts';
import { startPaper } from '../../../notebooks/page/writeUp/startPaper.ts';
import type { Paper } from '../../../notebooks/paper/paper.ts';
import { type PaperRequest, paperOf } from '../../../notebooks/rationale/writePapers.ts';
import { made } from './workedPapers.ts';

const request: PaperRequest = { name: 'set-up-sheet', design: { inputs: designGraph.initial }, made };
const paper: Paper = { title: 'T', facts: [], blocks: [], references: [] };

/** A worker by hand. */
function port() {
  const heard = { posted: [] as PaperRequest[], closed: 0 };
  let reply: (one: PaperReply) => void = () => {};
  let fail: (reason: string) => void = () => {};
  const open: OpenPaperPort = (replied, failed) => {
    [reply, fail] = [replied, failed];
    return { post: (one) => heard.posted.push(one), close: () => heard.closed++ };
  };
  return { heard, open, reply: (one: PaperReply) => reply(one), fail: (reason: string) => fail(reason) };
}

const kindOf = (outcome: Outcome<Paper>) =>
  'problem' in outcome ? outcome.problem.kind : outcome.value.title;

describe('a paper worked out in a worker', () => {
  it('tells how far it is, then the paper, and closes the worker', async () => {
    const worker = port();
    const parts: number[] = [];
    const study = startPaper(request, worker.open, (part) => parts.push(part));
    expect(worker.heard.posted).toEqual([request]);
    worker.reply({ ready: true });
    worker.reply({ part: 0.5 });
    worker.reply({ outcome: { value: paper } });
    worker.reply({ part: 0.9 });
    expect(kindOf(await study.answer)).toBe('T');
    expect(parts).toEqual([0.5]);
    expect(worker.heard.closed).toBe(1);
  });

  it('stopped, it ends at once, and a late answer changes nothing', async () => {
    const worker = port();
    const study = startPaper(request, worker.open, () => {});
    study.stop();
    worker.reply({ outcome: { value: paper } });
    expect(kindOf(await study.answer)).toBe('stopped');
    study.stop();
    expect(worker.heard.closed).toBe(1);
  });

  it('broken on the way, it says so', async () => {
    const worker = port();
    const study = startPaper(request, worker.open, () => {});
    worker.reply({ ready: true });
    worker.fail('out of memory');
    expect(kindOf(await study.answer)).toBe('fault');
  });

  it('where no worker starts, the page works it out', async () => {
    const worker = port();
    const late = startPaper(request, worker.open, () => {});
    worker.fail('no workers here');
    expect(kindOf(await late.answer)).toBe('Set-up sheet: Test');
    const never = startPaper(
      request,
      () => {
        throw new Error('none');
      },
      () => {},
    );
    expect(kindOf(await never.answer)).toBe('Set-up sheet: Test');
  });

  it('a paper is plain data: it crosses to the page as it is', () => {
    const sheet = paperOf(request);
    expect(structuredClone(sheet)).toEqual(sheet);
    const rationale = paperOf({ ...request, name: 'rationale' });
    expect(structuredClone(rationale)).toEqual(rationale);
  });
});
