import { createEngine } from '../../../lib/graph/engine.ts';
import type { Graph } from '../../../lib/graph/graph.ts';
import type { Outcome } from '../../../lib/graph/outcome.ts';
import type { HeavyPort, HeavyReply, OpenHeavyPort } from './heavyMessages.ts';

type Inputs = Readonly<Record<string, unknown>>;

/** Computes heavy quantities away from the page. */
export interface HeavyJobs {
  /** Asks for a quantity under inputs; a request for it that still waits is replaced. */
  request(id: string, inputs: Inputs): void;
  /** Its answer is no longer of use: drops the request that waits, and ends a long job where others wait behind it. */
  drop(id: string): void;
  /** Drops it, and ends its job at once if it runs; what waits behind it goes on. Nothing is answered. */
  stop(id: string): void;
}

/** Who hears of jobs. */
export interface JobsHearer {
  answered(id: string, outcome: Outcome, inputs: Inputs): void;
  /** A job has begun in a worker that is ready, or `part` of it is done, 0…1. */
  progressed?(id: string, part?: number): void;
}

/** A job longer than this, in ms, is ended when its quantity is asked for again: design.md's bound between waiting and restarting. */
export const longestJob = 300;

/** When a job that waits may begin. */
export interface Patience {
  /** Not before its quantity has been left alone for this long, ms: the hand rests. */
  readonly rest: number;
  /** But at the latest this long after it was first asked for, ms. */
  readonly most: number;
}

interface Waiting {
  readonly inputs: Inputs;
  /** From when on it may begin. */
  readonly due: number;
  readonly first: number;
}

interface Running {
  readonly job: number;
  readonly id: string;
  readonly inputs: Inputs;
  started: number;
  /** Its answer is no longer of use. */
  dropped: boolean;
}

/**
 * One job runs, and of each quantity at most one waits: the latest wins, and who waited longest is next. A job that
 * takes too long is ended when a newer request for its quantity waits, but never twice without an answer between, so
 * that slow designs come to their turn while the hand goes on. Where no worker starts, the page computes. With
 * `patience` a quantity that has an answer already waits until the hand rests.
 */
export function createHeavyJobs(
  graph: Graph,
  open: OpenHeavyPort,
  hearer: JobsHearer,
  { rest, most }: Patience = { rest: 0, most: 0 },
  now: () => number = () => performance.now(),
): HeavyJobs {
  const waiting = new Map<string, Waiting>();
  const known = new Set<string>();
  let later: ReturnType<typeof setTimeout> | undefined;
  const ended = new Set<string>();
  let port: HeavyPort | undefined;
  let ready = false;
  let broken = false;
  let told: Inputs = graph.initial;
  let running: Running | undefined;
  let jobs = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const replied = (reply: HeavyReply) => {
    if ('ready' in reply) {
      ready = true;
      if (!running) return;
      running.started = now();
      hearer.progressed?.(running.id);
      return;
    }
    if (reply.job !== running?.job) return;
    if ('part' in reply) hearer.progressed?.(running.id, reply.part);
    else finish(reply.outcome);
  };
  const finish = (outcome: Outcome) => {
    const { id, inputs } = running!;
    running = undefined;
    ended.delete(id);
    known.add(id);
    hearer.answered(id, outcome, inputs);
    next();
  };
  const close = () => {
    port?.close();
    port = undefined;
    ready = false;
    told = graph.initial;
  };
  const failed = () => {
    broken = true;
    close();
    if (running && !waiting.has(running.id))
      waiting.set(running.id, { inputs: running.inputs, due: 0, first: 0 });
    running = undefined;
    next();
  };
  const next = () => {
    clearTimeout(later);
    if (running || waiting.size === 0) return;
    const at = now();
    const first = [...waiting].find(([, { due }]) => due <= at);
    if (!first) {
      later = setTimeout(next, Math.min(...[...waiting.values()].map(({ due }) => due)) - at);
      return;
    }
    const [id, { inputs }] = first;
    waiting.delete(id);
    running = { job: ++jobs, id, inputs, started: now(), dropped: false };
    if (ready || broken) hearer.progressed?.(id);
    if (broken) return computeHere(running);
    port ??= open(replied, failed);
    const changes = Object.fromEntries(
      Object.entries(inputs).filter(([key, value]) => !Object.is(value, told[key])),
    );
    told = inputs;
    port.post({ job: running.job, id, changes });
  };
  let engine: ReturnType<typeof createEngine> | undefined;
  const computeHere = (job: Running) => {
    setTimeout(() => {
      if (running !== job) return;
      engine ??= createEngine(graph);
      engine.setInputs(job.inputs);
      finish(engine.evaluate([job.id])[job.id]!);
    });
  };
  const endIfLong = () => {
    clearTimeout(timer);
    if (!running || broken || waiting.size === 0) return;
    if (!running.dropped && (!waiting.has(running.id) || ended.has(running.id))) return;
    const left = longestJob - (now() - running.started);
    if (!ready || left > 0) {
      timer = setTimeout(endIfLong, Math.max(left, 20));
      return;
    }
    if (!running.dropped) ended.add(running.id);
    running = undefined;
    close();
    next();
  };
  return {
    request(id, inputs) {
      const at = now();
      const first = waiting.get(id)?.first ?? at;
      waiting.set(id, { inputs, first, due: known.has(id) ? Math.min(at + rest, first + most) : at });
      if (running?.id === id) running.dropped = false;
      next();
      endIfLong();
    },
    drop(id) {
      waiting.delete(id);
      if (running?.id !== id) return;
      running.dropped = true;
      endIfLong();
    },
    stop(id) {
      waiting.delete(id);
      if (running?.id !== id) return;
      running = undefined;
      ended.delete(id);
      close();
      next();
    },
  };
}
