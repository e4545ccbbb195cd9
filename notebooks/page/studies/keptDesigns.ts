import type { Graph } from '../../../lib/graph/graph.ts';
import type { Outcome } from '../../../lib/graph/outcome.ts';
import type { Alternative } from '../../../lib/graph/studies.ts';
import { Problem } from '../../../lib/problem.ts';
import { alternativesOf } from '../../../lib/studies/alternatives.ts';
import { createKeptOutcomes, type KeptOutcomes } from '../../../lib/studies/keptOutcomes.ts';
import { mostOverlays } from '../../overlay.ts';
import type { Live } from '../live.ts';
import { startStudy } from './desk/startStudy.ts';

type Inputs = Readonly<Record<string, unknown>>;

/** How far long work of a kept design is, 0…1. */
export type Progressed = (part: number) => void;

/** Long work of a kept design, beside the page. */
export interface KeptWork {
  /** Resolves when it is done or stopped: true where all has been brought. */
  readonly done: Promise<boolean>;
  stop(): void;
}

/** What a page knows of the designs that are kept beside today's: their outcomes, and which of them charts show. */
export interface KeptDesigns {
  /** Outcomes as the graph is now. */
  outcomes(): KeptOutcomes;
  /** Works out what these wait for, one design after another. */
  workOut(inputs: Inputs, ids: readonly string[], progressed?: Progressed): KeptWork;
  /** Those that charts show, in the order in which they are kept. */
  shown(): readonly Alternative[];
  isShown(name: string): boolean;
  /** Shows a design in charts, or no longer; throws a Problem where too many are shown. */
  show(name: string, inCharts: boolean): void;
  /** Called when other designs are shown. */
  onShown(listener: () => void): () => void;
}

const made = new WeakMap<Live, KeptDesigns>();

/** The kept designs of a page; which of them charts show is remembered until the page is closed. */
export function keptDesigns(live: Live): KeptDesigns {
  const known = made.get(live) ?? createKeptDesigns(live);
  made.set(live, known);
  return known;
}

function createKeptDesigns(live: Live): KeptDesigns {
  let known: { readonly graph: Graph; readonly outcomes: KeptOutcomes } | undefined;
  const names = new Set<string>();
  const listeners = new Set<() => void>();
  let queue: Promise<unknown> = Promise.resolve();
  const outcomes = () => {
    // Formula lines of the person's own make another graph.
    if (known?.graph !== live.graph) known = { graph: live.graph, outcomes: createKeptOutcomes(live.graph) };
    return known.outcomes;
  };
  const shown = () => alternativesOf(live.state()).filter(({ name }) => names.has(name));
  return {
    outcomes,
    workOut(inputs, ids, progressed) {
      let stopped = false;
      let stop = () => {};
      const run = async (): Promise<boolean> => {
        const work = outcomes().workFor(inputs, ids);
        if (stopped || work.length === 0) return !stopped;
        const own = live.state().studies?.ownLines ?? [];
        const study = startStudy(
          { kind: 'evaluate', inputs, ids: work, own },
          { tool: 'kept', ...(progressed && { progressed }) },
        );
        stop = study.stop;
        const answer = await study.answer;
        outcomes().bring(inputs, broughtBy(answer, work));
        return !stopped && 'value' in answer;
      };
      const done = queue.then(run);
      queue = done.catch(() => undefined);
      return {
        done,
        stop: () => {
          stopped = true;
          stop();
        },
      };
    },
    shown,
    isShown: (name) => names.has(name),
    show(name, inCharts) {
      if (inCharts && !names.has(name) && shown().length >= mostOverlays)
        throw new Problem(
          'impossible',
          `Charts show ${mostOverlays} designs beside today’s at most; take one off first.`,
          { allowed: `up to ${mostOverlays}` },
        );
      if (inCharts) names.add(name);
      else names.delete(name);
      for (const listener of listeners) listener();
    },
    onShown(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** The answer by id. What was stopped is brought to nobody, so that it can be asked again; a fault says so. */
function broughtBy(
  answer: Outcome<Readonly<Record<string, Outcome>>>,
  ids: readonly string[],
): Readonly<Record<string, Outcome>> {
  if ('value' in answer) return answer.value;
  if (answer.problem.kind === 'stopped') return {};
  return Object.fromEntries(ids.map((id) => [id, { problem: answer.problem }]));
}
