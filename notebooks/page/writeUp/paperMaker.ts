import type { Outcome } from '../../../lib/graph/outcome.ts';
import type { DesignState } from '../../../lib/graph/state.ts';
import { noStudies } from '../../../lib/graph/studies.ts';
import type { Paper } from '../../paper/paper.ts';
import { composeRationale } from '../../rationale/composeRationale.ts';
import { commandText, type Made, unnamed } from '../../rationale/facts.ts';
import { alternativeIds, rationaleIds } from '../../rationale/rationaleIds.ts';
import { toldDesign } from '../../rationale/told.ts';
import { composeSetUpSheet } from '../../setUpSheet/composeSetUpSheet.ts';
import { setUpIds } from '../../setUpSheet/workOutSheet.ts';
import { fileName } from '../figures/exportFigure.ts';
import type { Live } from '../live.ts';
import type { StartStudy, Study } from '../studies/desk/studyDesk.ts';

type Outcomes = Readonly<Record<string, Outcome>>;

/** The papers that a design can be written as. */
export const paperNames = { rationale: 'Design rationale', 'set-up-sheet': 'Set-up sheet' } as const;
export type PaperName = keyof typeof paperNames;

/** Hears of the work for a paper. */
export interface MakerHearer {
  begin(study: Study<unknown>): void;
  told(part: number): void;
}

/** What was worked out last; a second file of the same design needs no second computation. */
const lastWorked = new WeakMap<
  Live,
  { readonly state: DesignState; readonly name: PaperName; readonly paper: Paper }
>();

/** Works a paper out in the worker; a problem where that was stopped or cannot be done. */
export async function makePaper(
  live: Live,
  name: PaperName,
  startStudy: StartStudy,
  hearer: MakerHearer,
): Promise<Outcome<Paper>> {
  const state = live.state();
  const last = lastWorked.get(live);
  if (last?.state === state && last.name === name) return { value: last.paper };
  const { graph } = live;
  const jobs = jobsFor(live, name);
  const found: Outcomes[] = [];
  for (const [i, { inputs, ids }] of jobs.entries()) {
    const own = state.studies?.ownLines ?? [];
    const study = startStudy(
      { kind: 'evaluate', inputs, ids, own },
      { tool: 'write-up', progressed: (part) => hearer.told((i + part) / jobs.length) },
    );
    hearer.begin(study);
    const outcome = await study.answer;
    if ('problem' in outcome) return outcome;
    found.push(outcome.value);
  }
  const [own = {}, ...ofAlternatives] = found;
  const told = toldDesign(graph, state, own, ofAlternatives);
  const made = madeOf(state, name);
  const paper = name === 'rationale' ? composeRationale(told, made) : composeSetUpSheet(told, made);
  lastWorked.set(live, { state, name, paper });
  return { value: paper };
}

function jobsFor({ graph, state }: Live, name: PaperName) {
  const design = state();
  const { alternatives } = design.studies ?? noStudies;
  const { inputs } = design;
  if (name === 'set-up-sheet') return [{ inputs, ids: setUpIds(graph, design) }];
  return [
    { inputs, ids: rationaleIds(graph, design) },
    ...alternatives.map((one) => ({
      inputs: { ...graph.initial, ...one.inputs },
      ids: alternativeIds(graph, design, one.inputs),
    })),
  ];
}

/** What the paper says of itself; the file is the one that the page saves the design as. */
function madeOf({ name: called = '' }: DesignState, paper: PaperName): Made {
  const name = called.trim() === '' ? unnamed : called;
  const file = fileName(called.trim() === '' ? 'design' : called, 'json');
  const day = new Date();
  const local = new Date(day.getTime() - day.getTimezoneOffset() * 60_000);
  return { name, date: local.toISOString().slice(0, 10), command: commandText(['stepwell', paper, file]) };
}
