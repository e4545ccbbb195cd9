import type { Quantity, ValuesOf } from '../lib/graph/quantity.ts';
import type { PathElementName } from './beamPathInputs.ts';
import type { ChoicesSpec } from './choicesSpec.ts';
import type { Condition } from './condition.ts';
import type { MapSpec } from './mapSpec.ts';
import type { MoveSpec } from './moveSpec.ts';
import type { PictureSpec } from './pictureSpec.ts';
import type { From, Prose } from './prose.ts';
import type { RowsSpec } from './rowsSpec.ts';
import type { ToolName } from './toolName.ts';

/** An axis: label in words, unit text as shown, domain in that unit. */
export interface AxisSpec {
  readonly label: string;
  readonly unit: string;
  readonly domain: readonly [number, number];
  /** Equal steps along it are equal factors; the domain is above 0 then. Not with a map, and nothing moves along it. */
  readonly logarithmic?: boolean;
  /** Places in an order, each a whole number: all of them are marked. */
  readonly ordinal?: boolean;
}

/** What a curve stands for; the page gives each role its stroke. `kept` ones are of designs kept beside today's. */
export type SeriesRole = 'main' | 'second' | 'third' | 'reference' | 'band' | 'kept';

/** One curve: columns of equal length in the units of the axes. `y2` makes it a band between y and y2. */
export interface SeriesSpec {
  readonly label: string;
  readonly role: SeriesRole;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly y2?: Float64Array;
}

/** A line or point on the chart, in the units of the axes. */
export interface MarkSpec {
  readonly kind: 'vertical' | 'horizontal' | 'point';
  readonly x?: number;
  readonly y?: number;
  readonly label: string;
  /** `today` is the design as it stands: drawn in the accent. */
  readonly role: 'today' | 'reference';
  /** Label of a point beside it or above it, never below: where one row below would take it for its own. */
  readonly above?: boolean;
}

/** A second scale along an axis: its value at x is factor·x/(1 + bend·x) + offset; 0 where bend and offset are left out. */
export interface SecondScale {
  readonly label: string;
  readonly factor: number;
  readonly bend?: number;
  readonly offset?: number;
}

/** A named column of numbers. */
export interface DataColumn {
  readonly name: string;
  readonly unit: string;
  readonly values: Float64Array;
  /** What the numbers stand for, as many: written in their place. */
  readonly words?: readonly string[];
}

/** A chart as plain data: a page, a paper and a command can draw it. */
export interface FigureSpec {
  readonly title: string;
  readonly x: AxisSpec;
  readonly y: AxisSpec;
  /** A second scale for the same axis, e.g. the dimensionless coordinate. */
  readonly secondX?: SecondScale;
  readonly secondY?: SecondScale;
  /** Both axes hold the same quantity, such as a length, and a step along one is drawn as long as along the other. */
  readonly equalScale?: boolean;
  readonly series: readonly SeriesSpec[];
  readonly marks?: readonly MarkSpec[];
  readonly map?: MapSpec;
  readonly moves?: MoveSpec;
  /** The numbers for a file, where others than those drawn. */
  readonly data?: readonly DataColumn[];
  /** What the chart shows, in one to three sentences with its numbers; true for these values. */
  readonly summary: string;
  /** What the hand can do with it; said on the screen, not on paper and not in files. */
  readonly hint?: string;
}

/** A table as plain data. */
export interface TableSpec {
  readonly caption: string;
  readonly columns: readonly string[];
  /** Cells: text, or a quantity that is shown as its value. */
  readonly rows: readonly (readonly (string | Quantity)[])[];
}

interface BlockBase {
  /** Unique in its document; never changes. */
  readonly id: string;
  /** Shown only while this condition, or any of several, holds. */
  readonly when?: Condition | readonly Condition[];
  /** Shown only while all of these have a value; what is missing is said elsewhere. */
  readonly needs?: readonly Quantity[];
}

export interface ProseBlock extends BlockBase {
  readonly kind: 'prose' | 'caution';
  readonly prose: Prose;
}

export interface FigureBlock extends BlockBase {
  readonly kind: 'figure';
  readonly from: From;
  view(values: Readonly<Record<string, unknown>>): FigureSpec;
  /** Taller than wide, or the usual. */
  readonly shape?: 'wide' | 'tall';
}

/** Charts of one kind beside each other, on the same axes; one for each of as many things as there are. */
export interface FiguresBlock extends BlockBase {
  readonly kind: 'figures';
  readonly from: From;
  view(values: Readonly<Record<string, unknown>>): readonly FigureSpec[];
}

export interface TableBlock extends BlockBase {
  readonly kind: 'table';
  readonly table: TableSpec;
}

/** A list whose rows set inputs; it follows the design. */
export interface ChoicesBlock extends BlockBase {
  readonly kind: 'choices';
  readonly from: From;
  view(values: Readonly<Record<string, unknown>>): ChoicesSpec;
}

/** A list whose rows are left out one by one, each with its reason; it follows the design. */
export interface RowsBlock extends BlockBase {
  readonly kind: 'rows';
  readonly from: From;
  view(values: Readonly<Record<string, unknown>>): RowsSpec;
}

/** A picture given to an input, on which the hand draws. */
export interface PictureBlock extends BlockBase, PictureSpec {
  readonly kind: 'picture';
}

/** Inputs side by side under a heading. */
export interface ControlsBlock extends BlockBase {
  readonly kind: 'controls';
  readonly heading: string;
  readonly inputs: readonly Quantity[];
}

/** Something to work with that is no text of the design: the page has a part of its own for each. */
export interface ToolBlock extends BlockBase {
  readonly kind: 'tool';
  readonly tool: ToolName;
}

/** A question to answer before looking; the answer is computed. */
export interface QuestionBlock extends BlockBase {
  readonly kind: 'question';
  readonly question: Prose;
  readonly options: readonly string[];
  readonly from: From;
  /** Index of the right option for today's values. */
  answer(values: Readonly<Record<string, unknown>>): number;
  /** Shown after a guess. */
  readonly explanation: Prose;
}

export type Block =
  | ProseBlock
  | FigureBlock
  | FiguresBlock
  | TableBlock
  | ChoicesBlock
  | RowsBlock
  | ControlsBlock
  | PictureBlock
  | ToolBlock
  | QuestionBlock;

/** One document: title, what it is for, blocks in order. No DOM. */
export interface StepwellDocument {
  readonly id: string;
  readonly title: string;
  /** Its name in the line of all documents, where the title is too long for it. */
  readonly short?: string;
  readonly lead: Prose;
  /** What everything in it is about; where it has no value, the top of the document says so, and why. */
  readonly result?: { readonly quantity: Quantity; readonly missing: string };
  /** Element of the beam path whose inputs it opens with; the laser where left out. */
  readonly element?: PathElementName;
  /** For learning and teaching, not about the open design: named apart from the others, and without the beam path. */
  readonly learning?: boolean;
  readonly blocks: readonly Block[];
}

/** A figure block with its values inferred. */
export function figure<const F extends From>(
  definition: Omit<FigureBlock, 'kind' | 'from' | 'view'> & {
    from: F;
    view: (values: ValuesOf<F>) => FigureSpec;
  },
): FigureBlock {
  return { kind: 'figure', ...definition } as unknown as FigureBlock;
}

/** A block of figures with its values inferred. */
export function figures<const F extends From>(
  definition: Omit<FiguresBlock, 'kind' | 'from' | 'view'> & {
    from: F;
    view: (values: ValuesOf<F>) => readonly FigureSpec[];
  },
): FiguresBlock {
  return { kind: 'figures', ...definition } as unknown as FiguresBlock;
}

/** A list to choose from with its values inferred. */
export function choices<const F extends From>(
  definition: Omit<ChoicesBlock, 'kind' | 'from' | 'view'> & {
    from: F;
    view: (values: ValuesOf<F>) => ChoicesSpec;
  },
): ChoicesBlock {
  return { kind: 'choices', ...definition } as unknown as ChoicesBlock;
}

/** A question block with its values inferred. */
export function question<const F extends From>(
  definition: Omit<QuestionBlock, 'kind' | 'from' | 'answer'> & {
    from: F;
    answer: (values: ValuesOf<F>) => number;
  },
): QuestionBlock {
  return { kind: 'question', ...definition } as unknown as QuestionBlock;
}
