import type { Patch } from '../lib/graph/state.ts';

/** A row that counts, or is left out for a reason. */
export interface CountedRow {
  /** Its heading: "row 5". */
  readonly name: string;
  readonly cells: readonly string[];
  /** What is wrong with it, in place of its cells. */
  readonly problem?: string;
  /** Key of the reason that it is left out for; undefined while it counts. */
  readonly reason: string | undefined;
  /** What leaves it out for a reason, or takes it back in. */
  patch(reason: string | undefined): Patch;
}

/** A list whose rows are left out one by one, as plain data. */
export interface RowsSpec {
  readonly caption: string;
  /** Headings: of the names, of the cells, and of the choice. */
  readonly columns: readonly string[];
  readonly rows: readonly CountedRow[];
  /** Reasons with their words. */
  readonly reasons: Readonly<Record<string, string>>;
  /** Words for a row that is in: one that can be read, and one that cannot. */
  readonly in: { readonly good: string; readonly bad: string };
  /** Said below the list. */
  readonly summary: string;
}
