import type { ValuesOf } from '../../lib/graph/quantity.ts';
import type { Patch } from '../../lib/graph/state.ts';
import type { Random } from '../../lib/numerics/random.ts';
import type { Block, FigureBlock } from '../document.ts';
import type { From, Prose } from '../prose.ts';

/** How an error, or a thought, differs from the lesson's design: inputs set, quantities held at a value; SI by id. */
export interface Made {
  readonly set?: Patch;
  readonly pins?: Readonly<Record<string, unknown>>;
}

/** The same quantities for the lesson's design, changed as said and worked out again. */
export type Ask<F> = (made: Made) => ValuesOf<F>;

/** An error that people make, and what one arrives at who makes it. */
export interface TypicalError<A = unknown, F = From> {
  /** Unique in its task, the error in a word or two: `radius`, `mean-for-peak`. */
  readonly id: string;
  /** What was probably done, and why it leads elsewhere; a sentence or two that help. */
  readonly reason: Prose;
  /** Worked out with the error made, never stored; undefined where it makes no difference in this design. */
  answer(values: ValuesOf<F>, ask: Ask<F>): A | undefined;
}

interface TaskBase<A, F> {
  /** Unique in its lesson; never changes. */
  readonly id: string;
  /** Before the curve is drawn; read off what is drawn; why it is so. */
  readonly stage: 'predict' | 'observe' | 'explain';
  /** Set in the lesson's design as the task begins, SI by id; or made from all inputs as they were drawn. */
  readonly set?: Patch | ((drawn: Patch) => Patch);
  readonly question: Prose;
  /** Drawn with the question. */
  readonly shows?: readonly Block[];
  /** Drawn once it has been answered. */
  readonly reveals?: readonly Block[];
  readonly from: F;
  answer(values: ValuesOf<F>, ask: Ask<F>): A;
  readonly errors: readonly TypicalError<A, F>[];
  /** Told when it was answered rightly, or given up. */
  readonly explanation: Prose;
}

/** Answered by a number with its unit; any unit of the same kind may be typed. */
export interface NumberTask<F = From> extends TaskBase<number, F> {
  readonly kind: 'number';
  /** SI unit of the answer, and the one that the field proposes. */
  readonly unit: string;
  readonly display: string;
  /** Answers that differ from the right one by no more than this part of it are right: 0.03. */
  readonly within: number;
}

/** Answered by one of a few ways, named by their id. */
export interface ChoiceTask<F = From> extends TaskBase<string, F> {
  readonly kind: 'choice';
  readonly options: Readonly<Record<string, string>>;
  /** Why an option is wrong where no typical error leads to it; true in every case in which it is wrong. */
  readonly otherwise?: Readonly<Record<string, Prose>>;
}

/** Answered by marking a place along an axis of a chart, in the unit of that axis. */
export interface MarkTask<F = From> extends TaskBase<number, F> {
  readonly kind: 'mark';
  readonly figure: FigureBlock;
  readonly along: 'x' | 'y';
  /** Places that differ from the right one by no more than this part of the axis are right: 0.03. */
  readonly within: number;
}

// biome-ignore lint/suspicious/noExplicitAny: a task over any quantities; methods keep each assignable
export type Task = NumberTask<any> | ChoiceTask<any> | MarkTask<any>;

/** A short lesson: predict, observe, explain. Its design is its own; the open one stays as it is. */
export interface Lesson {
  /** Unique and public: `beam-size`. Never changes. */
  readonly id: string;
  readonly title: string;
  /** What one can do afterwards, one sentence. */
  readonly about: string;
  readonly minutes: number;
  /** Inputs of a case, SI by id; all others are as at first. */
  draw(random: Random): Patch;
  readonly tasks: readonly Task[];
}

/** A task answered by a number, its values inferred. */
export function numberTask<const F extends From>(task: Omit<NumberTask<F>, 'kind'>): NumberTask<F> {
  return { kind: 'number', ...task };
}

/** A task answered by a choice, its values inferred. */
export function choiceTask<const F extends From>(task: Omit<ChoiceTask<F>, 'kind'>): ChoiceTask<F> {
  return { kind: 'choice', ...task };
}

/** A task answered on a chart, its values inferred. */
export function markTask<const F extends From>(task: Omit<MarkTask<F>, 'kind'>): MarkTask<F> {
  return { kind: 'mark', ...task };
}
