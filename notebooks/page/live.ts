import { Runtime, type Variable } from '@observablehq/runtime';
import { descendantsOf } from '../../lib/graph/descendants.ts';
import type { Graph } from '../../lib/graph/graph.ts';
import { type History, record, redo, startHistory, undo } from '../../lib/graph/history.ts';
import type { Outcome } from '../../lib/graph/outcome.ts';
import { isInput, type Quantity } from '../../lib/graph/quantity.ts';
import { applyPatch, type DesignState, initialState, type Patch, sameDesign } from '../../lib/graph/state.ts';
import { define, defineGraph, defineSource } from './graphVariables.ts';
import type { OpenHeavyPort } from './heavy/heavyMessages.ts';
import { createHeavyPart, type HeavyPart, isNotYet } from './heavy/heavyPart.ts';
import type { Work } from './heavy/work.ts';
import { createHolding } from './holding.ts';
import { createOwnVariables } from './ownVariables.ts';
import { createReader } from './readAtOnce.ts';
import type { Watcher } from './watcher.ts';

/** The design as the page lives it: one writer, many watchers. */
export interface Live {
  /** The graph as it stands: the design's, with the person's own quantities. */
  readonly graph: Graph;
  state(): DesignState;
  /**
   * The one way to change the design. Throws a Problem, and changes nothing, where a value is not allowed.
   * `final: false` while a drag goes on: the whole drag becomes one step back.
   */
  set(patch: Patch, options?: { readonly final?: boolean }): void;
  /** Takes another design, name and notes included, as one step; `final` as in `set`. What is there already changes nothing. */
  open(design: Omit<DesignState, 'revision'>, options?: { readonly final?: boolean }): void;
  history(): History;
  /** Goes on with a history that was kept, in place of the one here. */
  resume(kept: History): void;
  undo(): void;
  redo(): void;
  canUndo(): boolean;
  canRedo(): boolean;
  /** Starts watching; returns how to stop. */
  watch(quantity: Quantity, watcher: Watcher): () => void;
  /** Values of quantities for the design as it stands now, computed at once; throws a Problem where one has none. */
  read(from: Readonly<Record<string, Quantity>>): Record<string, unknown>;
  /** Called after every change of the state. */
  onState(listener: (state: DesignState) => void): () => void;
  /** Resolves when everything watched is up to date. */
  settled(): Promise<number>;
  /** Work of the worker under way, or stopped; with ids, of what these rest on. */
  works(ids?: readonly string[]): readonly Work[];
  /** Ends work at once: what it was for says so, and is up to date with that. */
  stop(id: string): void;
  /** Asks for stopped work again. */
  workOut(id: string): void;
  /** Called whenever `works` may tell something else; returns how to end that. */
  onWork(listener: () => void): () => void;
}

interface Entry {
  readonly watchers: Set<Watcher>;
  readonly variable: Variable;
  latest: Outcome | undefined;
  /** Revision that its watchers were last told it is up to date with. */
  told: number | undefined;
}

/**
 * Binds a graph to the reactive runtime; the only place that knows it. With `open`, heavy quantities are computed by a
 * worker; without, like all others.
 */
export function createLive(
  graph: Graph,
  start: DesignState = initialState(graph),
  open?: OpenHeavyPort,
): Live {
  let history: History = startHistory(start);
  const runtime = new Runtime({}, () => undefined);
  // The runtime waits for an animation frame, up to 17 ms after the hand has moved, and hidden tabs never get one:
  // compute when the present task is done instead, which still takes all patches of one task together.
  runtime._computeSoon = () => Promise.resolve().then(() => runtime._computeNow());
  const module = runtime.module();
  const own = createOwnVariables(module, graph);
  own.follow(start.studies?.ownLines);
  const heavy: HeavyPart | undefined =
    open &&
    createHeavyPart(
      graph,
      open,
      () => history.present,
      (id, outcome) => {
        define(variables.get(id)!, id, outcome);
        answered.add(id);
      },
      undefined,
      (id) => own.graph().quantities.get(id),
    );
  const variables = defineGraph(module, graph, start, heavy?.quantities ?? []);
  const entries = new Map<string, Entry>();
  const waiting = new Set<string>();
  /** Heavy quantities that answered since watchers were last told. */
  const answered = new Set<string>();
  /** Entries with watchers that a hold keeps from what has changed. */
  const owed = new Set<Entry>();
  const holding = createHolding((leaders) => {
    for (const { watchers, latest } of owed)
      for (const watcher of watchers) if (!leaders.has(watcher)) watcher.changed(latest!);
    owed.clear();
    settle();
  });
  const listeners = new Set<(state: DesignState) => void>();
  const read = createReader(() => ({ graph: own.graph(), inputs: history.present.inputs }));
  let whenSettled: ((revision: number) => void)[] = [];

  /** Tells the watchers of what has been computed in one go; what rests on an older answer of the worker is not settled. */
  const settle = () => {
    for (const id of waiting) if (!heavy?.isStale(id)) return;
    const { revision } = history.present;
    const { leaders } = holding;
    // While the rest is held back leaders are told of their picture's answer only: drawing the old one again delays it.
    const drawn = [...answered].some((id) =>
      [...(entries.get(id)?.watchers ?? [])].some((one) => leaders?.has(one)),
    );
    answered.clear();
    const told = (watcher: Watcher) => !leaders || (drawn && leaders.has(watcher));
    for (const entry of entries.values())
      for (const watcher of entry.watchers) if (told(watcher)) watcher.shown?.();
    // Once a revision: each answer of the worker comes here several times, and a page holds hundreds of watchers.
    for (const [id, entry] of entries) {
      if (entry.told === revision || waiting.has(id)) continue;
      if (!leaders) entry.told = revision;
      for (const watcher of entry.watchers) if (told(watcher)) watcher.settled?.(revision);
    }
    if (drawn) holding.drawn();
    if (leaders || waiting.size > 0) return;
    const callbacks = whenSettled;
    whenSettled = [];
    for (const callback of callbacks) callback(revision);
  };
  /** The hand moves pictures in view: they come first. */
  const hold = (touched: ReadonlySet<string>) => {
    const asked = (heavy?.quantities ?? []).filter(
      ({ id, heavy: kind }) => kind === 'picture' && touched.has(id),
    );
    if (!asked.some(({ id }) => [...(entries.get(id)?.watchers ?? [])].some((watcher) => watcher.leads?.())))
      return;
    holding.begin(
      [...entries.values()].flatMap(({ watchers }) => [...watchers].filter((watcher) => watcher.leads?.())),
    );
  };
  /** Marks what is watched as older than the design, until it is told of again. */
  const markOlder = (id: string, entry: Entry) => {
    waiting.add(id);
    entry.told = undefined;
    for (const watcher of entry.watchers) watcher.pending?.();
  };
  const adopt = (next: History, final = true) => {
    const before = history.present;
    history = next;
    const now = history.present;
    if (now === before) return;
    const changed = Object.keys(now.inputs).filter((id) => !Object.is(now.inputs[id], before.inputs[id]));
    const renewed = own.follow(now.studies?.ownLines);
    const touched = descendantsOf(own.graph(), [...changed, ...renewed], now.inputs);
    for (const id of touched) {
      const entry = entries.get(id);
      if (entry) markOlder(id, entry);
    }
    for (const id of renewed) if (entries.has(id)) heavy?.need(id);
    for (const id of changed) defineSource(variables.get(id)!, id, now.inputs[id]);
    if (final) holding.end();
    else hold(touched);
    heavy?.changed(touched);
    for (const listener of listeners) listener(now);
    if (waiting.size === 0) settle();
  };
  const observe = (quantity: Quantity): Entry => {
    const { id } = quantity;
    waiting.add(id);
    const watchers = new Set<Watcher>();
    const fulfilled = (value: unknown) => {
      const outcome = value as Outcome | undefined;
      // A variable that is no longer watched holds nothing for a moment.
      if (!outcome || isNotYet(outcome)) return;
      const changed = entry.latest !== outcome;
      entry.latest = outcome;
      if (!heavy?.isStale(id)) waiting.delete(id);
      const { leaders } = holding;
      const atOnce = (watcher: Watcher) => !leaders || leaders.has(watcher) || isInput(quantity);
      if (changed) for (const watcher of watchers) if (atOnce(watcher)) watcher.changed(outcome);
      if (changed && leaders && !isInput(quantity)) owed.add(entry);
      settle();
    };
    const variable = module.variable({ fulfilled });
    const entry: Entry = { watchers, variable, latest: undefined, told: undefined };
    entries.set(id, entry);
    own.expect(id);
    variable.define(null, [id], (outcome: Outcome) => outcome);
    heavy?.need(id);
    return entry;
  };
  return {
    get graph() {
      return own.graph();
    },
    state: () => history.present,
    set: (patch, { final = true } = {}) =>
      adopt(record(history, applyPatch(graph, history.present, patch), final), final),
    open: (design, { final = true } = {}) => {
      const { present } = history;
      const next = sameDesign(design, present) ? present : { ...design, revision: present.revision + 1 };
      adopt(record(history, next, final), final);
    },
    history: () => history,
    resume: (kept) =>
      adopt({ ...kept, present: { ...kept.present, revision: history.present.revision + 1 }, open: false }),
    undo: () => adopt(undo(history)),
    redo: () => adopt(redo(history)),
    canUndo: () => history.past.length > 0,
    canRedo: () => history.future.length > 0,
    watch(quantity, watcher) {
      const entry = entries.get(quantity.id) ?? observe(quantity);
      entry.watchers.add(watcher);
      if (entry.latest) watcher.changed(entry.latest);
      if (!waiting.has(quantity.id)) watcher.settled?.(history.present.revision);
      return () => {
        entry.watchers.delete(watcher);
        if (entry.watchers.size > 0) return;
        entry.variable.delete();
        entries.delete(quantity.id);
        heavy?.release(quantity.id);
        waiting.delete(quantity.id);
      };
    },
    read,
    onState(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    settled: () =>
      waiting.size === 0 && !holding.leaders
        ? Promise.resolve(history.present.revision)
        : new Promise((resolve) => {
            whenSettled.push(resolve);
          }),
    works: (ids) => heavy?.works(ids) ?? [],
    stop: (id) => heavy?.stop(id),
    workOut(id) {
      heavy?.workOut(id);
      for (const [other, entry] of entries) if (heavy?.isStale(other)) markOlder(other, entry);
    },
    onWork: (listener) => heavy?.onWork(listener) ?? (() => {}),
  };
}
