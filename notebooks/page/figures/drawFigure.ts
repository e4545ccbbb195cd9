import type { FigureSpec } from '../../document.ts';
import { createDrawing, type Drawing } from './drawing.ts';
import { download, figurePng, figureSvg, fileName, type ShownFigure } from './exportFigure.ts';
import { figureCsv } from './figureCsv.ts';
import { type Layout, layOut, type Shape } from './layout.ts';
import { createMoveHandle, type Move } from './moveHandle.ts';
import { createPageMap } from './pageMap.ts';
import { pagePalette, type Scheme, schemeOf } from './palette.ts';
import { watchNearness, watchPrinting, watchScheme } from './watch.ts';

/** A figure on the page that follows its values. */
export interface FigureView extends ShownFigure {
  /** Shows new values: the summary at once, the drawing at once or, out of view, when it comes near. */
  update(spec: FigureSpec): void;
  /** Sets the width of the drawing in px, and its shape; a page calls it when its column changes. */
  resize(width: number, shape?: Shape): void;
  /** Draws what waits, wherever the figure is. */
  flush(): void;
  /** Whether it is in view or close to it. */
  isNear(): boolean;
  /** Stops watching the view, the scheme and the printer. */
  close(): void;
}

/** What the hand takes hold of over a drawing: it keeps its place, and the focus, while the drawing is made anew. */
export interface FigureOver {
  readonly element: HTMLElement;
  /** Whether this figure has a use for it. */
  applies(spec: FigureSpec): boolean;
  place(spec: FigureSpec, layout: Layout): void;
}

/** Drawn no wider than this for paper, px: lower figures, so that more of them end a page instead of leaving it blank. */
const paperWidth = (shape: Shape) => (shape === 'tall' ? 360 : 500);

/**
 * An empty <figure> of a width in px; wide unless told. `update` gives it values; `move` gets what the hand sets, and
 * `over` takes the place of the handle for that.
 */
export function createFigure(
  document: Document,
  width: number,
  shape: Shape = 'wide',
  move: Move = () => {},
  over: FigureOver = moveOver(document, move),
): FigureView {
  const parts = createParts(document);
  const map = createPageMap(document);
  let drawing: Drawing | undefined;
  let spec: FigureSpec | undefined;
  let waiting = false;
  let scheme = schemeOf(document);
  let printing = false;
  const drawnWidth = () => (printing ? Math.min(width, paperWidth(shape)) : width);

  const draw = () => {
    waiting = false;
    if (!spec) return;
    if (!drawing?.fits(spec, drawnWidth())) {
      drawing = createDrawing(document, spec, drawnWidth(), shape, pagePalette);
      drawing.paint(scheme);
      const { element: held } = over;
      const isUsed = over.applies(spec);
      // The handle stays in its place while it has the focus.
      if (held.parentNode !== parts.drawing || !isUsed) parts.drawing.replaceChildren();
      else while (parts.drawing.firstChild !== held) parts.drawing.firstChild!.remove();
      parts.drawing.prepend(...(spec.map ? [map.element] : []), drawing.svg);
      if (isUsed && held.parentNode !== parts.drawing) parts.drawing.append(held);
      holdPlace(parts.drawing, drawing.layout);
      if (spec.map) map.place(drawing.layout, spec.map);
    }
    drawing.update(spec);
    if (over.applies(spec)) over.place(spec, drawing.layout);
    if (spec.map) map.paint(spec.map, scheme);
  };
  const repaint = (next: Scheme) => {
    if (next === scheme) return;
    scheme = next;
    drawing?.paint(scheme);
    if (spec?.map && drawing) map.paint(spec.map, scheme);
  };
  const flush = () => {
    if (waiting) draw();
  };
  // What waits is drawn before the hand or a key takes hold of it.
  parts.element.addEventListener('focusin', flush);
  const nearness = watchNearness(document, parts.element, flush);
  const request = () => {
    if (nearness.isNear()) draw();
    else {
      waiting = true;
      if (spec && !drawing?.fits(spec, width)) holdPlace(parts.drawing, layOut(spec, width, shape));
    }
  };
  const stopScheme = watchScheme(document, () => repaint(schemeOf(document)));
  const stopPrinting = watchPrinting(document, {
    before: () => {
      printing = true;
      draw();
      repaint('light');
    },
    after: () => {
      printing = false;
      draw();
      repaint(schemeOf(document));
    },
  });

  const view: FigureView = {
    element: parts.element,
    get shape() {
      return shape;
    },
    get spec() {
      return spec;
    },
    get width() {
      return width;
    },
    update(next) {
      spec = next;
      setText(parts.title, next.title);
      setText(parts.summary, next.summary);
      setText(parts.hint, next.hint ?? '');
      drawing?.announce(next);
      request();
    },
    resize(next, nextShape = shape) {
      if ((Math.round(next) === width && nextShape === shape) || !(next >= 1)) return;
      if (nextShape !== shape) drawing = undefined;
      [width, shape] = [Math.round(next), nextShape];
      if (spec) request();
    },
    flush,
    isNear: nearness.isNear,
    close() {
      nearness.stop();
      stopScheme();
      stopPrinting();
    },
  };
  parts.files.append(...fileButtons(document, view));
  return view;
}

/** The handle that moves an input along x, where the figure has one. */
function moveOver(document: Document, move: Move): FigureOver {
  const handle = createMoveHandle(document, move);
  return {
    element: handle.element,
    applies: ({ moves }) => moves !== undefined,
    place: ({ moves, x }, layout) => handle.update(moves!, x, layout),
  };
}

function createParts(document: Document) {
  const make = (name: string, className: string) => {
    const element = document.createElement(name);
    if (className) element.className = className;
    return element;
  };
  const element = make('figure', 'figure');
  const [title, drawing] = [make('figcaption', 'figure-title'), make('div', 'figure-drawing')];
  const [summary, hint] = [make('p', 'figure-summary'), make('p', 'figure-summary figure-hint')];
  const files = make('div', 'figure-files');
  element.append(title, drawing, summary, hint, files);
  return { element, title, drawing, summary, hint, files };
}

function setText(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

/** Keeps the room of a drawing, so that nothing below jumps when it comes. */
function holdPlace(element: HTMLElement, { width, height }: { width: number; height: number }): void {
  Object.assign(element.style, { width: `${width}px`, aspectRatio: `${width} / ${height}` });
}

function fileButtons(document: Document, view: FigureView): HTMLElement[] {
  const status = document.createElement('span');
  status.setAttribute('role', 'status');
  const button = (name: string, about: string, make: (spec: FigureSpec) => Blob | Promise<Blob>) => {
    const element = document.createElement('button');
    element.type = 'button';
    element.textContent = name;
    element.title = about;
    element.addEventListener('click', () => {
      const { spec } = view;
      if (!spec) return;
      status.textContent = '';
      Promise.resolve(spec)
        .then(make)
        .then((blob) => download(fileName(spec.title, name.toLowerCase()), blob))
        .catch((error: unknown) => {
          status.textContent = `No ${name} file could be made: ${(error as Error).message}`;
        });
    });
    return element;
  };
  return [
    // The mark at the start (U+FEFF) lets spreadsheets read µ and ² as UTF-8.
    button(
      'CSV',
      'Download the numbers',
      (spec) => new Blob(['\ufeff', figureCsv(spec)], { type: 'text/csv;charset=utf-8' }),
    ),
    button('SVG', 'Download the drawing', () => new Blob([figureSvg(view)], { type: 'image/svg+xml' })),
    button('PNG', 'Download a picture', () => figurePng(view)),
    status,
  ];
}
