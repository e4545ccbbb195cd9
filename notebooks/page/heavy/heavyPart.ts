import { enteringInputsOf, enteringOf } from '../../../lib/graph/entering.ts';
import { type Graph, orderOf } from '../../../lib/graph/graph.ts';
import type { Outcome } from '../../../lib/graph/outcome.ts';
import type { Derived, Heaviness, Quantity } from '../../../lib/graph/quantity.ts';
import type { DesignState } from '../../../lib/graph/state.ts';
import { createHeavyJobs, type HeavyJobs } from './heavyJobs.ts';
import type { OpenHeavyPort } from './heavyMessages.ts';
import { stoppedOutcome, type Work } from './work.ts';

type Inputs = Readonly<Record<string, unknown>>;

/** What heavy quantities hold before their first answer. */
export function notYet(id: string): Outcome {
  return { problem: { kind: 'waiting', message: 'This is being computed.', parts: {}, at: id } };
}

export const isNotYet = (outcome: Outcome): boolean =>
  'problem' in outcome && outcome.problem.kind === 'waiting';

/** Heavy quantities of a page: which are needed, which are older than the inputs, and their answers. */
export interface HeavyPart {
  /** Heavy quantities: the page takes their answers and never computes them. */
  readonly quantities: readonly Derived[];
  /** Whether what `id` holds rests on an answer older than the inputs. */
  isStale(id: string): boolean;
  /** `id` is shown from now on, or rests on others than before while it is; or it is shown no longer. */
  need(id: string): void;
  release(id: string): void;
  /** After a change of inputs, once those that depend on it are known. */
  changed(touched: ReadonlySet<string>): void;
  /** Work under way or stopped; with ids, of what they rest on under the inputs as they are. */
  works(ids?: readonly string[]): readonly Work[];
  /**
   * Ends the work on a heavy quantity at once: it holds a problem, and is not asked for again until its inputs change or
   * `workOut` asks. Does nothing where it is up to date.
   */
  stop(id: string): void;
  /** Asks again for one that was stopped. */
  workOut(id: string): void;
  /** Called whenever `works` may tell something else; returns how to end that. */
  onWork(listener: () => void): () => void;
}

interface Heavy {
  readonly quantity: Derived;
  needed: number;
  /** Counts up with the first need: what stands first on the page is asked for first. */
  turn: number;
  stale: boolean;
  /** Begun and not answered since; what it told of itself. */
  job: { readonly part: number | undefined } | undefined;
  since: number;
  pressed: boolean;
  /** What was stopped is answered by a problem. */
  answer: { readonly outcome: Outcome; readonly inputs: Inputs } | undefined;
}

/** While the hand moves, a search would take the second of two processors from the picture. */
const searchPatience = { rest: 120, most: 800 };

/**
 * `publish` puts an answer into the page's graph; `present` is the design as it stands; `quantityOf` knows quantities
 * beside those of the graph too, none of them heavy.
 */
export function createHeavyPart(
  graph: Graph,
  open: OpenHeavyPort,
  present: () => DesignState,
  publish: (id: string, outcome: Outcome) => void,
  now: () => number = () => performance.now(),
  quantityOf: (id: string) => Quantity | undefined = (id) => graph.quantities.get(id),
): HeavyPart {
  const all = new Map<string, Heavy>();
  const listeners = new Set<() => void>();
  const worked = () => {
    for (const listener of listeners) listener();
  };
  for (const quantity of graph.order) {
    if (quantity.kind !== 'derived' || !quantity.heavy) continue;
    const idle = { job: undefined, since: 0, pressed: false, answer: undefined };
    all.set(quantity.id, { quantity, needed: 0, turn: 0, stale: false, ...idle });
  }
  // Only inputs that enter count, as in `changed`: an answer that another one makes old would never be asked for again.
  const fits = ({ quantity }: Heavy, a: Inputs) => {
    const { inputs } = present();
    return enteringInputsOf(quantity, inputs).every((input) => Object.is(a[input], inputs[input]));
  };
  const answered = (id: string, outcome: Outcome, inputs: Inputs) => {
    const heavy = all.get(id)!;
    // An answer that comes after the inputs have gone back to those of the answer shown is of no use.
    if (!heavy.stale) return;
    take(heavy, outcome, inputs);
  };
  const take = (heavy: Heavy, outcome: Outcome, inputs: Inputs) => {
    heavy.answer = { outcome, inputs };
    heavy.stale = !fits(heavy, inputs);
    rest(heavy);
    publish(heavy.quantity.id, outcome);
    worked();
  };
  /** From here on its next answer is waited for, if any. */
  const rest = (heavy: Heavy) => Object.assign(heavy, { job: undefined, since: now(), pressed: false });
  const progressed = (id: string, part?: number) => {
    const heavy = all.get(id)!;
    if (!heavy.stale) return;
    if (part === undefined) {
      heavy.since = now();
      // One job of a kind runs: what was ended for a newer request waits again.
      for (const other of all.values())
        if (other.quantity.heavy === heavy.quantity.heavy) other.job = undefined;
    }
    heavy.job = { part };
    worked();
  };
  const hearer = { answered, progressed };
  // A worker each: a search takes as long as several pictures.
  const jobs: Readonly<Record<Heaviness, HeavyJobs>> = {
    picture: createHeavyJobs(graph, open, hearer),
    search: createHeavyJobs(graph, open, hearer, searchPatience),
  };
  const ask = (heavy: Heavy) => {
    const { id, heavy: kind } = heavy.quantity;
    const known = heavy.answer && fits(heavy, heavy.answer.inputs);
    if (known || !heavy.stale) rest(heavy);
    heavy.stale = !known;
    if (known) {
      jobs[kind!].drop(id);
      publish(id, heavy.answer!.outcome);
    } else jobs[kind!].request(id, present().inputs);
    worked();
  };
  const behind = createBehind(quantityOf);
  /** Heavy quantities that were asked for with each id that is shown. */
  const needs = new Map<string, readonly string[]>();
  /** Whether an older answer enters what `quantity` holds under the inputs as they are. */
  const entering = (quantity: Quantity): boolean => {
    if (quantity.kind !== 'derived') return false;
    if (quantity.heavy) return all.get(quantity.id)!.stale;
    if (!behind(quantity.id).some((id) => all.get(id)!.stale)) return false;
    return enteringOf(quantity, present().inputs).some(entering);
  };
  const workOn = ({ quantity: { id, name, heavy: kind }, stale, job, since, pressed }: Heavy): Work => {
    const state = stale ? (job ? 'working' : 'waiting') : 'stopped';
    // Short jobs pass one after the other: only behind a long one there is something to tell.
    const running = [...all.values()].find((other) => other.quantity.heavy === kind && other.job);
    const from = running && Math.max(since, running.since);
    return { id, name, state, part: job?.part, since: job ? since : from, pressed };
  };
  let turns = 0;
  const takeUp = (ids: readonly string[]) => {
    for (const id of ids) {
      const heavy = all.get(id)!;
      heavy.needed += 1;
      if (heavy.needed > 1) continue;
      heavy.turn = ++turns;
      ask(heavy);
    }
  };
  const leave = (ids: readonly string[] = []) => {
    for (const id of ids) all.get(id)!.needed -= 1;
  };
  const need = (id: string) => {
    const before = needs.get(id);
    needs.set(id, behind(id));
    takeUp(behind(id));
    // Afterwards, so that work on what is needed still is not asked for again.
    leave(before);
  };
  return {
    quantities: [...all.values()].map(({ quantity }) => quantity),
    isStale(id) {
      const quantity = quantityOf(id);
      return quantity !== undefined && entering(quantity);
    },
    need,
    release(id) {
      leave(needs.get(id));
      needs.delete(id);
    },
    changed(touched) {
      const asked = [...all].filter(([id, { needed }]) => needed > 0 && touched.has(id));
      for (const [, heavy] of asked.sort(([, a], [, b]) => a.turn - b.turn)) ask(heavy);
    },
    works(ids) {
      const under = [...all.values()].filter(
        (heavy) => heavy.needed > 0 && (heavy.stale || isStopped(heavy)),
      );
      if (!ids || under.length === 0) return under.map(workOn);
      const { inputs } = present();
      const asked = ids.flatMap((id) => quantityOf(id) ?? []);
      const resting = new Set(restingOn(asked, inputs));
      return under.filter(({ quantity }) => resting.has(quantity)).map(workOn);
    },
    stop(id) {
      const heavy = all.get(id)!;
      if (!heavy.stale) return;
      // Its answer first: what goes on behind it tells of itself.
      take(heavy, stoppedOutcome(heavy.quantity), present().inputs);
      jobs[heavy.quantity.heavy!].stop(id);
    },
    workOut(id) {
      const heavy = all.get(id)!;
      if (!isStopped(heavy)) return;
      heavy.answer = undefined;
      ask(heavy);
      heavy.pressed = true;
      worked();
    },
    onWork(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

const isStopped = ({ stale, answer }: Heavy): boolean =>
  !stale && answer !== undefined && 'problem' in answer.outcome && answer.outcome.problem.kind === 'stopped';

/** Heavy quantities whose answers enter quantities under these inputs, themselves included; what lies behind those is the worker's. */
function restingOn(quantities: readonly Quantity[], inputs: Inputs): readonly Quantity[] {
  const order = orderOf(quantities, (one) => (one.heavy ? [] : enteringOf(one, inputs)));
  return order.filter((one) => one.kind === 'derived' && one.heavy);
}

/** Heavy quantities whose answers a quantity rests on, itself included; what lies behind those is the worker's. */
function createBehind(quantityOf: (id: string) => Quantity | undefined): (id: string) => readonly string[] {
  const kept = new WeakMap<Quantity, readonly string[]>();
  const behind = (quantity: Quantity): readonly string[] => {
    const known = kept.get(quantity);
    if (known) return known;
    const found =
      quantity.kind !== 'derived'
        ? []
        : quantity.heavy
          ? [quantity.id]
          : [...new Set(Object.values(quantity.from).flatMap(behind))];
    kept.set(quantity, found);
    return found;
  };
  return (id) => {
    const quantity = quantityOf(id);
    return quantity ? behind(quantity) : [];
  };
}
