import type { Outcome } from '../../../lib/graph/outcome.ts';
import type { DesignState } from '../../../lib/graph/state.ts';
import type { Paper } from '../../paper/paper.ts';
import { commandText, type Made, unnamed } from '../../rationale/facts.ts';
import type { PaperName } from '../../rationale/writePapers.ts';
import { fileName } from '../figures/exportFigure.ts';
import type { Live } from '../live.ts';
import type { Study } from '../studies/desk/studyDesk.ts';
import { openPaperWorker } from './openPaperWorker.ts';
import { startPaper } from './startPaper.ts';

/** Hears of the work for a paper. */
export interface MakerHearer {
  begin(study: Study<Paper>): void;
  told(part: number): void;
}

/** What was worked out last; a second file of the same design needs no second computation. */
interface Last {
  readonly state: DesignState;
  readonly name: PaperName;
  readonly date: string;
  readonly paper: Paper;
}
const lastOf = new WeakMap<Live, Last>();

/** Works a paper of the design out; a problem where that was stopped or cannot be done. */
export async function makePaper(live: Live, name: PaperName, hearer: MakerHearer): Promise<Outcome<Paper>> {
  const state = live.state();
  const made = madeOf(state, name);
  const last = lastOf.get(live);
  if (last?.state === state && last.name === name && last.date === made.date) return { value: last.paper };
  const { revision: _, kept: __, ...design } = state;
  const study = startPaper({ name, design, made }, openPaperWorker, hearer.told);
  hearer.begin(study);
  const outcome = await study.answer;
  if ('value' in outcome) lastOf.set(live, { state, name, date: made.date, paper: outcome.value });
  return outcome;
}

/** What the paper says of itself; the file is the one that the page saves the design as. */
function madeOf({ name: called = '' }: DesignState, paper: PaperName): Made {
  const named = called.trim() !== '';
  const file = fileName(named ? called : 'design', 'json');
  const now = new Date();
  const here = new Date(now.getTime() - now.getTimezoneOffset() * 60_000);
  return {
    name: named ? called : unnamed,
    date: here.toISOString().slice(0, 10),
    command: commandText(['stepwell', paper, file]),
  };
}
