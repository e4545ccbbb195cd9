import type { Graph } from '../../../lib/graph/graph.ts';
import type { NumberInput } from '../../../lib/graph/quantity.ts';
import type { DesignState } from '../../../lib/graph/state.ts';
import { withUnit } from '../../../lib/graph/units.ts';
import { splitQuantityText } from '../../../lib/graph/unitText.ts';
import { readingUnit } from './steps.ts';

/** What stands in a field and has not been taken. */
export interface Draft {
  /** Id of its input. */
  readonly input: string;
  /** As typed, whether it can be read or not. */
  readonly text: string;
  /** Unit that a plain number counts in. */
  readonly unit: string;
}

/** What was typed on this page and has not been taken, one draft an input at most. */
export interface Drafts {
  of(input: string): Draft | undefined;
  /** The one typed into last stands at the end. */
  all(): readonly Draft[];
  keep(draft: Draft): void;
  drop(input: string): void;
  /** Takes these in place of all that are here. */
  restore(drafts: readonly Draft[]): void;
  /** Called with the id of the input whose draft is another now. */
  onChange(listener: (input: string) => void): () => void;
}

/** What the drafts need of the live design. */
interface States {
  state(): DesignState;
  onState(listener: (state: DesignState) => void): unknown;
}

/** Drafts for a design; one falls when the value of its input changes, whoever changed it. */
export function createDrafts(live: States): Drafts {
  const drafts = new Map<string, { readonly draft: Draft; readonly value: unknown }>();
  const listeners = new Set<(input: string) => void>();
  const tell = (input: string) => {
    for (const listener of listeners) listener(input);
  };
  const keep = (draft: Draft) => {
    drafts.delete(draft.input);
    drafts.set(draft.input, { draft, value: live.state().inputs[draft.input] });
    tell(draft.input);
  };
  const drop = (input: string) => {
    if (drafts.delete(input)) tell(input);
  };
  live.onState(({ inputs }) => {
    for (const [input, { value }] of [...drafts]) if (!Object.is(inputs[input], value)) drop(input);
  });
  return {
    of: (input) => drafts.get(input)?.draft,
    all: () => [...drafts.values()].map(({ draft }) => draft),
    keep,
    drop,
    restore: (next) => {
      for (const input of [...drafts.keys()]) drop(input);
      for (const draft of next) keep(draft);
    },
    onChange: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** Text of a draft for the field of its input: a plain number has its unit where the field would read it in another. */
export function draftText(input: NumberInput, { text, unit }: Draft): string {
  return unit !== readingUnit(input) && isPlain(text) ? withUnit(text.trim(), unit) : text;
}

function isPlain(text: string): boolean {
  try {
    const { number, unit } = splitQuantityText(text);
    return number !== undefined && unit === '';
  } catch {
    return false;
  }
}

/** The drafts in kept data that have a field here; what else it holds is left out. */
export function knownDrafts(graph: Graph, data: unknown): Draft[] {
  if (!Array.isArray(data)) return [];
  return data.flatMap((one: Partial<Record<keyof Draft, unknown>> | null) => {
    const { input, text, unit } = one ?? {};
    const known = typeof input === 'string' && graph.quantities.get(input)?.kind === 'number';
    return known && typeof text === 'string' && typeof unit === 'string' ? [{ input, text, unit }] : [];
  });
}
