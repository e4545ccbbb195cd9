import type { Patch } from '../lib/graph/state.ts';

/** A row of a list to choose from. */
export interface ChoiceRow {
  /** What the row is about, the same in every later list, wherever it stands there then; its name where left out. */
  readonly key?: unknown;
  /** Words of the button that takes it. */
  readonly name: string;
  /** What the button does, in words: "Move the workpiece to z = 0.05 mm". */
  readonly does: string;
  readonly cells: readonly string[];
  /** Shown on request: names and values, and a sentence or two. */
  readonly more: readonly (readonly [name: string, value: string])[];
  readonly about: string;
  readonly patch: Patch;
  /** The design stands there now. */
  readonly chosen: boolean;
  /** What else can be done with it, behind the rest. */
  readonly acts?: RowActs;
}

/** What else can be done with a row; each is one change, and undone as one. */
export interface RowActs {
  /** Takes it out: words of the button, and what it does. */
  readonly takeOut: { readonly name: string; readonly does: string; readonly patch: Patch };
  /** Calls it otherwise; `patch` throws a Problem for a name that cannot be. */
  readonly rename: { readonly does: string; readonly now: string; patch(name: string): Patch };
}

/** A list to choose from, as plain data. */
export interface ChoicesSpec {
  readonly caption: string;
  /** Headings: of the buttons, then of the cells. */
  readonly columns: readonly string[];
  readonly rows: readonly ChoiceRow[];
  /** Said below the list, or in its place where it is empty. */
  readonly summary: string;
  /** What a choice does; said on the screen, not on paper. */
  readonly hint?: string;
}
