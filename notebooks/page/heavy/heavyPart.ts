import { enteringInputsOf, enteringOf } from '../../../lib/graph/entering.ts';
import type { Graph } from '../../../lib/graph/graph.ts';
import type { Outcome } from '../../../lib/graph/outcome.ts';
import type { Derived, Heaviness, Quantity } from '../../../lib/graph/quantity.ts';
import type { DesignState } from '../../../lib/graph/state.ts';
import { createHeavyJobs, type HeavyJobs } from './heavyJobs.ts';
import type { OpenHeavyPort } from './heavyMessages.ts';

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
  /** `id` is shown from now on, or no longer. */
  need(id: string): void;
  release(id: string): void;
  /** After a change of inputs, once those that depend on it are known. */
  changed(touched: ReadonlySet<string>): void;
}

interface Heavy {
  readonly quantity: Derived;
  needed: number;
  /** Counts up with the first need: what stands first on the page is asked for first. */
  turn: number;
  stale: boolean;
  answer: { readonly outcome: Outcome; readonly inputs: Inputs } | undefined;
}

/** While the hand moves, a search would take the second of two processors from the picture. */
const searchPatience = { rest: 120, most: 800 };

/** `publish` puts an answer into the page's graph; `present` is the design as it stands. */
export function createHeavyPart(
  graph: Graph,
  open: OpenHeavyPort,
  present: () => DesignState,
  publish: (id: string, outcome: Outcome) => void,
): HeavyPart {
  const all = new Map<string, Heavy>();
  for (const quantity of graph.order) {
    if (quantity.kind !== 'derived' || !quantity.heavy) continue;
    all.set(quantity.id, { quantity, needed: 0, turn: 0, stale: false, answer: undefined });
  }
  // Only inputs that enter count, as in `changed`: an answer that another one makes old would never be asked for again.
  const fits = ({ quantity }: Heavy, a: Inputs) => {
    const { inputs } = present();
    return [...enteringInputsOf(quantity, inputs)].every((input) => Object.is(a[input], inputs[input]));
  };
  const answered = (id: string, outcome: Outcome, inputs: Inputs) => {
    const heavy = all.get(id)!;
    // An answer that comes after the inputs have gone back to those of the answer shown is of no use.
    if (!heavy.stale) return;
    heavy.answer = { outcome, inputs };
    heavy.stale = !fits(heavy, inputs);
    publish(id, outcome);
  };
  // A worker each: a search takes as long as several pictures.
  const jobs: Readonly<Record<Heaviness, HeavyJobs>> = {
    picture: createHeavyJobs(graph, open, answered),
    search: createHeavyJobs(graph, open, answered, searchPatience),
  };
  const ask = (heavy: Heavy) => {
    const { id, heavy: kind } = heavy.quantity;
    const known = heavy.answer && fits(heavy, heavy.answer.inputs);
    heavy.stale = !known;
    if (known) {
      jobs[kind!].drop(id);
      publish(id, heavy.answer!.outcome);
    } else jobs[kind!].request(id, present().inputs);
  };
  const behind = createBehind(graph);
  /** Whether an older answer enters what `quantity` holds under the inputs as they are. */
  const entering = (quantity: Quantity): boolean => {
    if (quantity.kind !== 'derived') return false;
    if (quantity.heavy) return all.get(quantity.id)!.stale;
    if (!behind(quantity.id).some((id) => all.get(id)!.stale)) return false;
    return enteringOf(quantity, present().inputs).some(entering);
  };
  let turns = 0;
  return {
    quantities: [...all.values()].map(({ quantity }) => quantity),
    isStale: (id) => entering(graph.quantities.get(id)!),
    need(id) {
      for (const other of behind(id)) {
        const heavy = all.get(other)!;
        heavy.needed += 1;
        if (heavy.needed > 1) continue;
        heavy.turn = ++turns;
        ask(heavy);
      }
    },
    release(id) {
      for (const other of behind(id)) all.get(other)!.needed -= 1;
    },
    changed(touched) {
      const asked = [...all].filter(([id, { needed }]) => needed > 0 && touched.has(id));
      for (const [, heavy] of asked.sort(([, a], [, b]) => a.turn - b.turn)) ask(heavy);
    },
  };
}

/** Heavy quantities whose answers a quantity rests on, itself included; what lies behind those is the worker's. */
function createBehind(graph: Graph): (id: string) => readonly string[] {
  const kept = new Map<string, readonly string[]>();
  const behind = (quantity: Quantity): readonly string[] => {
    const known = kept.get(quantity.id);
    if (known) return known;
    const found =
      quantity.kind !== 'derived'
        ? []
        : quantity.heavy
          ? [quantity.id]
          : [...new Set(Object.values(quantity.from).flatMap(behind))];
    kept.set(quantity.id, found);
    return found;
  };
  return (id) => behind(graph.quantities.get(id)!);
}
