import { enteringOf } from './entering.ts';
import { type Graph, orderOf } from './graph.ts';
import { hasValue, type Outcome } from './outcome.ts';
import type { Derived, Quantity, Report } from './quantity.ts';
import { type Kept, step } from './step.ts';

type Inputs = Readonly<Record<string, unknown>>;

/** Computes a graph without a page: sweeps, budgets, the command line, workers. */
export interface Engine {
  /** Replaces the inputs that the next evaluation uses. */
  setInputs(inputs: Inputs): void;
  /** Changes these inputs alone; the others stay as they are. */
  changeInputs(patch: Inputs): void;
  /**
   * Outcomes of the ids, with any quantity pinned to a value, derived ones too. `report` hears how far those of the ids
   * are that are heavy; what they rest on says nothing, since nobody knows beforehand how long it takes beside them.
   */
  evaluate(
    ids: readonly string[],
    options?: { readonly pins?: Inputs; readonly report?: Report },
  ): Record<string, Outcome>;
}

/** A quantity as the engine holds it. */
interface Cell {
  readonly quantity: Quantity;
  /** Cells of its `from`, in the order of the keys. */
  readonly from: readonly Cell[];
  /** Outcome of the evaluation that `run` counts; older ones do not count. */
  outcome: Outcome | undefined;
  run: number;
  /** Last value that was given, and its outcome. */
  source: { readonly value: unknown; readonly outcome: Outcome } | undefined;
  kept: Kept | undefined;
  /** Outcomes of the last few texts, of what follows from a text alone. */
  readonly byText: Map<string, Outcome>;
}

/** In a sweep a plan written as text goes to and fro between a few; a matrix that follows from one takes some megabytes. */
const mostTexts = 4;

/** An incremental engine: what did not change is not computed again. */
export function createEngine(graph: Graph, inputs: Inputs = graph.initial): Engine {
  const cells = new Map<Quantity, Cell>();
  const orders = new Map<string, readonly Cell[]>();
  const chosen = new Map<string, readonly Cell[]>();
  const choices = [...graph.quantities.values()].filter(({ kind }) => kind === 'choice').map(({ id }) => id);
  let current = inputs;
  /** Inputs of this engine alone, which may be written to. */
  let own: Record<string, unknown> | undefined;
  let run = 0;

  const cellOf = (quantity: Quantity): Cell => {
    const known = cells.get(quantity);
    if (known) return known;
    const from = quantity.kind === 'derived' ? Object.values(quantity.from).map(cellOf) : [];
    const made: Cell = {
      quantity,
      from,
      outcome: undefined,
      run: 0,
      source: undefined,
      kept: undefined,
      byText: new Map(),
    };
    cells.set(quantity, made);
    return made;
  };
  const rootsOf = (ids: readonly string[]) => ids.map((id) => graph.quantities.get(id)!);
  const needed = (ids: readonly string[], pins: Inputs | undefined): readonly Cell[] => {
    const pinned = Object.keys(pins ?? {});
    // A case that is not chosen may be a fit of seconds. A pinned choice is none of the inputs: all cases count then.
    const allCases = pinned.some((id) => graph.quantities.get(id)?.kind === 'choice');
    const known = allCases ? orders : chosen;
    const key = [...ids, '|', ...pinned].join(' ');
    let order = known.get(key);
    if (!order) {
      const entering = (one: Derived) => (allCases ? Object.values(one.from) : enteringOf(one, current));
      const behind = (one: Derived) => (pinned.includes(one.id) ? [] : entering(one));
      order = orderOf(rootsOf(ids), behind).map(cellOf);
      known.set(key, order);
    }
    return order;
  };
  return {
    setInputs(next) {
      // In a sweep numbers move and choices stay: finding the order again would take most of the time.
      if (choices.some((id) => !Object.is(next[id], current[id]))) chosen.clear();
      current = next;
      own = undefined;
    },
    changeInputs(patch) {
      own ??= { ...current };
      current = own;
      for (const [id, value] of Object.entries(patch)) {
        if (!Object.is(own[id], value) && graph.quantities.get(id)?.kind === 'choice') chosen.clear();
        own[id] = value;
      }
    },
    evaluate(ids, { pins, report } = {}) {
      run += 1;
      for (const cell of needed(ids, pins)) {
        const { quantity } = cell;
        const heard = report && quantity.kind === 'derived' && quantity.heavy && ids.includes(quantity.id);
        cell.outcome = outcomeOf(cell, { pins, inputs: current, run }, heard ? report : undefined);
        cell.run = run;
      }
      return Object.fromEntries(ids.map((id) => [id, cellOf(graph.quantities.get(id)!).outcome!]));
    },
  };
}

/** What one evaluation works with. */
interface Place {
  readonly pins: Inputs | undefined;
  readonly inputs: Inputs;
  readonly run: number;
}

function outcomeOf(cell: Cell, { pins, inputs, run }: Place, report: Report | undefined): Outcome {
  const { quantity } = cell;
  const { id } = quantity;
  if (pins && Object.hasOwn(pins, id)) return sourceOutcome(cell, pins[id]);
  if (quantity.kind === 'constant') return sourceOutcome(cell, quantity.value);
  if (quantity.kind !== 'derived')
    return sourceOutcome(cell, Object.hasOwn(inputs, id) ? inputs[id] : quantity.initial);
  if (!cell.kept || isMoved(cell, cell.kept.args, run)) cell.kept = stepOf(cell, quantity, run, report);
  return cell.kept.outcome;
}

function stepOf(cell: Cell, quantity: Derived, run: number, report: Report | undefined): Kept {
  const args = cell.from.map((other) => outcomeIn(other, run)!);
  const text = quantity.heavy ? undefined : onlyText(args);
  const known = text === undefined ? undefined : cell.byText.get(text);
  if (known) return { args, outcome: known };
  const made = step(quantity, args, cell.kept, report);
  if (text !== undefined) {
    if (cell.byText.size >= mostTexts) cell.byText.delete(cell.byText.keys().next().value!);
    cell.byText.set(text, made.outcome);
  }
  return made;
}

/** The text that is the one argument; undefined where there are more, or it is none. */
function onlyText(args: readonly Outcome[]): string | undefined {
  const [arg] = args;
  const value = args.length === 1 && arg && hasValue(arg) ? arg.value : undefined;
  return typeof value === 'string' ? value : undefined;
}

/** What a quantity came to in this evaluation; undefined where it does not enter, as a case that is not chosen. */
const outcomeIn = (cell: Cell, run: number) => (cell.run === run ? cell.outcome : undefined);

/** Whether any argument is another than before; without a new array for each quantity at each place of a sweep. */
function isMoved({ from }: Cell, args: readonly Outcome[], run: number): boolean {
  for (let i = 0; i < from.length; i++) if (outcomeIn(from[i]!, run) !== args[i]) return true;
  return false;
}

function sourceOutcome(cell: Cell, value: unknown): Outcome {
  if (!cell.source || !Object.is(cell.source.value, value)) cell.source = { value, outcome: { value } };
  return cell.source.outcome;
}
