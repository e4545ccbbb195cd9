import type { Block, FigureBlock } from '../../document.ts';
import type { Task } from '../../lessons/lesson.ts';
import type { TaskDone } from '../../lessons/progress.ts';
import type { PageContext, RenderBlock } from '../context.ts';
import { element } from '../element.ts';
import { renderFigure } from '../figuresView.ts';
import type { WorkPlace } from '../workLines.ts';
import { workPlace } from '../workLines.ts';
import { createPlaceHandle, type PlaceHandle } from './placeHandle.ts';
import {
  answerMarks,
  type Shown,
  shownAfter,
  shownWith,
  withMarks,
  withoutCurves,
  withoutMoves,
} from './taskCharts.ts';

/** The blocks of a task on the page. */
export interface TaskCharts {
  /** What stands with the question. */
  readonly element: HTMLElement;
  /** Axes whose curve is still to come; they stand below the answer, which must not lie out of sight. */
  readonly ahead: HTMLElement;
  /** What stands below once the task has ended. */
  readonly below: HTMLElement;
  /** The mark on the chart, for a task that is answered by one. */
  readonly handle: PlaceHandle | undefined;
  /** Places where long work is told of; more of them once the task has ended. */
  readonly places: readonly WorkPlace[];
  /** Draws the curves and what was marked; `right` is the place that was asked for, where it was shown. */
  end(done: TaskDone, right: string | number | undefined): void;
}

/** Draws what a task shows; `moved` gets the words for a mark's place. */
export function createTaskCharts(
  context: PageContext,
  task: Task,
  renderBlock: RenderBlock,
  stops: (() => void)[],
  moved: (words: string) => void,
): TaskCharts {
  const { document } = context;
  const handle = task.kind === 'mark' ? createPlaceHandle(document, task.along, moved) : undefined;
  const places: WorkPlace[] = [];
  const above = element(document, 'div', { class: 'lesson-shows' });
  const ahead = element(document, 'div', { class: 'lesson-shows' });
  const below = element(document, 'div', { class: 'lesson-shows' });
  const draw = (block: Block, own: (() => void)[]): HTMLElement => {
    const drawn = renderBlock(context, block, own);
    // Two tasks may show the same block.
    drawn.id = `lesson-${task.id}-${block.id}`;
    return drawn;
  };
  const put = (holder: HTMLElement, block: Block, drawn: HTMLElement) => {
    holder.append(drawn);
    places.push(workPlace(context, drawn, block));
  };
  const open = ({ block, bare, marked }: Shown) => {
    const own: (() => void)[] = [];
    const axes = bare ? withoutCurves(block as FigureBlock) : block;
    const drawn = marked
      ? renderFigure(context, withoutMoves(axes as FigureBlock), own, handle)
      : draw(axes, own);
    const slot = element(document, 'div', { class: slotClass(bare, marked) }, drawn);
    (bare && !marked ? ahead : above).append(slot);
    places.push(workPlace(context, slot, block));
    const stop = () => {
      for (const one of own.splice(0).reverse()) one();
    };
    stops.push(stop);
    const redraw = (next: Block) => {
      stop();
      // The place is kept until the drawing comes, so that nothing below moves.
      slot.style.minHeight = `${slot.offsetHeight}px`;
      slot.classList.remove('lesson-bare', 'lesson-marking');
      slot.replaceChildren(draw(next, own));
      setTimeout(() => {
        slot.style.minHeight = '';
      }, settlesIn);
    };
    return { block, bare, marked, redraw };
  };
  const slots = shownWith(task).map(open);
  return {
    element: above,
    ahead,
    below,
    handle,
    places,
    end({ tries, end }, right) {
      for (const { block, bare, marked, redraw } of slots) {
        if (marked && task.kind === 'mark') {
          const shown = end === 'shown' ? right : undefined;
          redraw(withMarks(block as FigureBlock, answerMarks(task.along, tries.at(-1), shown)));
        } else if (bare) redraw(block);
      }
      for (const block of shownAfter(task)) put(below, block, draw(block, stops));
    },
  };
}

/** Files of a chart come with its curve, and once it has been marked. */
function slotClass(bare: boolean, marked: boolean): string | undefined {
  const classes = [...(bare ? ['lesson-bare'] : []), ...(marked ? ['lesson-marking'] : [])];
  return classes.length > 0 ? classes.join(' ') : undefined;
}

/** After this a chart that was drawn anew has its height, ms. */
const settlesIn = 400;
