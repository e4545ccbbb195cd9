import { type OwnPart, type PartKind, partKinds } from '../lib/design/ownParts.ts';
import type { Graph } from '../lib/graph/graph.ts';
import type { Move, NamedPatch, SolveRequest, Want } from '../lib/studies/solveRequest.ts';
import { usualEnds } from '../lib/studies/solveSpace.ts';
import { findNamed, isMovable, isNumberResult, labelled, notFoundSaid } from './studyNames.ts';
import { amountText, readAmount, readAmounts } from './typedAmount.ts';

/** What stands in a row of what is wanted, as typed. */
export interface WantForm {
  search: string;
  kind: Want['kind'];
  value: string;
  upper: string;
  weight: string;
}

/** What stands in a row of what may change, as typed. */
export interface MoveForm {
  search: string;
  way: 'between' | 'list';
  from: string;
  to: string;
  list: string;
  /** Options of a choice that may be taken. */
  options: string[];
}

/** All that stands in the form. */
export interface SolveForm {
  wants: WantForm[];
  moves: MoveForm[];
  /** Any of the person's own parts of these kinds may be taken. */
  parts: PartKind[];
}

/** What cannot be taken as it stands, and where. */
export interface FormFault {
  readonly place: 'wants' | 'moves' | 'form';
  readonly index: number;
  readonly message: string;
}

/** The request that a form comes to, or what is wrong with it. */
export type ReadForm =
  | { readonly request: SolveRequest; readonly faults?: undefined }
  | { readonly faults: readonly FormFault[] };

export const emptyWant = (search = ''): WantForm => ({
  search,
  kind: 'value',
  value: '',
  upper: '',
  weight: '1',
});
export const emptyMove = (search = ''): MoveForm => ({
  search,
  way: 'between',
  from: '',
  to: '',
  list: '',
  options: [],
});
export const emptySolveForm = (): SolveForm => ({ wants: [emptyWant()], moves: [emptyMove()], parts: [] });

/** Reads what was typed; rows without a name are left out. */
export function readSolveForm(graph: Graph, form: SolveForm, parts: readonly OwnPart[]): ReadForm {
  const faults: FormFault[] = [];
  const read = <T, R>(place: 'wants' | 'moves', rows: readonly T[], one: (row: T) => R): R[] =>
    rows.flatMap((row, index) => {
      try {
        return [one(row)];
      } catch (error) {
        faults.push({ place, index, message: (error as Error).message });
        return [];
      }
    });
  const named = <T extends { search: string }>(row: T) => row.search.trim() !== '';
  const wants = read('wants', form.wants, (row) => (named(row) ? readWant(graph, row) : undefined));
  const moves = read('moves', form.moves, (row) => (named(row) ? readMove(graph, row) : undefined));
  const patches = patchesOf(form.parts, parts);
  const request = {
    wants: wants.filter((want) => want !== undefined),
    moves: moves.filter((move) => move !== undefined),
    ...(patches.length > 0 ? { patches } : {}),
  };
  if (faults.length > 0) return { faults };
  const missing = missingIn(request);
  return missing === undefined ? { request } : { faults: [{ place: 'form', index: 0, message: missing }] };
}

function missingIn({ wants, moves, patches }: SolveRequest): string | undefined {
  if (wants.length === 0) return 'Nothing is wanted yet: choose a result and type the value it should have.';
  if (moves.length === 0 && !patches) return 'Nothing may change yet: choose an input that may.';
  return undefined;
}

function readWant(graph: Graph, { search, kind, value, upper, weight }: WantForm): Want {
  const list = labelled([...graph.quantities.values()].filter(isNumberResult));
  const quantity = findNamed(list, search);
  if (!quantity) throw new Error(notFoundSaid(list, search, 'result'));
  const counts = Number(weight.trim().replace(',', '.'));
  if (!(counts > 0) || !Number.isFinite(counts))
    throw new Error(
      `The weight ‘${weight.trim()}’ is no number above 0; type 1, or 10 for ten times as much.`,
    );
  const base = { id: quantity.id, ...(counts === 1 ? {} : { weight: counts }) };
  const low = readAmount(quantity, value);
  if (kind !== 'between') return { ...base, kind, value: low };
  const high = readAmount(quantity, upper);
  if (low > high) throw new Error('The lower bound is above the upper one; exchange them.');
  return { ...base, kind, low, high };
}

function readMove(graph: Graph, { search, way, from, to, list, options }: MoveForm): Move {
  const inputs = labelled([...graph.quantities.values()].filter(isMovable));
  const input = findNamed(inputs, search);
  if (!input) throw new Error(notFoundSaid(inputs, search, 'input'));
  const { id } = input;
  if (input.kind === 'choice') {
    if (options.length === 0) throw new Error(`Tick at least one way of ${input.name}.`);
    return { id, values: options };
  }
  if (way === 'list') return { id, values: readAmounts(input, list) };
  const [low, high] = [readAmount(input, from), readAmount(input, to)];
  if (low > high) throw new Error('The lower limit is above the upper one; exchange them.');
  return { id, from: low, to: high };
}

/** Limits as they stand in a new row. */
export function usualLimits(graph: Graph, id: string): Pick<MoveForm, 'from' | 'to' | 'options'> {
  const input = graph.quantities.get(id);
  if (input?.kind === 'choice') return { from: '', to: '', options: Object.keys(input.options) };
  if (input?.kind !== 'number') return { from: '', to: '', options: [] };
  const [from, to] = usualEnds(input);
  return { from: amountText(input, from), to: amountText(input, to), options: [] };
}

/** One part of each kind at a time: all ways to put them together. */
export function patchesOf(kinds: readonly PartKind[], parts: readonly OwnPart[]): readonly NamedPatch[] {
  const lists = partKinds
    .filter((kind) => kinds.includes(kind))
    .map((kind) => parts.filter((part) => part.kind === kind))
    .filter((list) => list.length > 0);
  if (lists.length === 0) return [];
  return lists.reduce<NamedPatch[]>(
    (found, list) =>
      found.flatMap(({ name, patch }) =>
        list.map((part) => ({
          name: name === '' ? part.name : `${name}, ${part.name}`,
          patch: { ...patch, ...part.values },
        })),
      ),
    [{ name: '', patch: {} }],
  );
}
