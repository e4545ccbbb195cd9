import type { Block, FigureBlock, FigureSpec, MarkSpec } from '../../document.ts';
import type { Task } from '../../lessons/lesson.ts';
import type { Given } from '../../lessons/progress.ts';

/** How a block of a task is drawn while the task is open: as it is, without its curve, or to be marked on. */
export interface Shown {
  readonly block: Block;
  readonly bare: boolean;
  readonly marked: boolean;
}

/** Blocks drawn with the question: what it shows, the chart to be marked on, and charts whose curve is still to come. */
export function shownWith(task: Task): readonly Shown[] {
  const { shows = [], reveals = [] } = task;
  const ids = new Set(shows.map(({ id }) => id));
  const hidden = reveals.filter(({ id }) => !ids.has(id));
  const marked = task.kind === 'mark' ? (task.figure as FigureBlock) : undefined;
  const isMarked = ({ id }: Block) => id === marked?.id;
  const first = shows.map((block) => ({ block, bare: false, marked: isMarked(block) }));
  const own = marked && !ids.has(marked.id) ? [bareOr(marked, hidden.some(isMarked), true)] : [];
  // Where the question has a picture, an empty chart below it would only be in the way; so it would beside a number.
  const looksAhead =
    task.stage === 'predict' && task.kind === 'choice' && !shows.some(({ kind }) => kind === 'figure');
  const charts = looksAhead ? hidden.filter(({ kind }) => kind === 'figure') : [];
  return [...first, ...own, ...charts.map((block) => bareOr(block, true, false))];
}

const bareOr = (block: Block, bare: boolean, marked: boolean): Shown => ({ block, bare, marked });

/** Blocks drawn below once the task has ended: those that do not stand above already. */
export function shownAfter(task: Task): readonly Block[] {
  const above = new Set(shownWith(task).map(({ block }) => block.id));
  return (task.reveals ?? []).filter(({ id }) => !above.has(id));
}

/** The chart with its axes alone. */
export function withoutCurves(block: FigureBlock): FigureBlock {
  return { ...block, view: (values) => axesAlone(block.view(values)) };
}

function axesAlone({ title, x, y, secondX, secondY, equalScale }: FigureSpec): FigureSpec {
  return {
    title,
    x,
    y,
    ...(secondX && { secondX }),
    ...(secondY && { secondY }),
    ...(equalScale !== undefined && { equalScale }),
    series: [],
    summary: 'The curve is drawn once you have answered.',
  };
}

/** The chart as it is marked on: what the hand usually moves on it stays in its place. */
export function withoutMoves(block: FigureBlock): FigureBlock {
  return {
    ...block,
    view: (values) => {
      const { moves: _moves, hint: _hint, ...rest } = block.view(values);
      return rest;
    },
  };
}

/** The chart with the marks that were put on it. */
export function withMarks(block: FigureBlock, marks: readonly MarkSpec[]): FigureBlock {
  return {
    ...block,
    view: (values) => {
      const spec = block.view(values);
      return { ...spec, marks: [...(spec.marks ?? []), ...marks] };
    },
  };
}

/** Lines for the person's last mark and, where it was shown, for the right place. */
export function answerMarks(
  along: 'x' | 'y',
  given: Given | undefined,
  right: Given | undefined,
): readonly MarkSpec[] {
  const line = (at: Given | undefined, label: string, role: MarkSpec['role']): MarkSpec[] =>
    typeof at !== 'number'
      ? []
      : [{ kind: along === 'x' ? 'vertical' : 'horizontal', [along]: at, label, role }];
  return [...line(given, 'your mark', 'reference'), ...line(right, 'the answer', 'today')];
}
