import { Problem } from '../problem.ts';
import type { Graph } from './graph.ts';
import type { InputQuantity, ListInput, ListItem, NumberInput, Quantity } from './quantity.ts';
import { rangeText } from './shown.ts';
import { type Studies, sameStudies } from './studies.ts';
import { formatReadable } from './units.ts';

/** What a design holds that this program does not know: saved by a later one, and written back as it was. */
export interface Kept {
  /** Saved entries by the id of their input. */
  readonly inputs: Readonly<Record<string, unknown>>;
  /** Files that those entries name: base64 by SHA-256. */
  readonly files: Readonly<Record<string, string>>;
}

/** The design: immutable, replaced by every change. */
export interface DesignState {
  /** Values of all inputs, SI. */
  readonly inputs: Readonly<Record<string, unknown>>;
  /** What the person calls it; absent or empty while it has no name. */
  readonly name?: string;
  /** The person's notes on it. */
  readonly about?: string;
  readonly kept?: Kept;
  /** Alternatives and requirements; absent while there are none. */
  readonly studies?: Studies;
  /** Counts the changes; every shown number carries the revision it belongs to. */
  readonly revision: number;
}

/** Changes by id: values in SI. */
export type Patch = Readonly<Record<string, unknown>>;

export function initialState(graph: Graph): DesignState {
  return { inputs: graph.initial, revision: 0 };
}

/**
 * The state after a patch. Every value is checked first: an unknown id, a value out of its range or not among the
 * options throws a Problem that names the input, and nothing changes.
 */
export function applyPatch(graph: Graph, state: DesignState, patch: Patch): DesignState {
  const changes = resolvePatch(graph, patch);
  const unchanged = Object.entries(changes).every(([id, value]) => Object.is(state.inputs[id], value));
  if (unchanged) return state;
  return { ...state, inputs: { ...state.inputs, ...changes }, revision: state.revision + 1 };
}

/** True where two states differ by their revision at most. */
export function sameDesign(
  one: Omit<DesignState, 'revision'>,
  other: Omit<DesignState, 'revision'>,
): boolean {
  const ids = new Set([...Object.keys(one.inputs), ...Object.keys(other.inputs)]);
  return (
    (one.name ?? '') === (other.name ?? '') &&
    (one.about ?? '') === (other.about ?? '') &&
    sameKept(one.kept, other.kept) &&
    sameStudies(one.studies, other.studies) &&
    [...ids].every((id) => Object.is(one.inputs[id], other.inputs[id]))
  );
}

function sameKept(one: Kept | undefined, other: Kept | undefined): boolean {
  const text = (kept: Kept | undefined) => JSON.stringify([kept?.inputs ?? {}, kept?.files ?? {}]);
  return one === other || text(one) === text(other);
}

/** The patch in inputs alone: settable derived quantities are replaced by what they assign; all values checked. */
export function resolvePatch(graph: Graph, patch: Patch): Record<string, unknown> {
  const changes: Record<string, unknown> = {};
  for (const [id, value] of Object.entries(patch)) {
    const quantity = graph.quantities.get(id);
    if (quantity?.kind === 'derived' && quantity.assigns) {
      Object.assign(changes, resolvePatch(graph, quantity.assigns(value)));
    } else {
      changes[id] = checkInput(inputOf(graph, id), value);
    }
  }
  return changes;
}

/** The input of that id, or a Problem that says what can be set. */
export function inputOf(graph: Graph, id: string): InputQuantity {
  const quantity: Quantity | undefined = graph.quantities.get(id);
  if (!quantity) {
    throw new Problem(
      'unreadable',
      `There is no quantity '${id}'.${suggestion(graph, id)} The command quantities lists all.`,
    );
  }
  if (quantity.kind === 'derived' || quantity.kind === 'constant') {
    throw new Problem(
      'impossible',
      `'${id}' follows from other values and cannot be set; set one of its inputs.`,
      {
        input: id,
      },
    );
  }
  return quantity;
}

function suggestion(graph: Graph, id: string): string {
  const last = id.split('.').at(-1)!.toLowerCase();
  const near = [...graph.quantities.keys()].filter((key) => key.toLowerCase().endsWith(`.${last}`));
  return near.length > 0 ? ` Did you mean ${near.slice(0, 3).join(' or ')}?` : '';
}

/** The value if the input allows it, else a Problem with value and allowed range. */
export function checkInput(input: InputQuantity, value: unknown): unknown {
  if (input.kind === 'number') return checkNumber(input, value);
  if (input.kind === 'list') return checkList(input, value);
  if (input.kind === 'choice' && !Object.hasOwn(input.options, value as string)) {
    const allowed = Object.keys(input.options).join(', ');
    throw new Problem(
      'impossible',
      `${sentenceCase(input.name)} cannot be '${value}'; choose one of: ${allowed}.`,
      {
        input: input.id,
        value: String(value),
        allowed,
      },
    );
  }
  return value;
}

/** The list if all its items are allowed, each with a value for every input that it is a list of. */
function checkList(input: ListInput, value: unknown): readonly ListItem[] {
  const { id, of, most } = input;
  if (!Array.isArray(value))
    throw new Problem('unreadable', `${sentenceCase(input.name)} need a list.`, { input: id });
  if (value.length > most) {
    throw new Problem(
      'impossible',
      `${sentenceCase(input.name)}: ${value.length} are too many; up to ${most} fit. Take one out first.`,
      { input: id, value: String(value.length), allowed: `up to ${most}` },
    );
  }
  // The one empty list, so that a design without items equals the initial one.
  if (value.length === 0) return input.initial;
  const check = (item: ListItem, part: ListInput['of'][number]) => {
    if (part.kind !== 'file' || item[part.id] != null) return checkInput(part, item[part.id]);
    throw new Problem('absent', `One of the ${input.name} has no file.`, { input: id });
  };
  return value.map((item: ListItem) => Object.fromEntries(of.map((part) => [part.id, check(item, part)])));
}

function checkNumber(input: NumberInput, value: unknown): number {
  const { min, max, above = false, except } = input.range;
  const show = (x: number, digits?: number) =>
    formatReadable(x, input.unit, input.display ?? input.unit, digits);
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    throw new Problem(
      'unreadable',
      `${sentenceCase(input.name)} needs a number, such as ${show(input.initial)}.`,
      {
        input: input.id,
      },
    );
  }
  if (value < min || value > max || (above && value === min) || value === except) {
    const allowed = rangeText(input);
    const ends = [min, max].filter((end) => end !== value).map((end) => show(end));
    const shown = tellApart((digits) => show(value, digits), ends);
    throw new Problem(
      'impossible',
      `${sentenceCase(input.name)} of ${shown} is not possible; allowed is ${allowed}.`,
      { input: input.id, value: shown, allowed },
    );
  }
  return value;
}

/** Most significant digits that a number of the machine has. */
const mostDigits = 17;

/** A text with as many digits, four at least, as tell it from all of `others`. */
function tellApart(show: (digits: number) => string, others: readonly string[]): string {
  let digits = 4;
  while (digits < mostDigits && others.includes(show(digits))) digits += 1;
  return show(digits);
}

function sentenceCase(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
