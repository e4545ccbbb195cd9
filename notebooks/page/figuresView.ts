import type { Quantity } from '../../lib/graph/quantity.ts';
import type { FigureBlock, FigureSpec, FiguresBlock } from '../document.ts';
import { readValues } from '../prose.ts';
import type { PageContext } from './context.ts';
import { element, setText } from './element.ts';
import { createFigure, type FigureOver, type FigureView } from './figures/drawFigure.ts';
import { watchProblem } from './proseView.ts';
import { createFigureOverlays } from './studies/figureOverlays.ts';
import { markAge, watchAll } from './watchAll.ts';

/** Figures are as wide as the sheet allows, to this many pixels. */
const widestFigure = 760;

const cannotDraw =
  'This chart cannot be drawn for this design: a fault of the program. The numbers beside it still follow the design.';

/** Computed by the worker while the hand moves. */
const isPicture = (quantity: Quantity) => quantity.kind === 'derived' && quantity.heavy === 'picture';

/**
 * A figure that follows its values; while one is missing its place is kept and the reason said. `over` lies over it in
 * place of the handle that moves an input.
 */
export function renderFigure(
  context: PageContext,
  block: FigureBlock,
  stops: (() => void)[],
  over?: FigureOver,
): HTMLElement {
  const { document } = context;
  const holder = document.createElement('div');
  holder.className = 'figure-block';
  const width = () =>
    Math.min(widestFigure, holder.clientWidth || Math.min(widestFigure, window.innerWidth - 32));
  const shape = () => context.frames?.height() ?? block.shape ?? 'wide';
  const move = (input: { readonly id: string }, value: number, final: boolean) =>
    context.live.set({ [input.id]: value }, { final });
  const view = createFigure(document, width(), shape(), move, over);
  const note = element(document, 'p', { class: 'stand-in', hidden: true });
  let today: FigureSpec | undefined;
  const overlays = createFigureOverlays(
    context,
    { from: block.from, view: (values) => [block.view(values)] },
    () => today && view.update(overlays.over([today])[0]!),
    stops,
  );
  holder.append(view.element, overlays.element, note);
  const quantities = Object.values(block.from);
  let [problem, fault]: (string | undefined)[] = [];
  const say = () => {
    setText(note, problem ?? fault ?? '');
    note.hidden = (problem ?? fault) === undefined;
  };
  watchAll(context, quantities, stops, {
    ...markAge(holder),
    ...(quantities.some(isPicture) && { leads: view.isNear }),
    failed: () => {
      view.element.hidden = true;
      fault = cannotDraw;
      say();
    },
    changed: (outcomeOf) => {
      fault = undefined;
      say();
      const read = readValues(block.from, outcomeOf);
      const shown = 'values' in read;
      // The place is kept while there is nothing to draw, so that the page does not jump under the hand.
      if (!shown && !view.element.hidden) holder.style.minHeight = `${holder.offsetHeight}px`;
      view.element.hidden = !shown;
      if (!shown) return;
      holder.style.minHeight = '';
      today = block.view(read.values);
      view.update(overlays.over([today])[0]!);
    },
  });
  watchProblem(context, quantities, stops, (text) => {
    problem = text;
    say();
  });
  const resize = () => view.resize(width(), shape());
  const observer = new ResizeObserver(resize);
  observer.observe(holder);
  const stopFrames = context.frames?.onChange(resize);
  stops.push(() => {
    observer.disconnect();
    stopFrames?.();
    view.close();
  });
  return holder;
}

/** Narrower charts stand below each other; px. */
const narrowestPanel = 300;
const panelGap = 24;

/** Charts beside each other where there is room, as many as there are; nothing while there are none. */
export function renderFigures(context: PageContext, block: FiguresBlock, stops: (() => void)[]): HTMLElement {
  const { document } = context;
  const holder = element(document, 'div', { class: 'figure-panels' });
  const note = element(document, 'p', { class: 'stand-in', hidden: true });
  const views: FigureView[] = [];
  const panelWidth = () => {
    const whole = Math.min(widestFigure, holder.clientWidth || window.innerWidth - 32);
    return whole >= 2 * narrowestPanel + panelGap ? Math.floor((whole - panelGap) / 2) : whole;
  };
  const setWidth = (view: FigureView) => {
    const width = panelWidth();
    // Titles and summaries wrap at the width of the drawing.
    view.element.style.width = `${width}px`;
    view.resize(width, context.frames?.height() ?? 'wide');
  };
  const show = (specs: readonly FigureSpec[]) => {
    holder.classList.toggle('empty', specs.length === 0);
    while (views.length > specs.length) {
      const view = views.pop()!;
      view.close();
      view.element.remove();
    }
    specs.forEach((spec, i) => {
      if (!views[i]) {
        views[i] = createFigure(document, panelWidth());
        holder.append(views[i].element);
        setWidth(views[i]);
      }
      views[i].update(spec);
    });
  };
  let today: readonly FigureSpec[] = [];
  const overlays = createFigureOverlays(context, block, () => show(overlays.over(today)), stops);
  watchAll(context, Object.values(block.from), stops, {
    ...markAge(holder),
    changed: (outcomeOf) => {
      const read = readValues(block.from, outcomeOf);
      today = 'values' in read ? block.view(read.values) : [];
      show(overlays.over(today));
    },
  });
  watchProblem(context, Object.values(block.from), stops, (text) => {
    setText(note, text ?? '');
    note.hidden = text === undefined;
  });
  const resize = () => {
    for (const view of views) setWidth(view);
  };
  const observer = new ResizeObserver(resize);
  observer.observe(holder);
  const stopFrames = context.frames?.onChange(resize);
  stops.push(() => {
    observer.disconnect();
    stopFrames?.();
    for (const view of views) view.close();
  });
  const whole = document.createElement('div');
  whole.append(note, holder, overlays.element);
  return whole;
}
