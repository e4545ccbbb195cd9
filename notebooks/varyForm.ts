import type { Graph } from '../lib/graph/graph.ts';
import type { ChoiceInput, Derived, NumberInput } from '../lib/graph/quantity.ts';
import { usualEnds } from '../lib/studies/solveSpace.ts';
import { type VariedInput, valuesBetween } from '../lib/studies/vary.ts';
import { findNamed, isMovable, isNumberResult, labelled, notFoundSaid } from './studyNames.ts';
import { amountText, readAmount } from './typedAmount.ts';

/** What stands in a row of an input that is varied, as typed. */
export interface AxisForm {
  search: string;
  from: string;
  to: string;
  count: string;
  by: 'steps' | 'factors';
  /** Ways of a choice that are gone through. */
  options: string[];
}

/** All that stands in the form: results by what was typed for each, and one or two inputs. */
export interface VaryForm {
  results: { search: string }[];
  axes: AxisForm[];
}

/** An input and the values it takes, SI. */
export interface VaryAxis {
  readonly input: NumberInput | ChoiceInput;
  readonly values: readonly unknown[];
  readonly by: 'steps' | 'factors';
}

/** What is varied against what; along the first axis a chart runs. */
export interface VaryPlan {
  readonly axes: readonly [VaryAxis] | readonly [VaryAxis, VaryAxis];
  readonly results: readonly Derived<number>[];
}

/** What cannot be taken as it stands, and where. */
export interface VaryFault {
  readonly place: 'results' | 'axes' | 'form';
  readonly index: number;
  readonly message: string;
}

/** Values along one input, and along each of two; as many as fit at most. */
export const usualCounts = { one: '41', two: '25' } as const;
const mostValues = { one: 500, two: 60 } as const;

export const emptyAxis = (search = '', count: string = usualCounts.one): AxisForm => ({
  search,
  from: '',
  to: '',
  count,
  by: 'steps',
  options: [],
});
export const emptyVaryForm = (): VaryForm => ({ results: [{ search: '' }], axes: [emptyAxis()] });

/** Ends as they stand in a new row. */
export function usualAxis(graph: Graph, id: string): Pick<AxisForm, 'from' | 'to' | 'options'> {
  const input = graph.quantities.get(id);
  if (input?.kind === 'choice') return { from: '', to: '', options: Object.keys(input.options) };
  if (input?.kind !== 'number') return { from: '', to: '', options: [] };
  const [from, to] = usualEnds(input);
  return { from: amountText(input, from), to: amountText(input, to), options: [] };
}

/** Reads what was typed; rows without a name are left out. */
export function readVaryForm(
  graph: Graph,
  form: VaryForm,
): { readonly plan: VaryPlan; readonly faults?: undefined } | { readonly faults: readonly VaryFault[] } {
  const faults: VaryFault[] = [];
  const read = <T extends { search: string }, R>(
    place: 'results' | 'axes',
    rows: readonly T[],
    one: (row: T) => R,
  ): R[] =>
    rows.flatMap((row, index) => {
      if (row.search.trim() === '') return [];
      try {
        return [one(row)];
      } catch (error) {
        faults.push({ place, index, message: (error as Error).message });
        return [];
      }
    });
  const results = read('results', form.results, ({ search }) => resultOf(graph, search));
  const most = form.axes.filter(({ search }) => search.trim() !== '').length > 1 ? 'two' : 'one';
  const isMap = overMap(graph, form);
  const axes = read('axes', form.axes, (row) =>
    axisOf(graph, isMap ? { ...row, by: 'steps' } : row, mostValues[most]),
  );
  if (faults.length > 0) return { faults };
  const wrong = missingIn(results.length, axes);
  if (wrong !== undefined) return { faults: [{ place: 'form', index: 0, message: wrong }] };
  return { plan: { axes: inOrder(axes), results: [...new Set(results)] } };
}

/** Whether the inputs make a map: two numbers, which then go in equal steps. */
export function overMap(graph: Graph, { axes }: VaryForm): boolean {
  const list = labelled([...graph.quantities.values()].filter(isMovable));
  return axes.filter(({ search }) => findNamed(list, search)?.kind === 'number').length > 1;
}

function missingIn(results: number, axes: readonly VaryAxis[]): string | undefined {
  if (results === 0) return 'Choose a result to look at first.';
  if (axes.length === 0) return 'Choose an input to vary.';
  const [one, other] = axes;
  if (one?.input === other?.input) return `The ${one!.input.name} stands in both rows; choose another input.`;
  return undefined;
}

/** A chart runs along numbers: of a number and a choice the choice gives the curves. */
function inOrder(axes: readonly VaryAxis[]): VaryPlan['axes'] {
  const [first, second] = axes as readonly [VaryAxis, VaryAxis?];
  if (!second) return [first];
  return first.input.kind === 'choice' && second.input.kind === 'number' ? [second, first] : [first, second];
}

function resultOf(graph: Graph, search: string): Derived<number> {
  const list = labelled([...graph.quantities.values()].filter(isNumberResult));
  const found = findNamed(list, search);
  if (!found) throw new Error(notFoundSaid(list, search, 'result'));
  return found as Derived<number>;
}

function axisOf(graph: Graph, row: AxisForm, most: number): VaryAxis {
  const list = labelled([...graph.quantities.values()].filter(isMovable));
  const input = findNamed(list, row.search) as NumberInput | ChoiceInput | undefined;
  if (!input) throw new Error(notFoundSaid(list, row.search, 'input'));
  if (input.kind === 'choice') {
    if (row.options.length < 2) throw new Error(`Tick at least two ways of ${input.name}.`);
    return { input, values: row.options, by: 'steps' };
  }
  const [from, to] = [readAmount(input, row.from), readAmount(input, row.to)];
  if (!(from < to)) throw new Error('The first end has to be below the second one.');
  const count = Number(row.count.trim());
  if (!Number.isInteger(count) || count < 2 || count > most)
    throw new Error(`‘${row.count.trim()}’ values do not go; type a whole number from 2 to ${most}.`);
  if (input.whole && row.by === 'steps') return { input, values: wholeBetween(from, to, count), by: row.by };
  const values = valuesBetween(from, to, count, row.by);
  return { input, values: input.whole ? [...new Set(values.map(Math.round))] : values, by: row.by };
}

/** Whole numbers in equal steps, `count` at most. */
function wholeBetween(from: number, to: number, count: number): number[] {
  const [first, last] = [Math.ceil(from), Math.floor(to)];
  const step = Math.max(1, Math.ceil((last - first) / (count - 1)));
  return Array.from({ length: Math.floor((last - first) / step) + 1 }, (_, i) => first + i * step);
}

/** The inputs as `vary` takes them: the last moves fastest, which is the first axis. */
export function overOf({ axes }: VaryPlan): readonly VariedInput[] {
  return axes.toReversed().map(({ input, values }) => ({ id: input.id, values }));
}
