import type { Outcome } from '../../lib/graph/outcome.ts';
import { type Derived, type Quantity, sourceOf } from '../../lib/graph/quantity.ts';
import { rangeText } from '../../lib/graph/shown.ts';
import { citation } from '../../lib/materials/bibliography.ts';
import type { Opened, PageContext } from './context.ts';
import { setText } from './element.ts';
import { mathElement, valueElement, watchAll } from './proseView.ts';

/** The panel that says where a number comes from: formula with values in, source, validity, and up the chain. */
export interface TracePanel {
  readonly element: HTMLElement;
  open: Opened;
  close(): void;
}

/** Makes the panel; `context.open` should be its `open`. `editor` gives the field of an input, to change it in place. */
export function createTracePanel(
  context: PageContext,
  editor: (quantity: Quantity, stops: (() => void)[]) => HTMLElement | undefined,
): TracePanel {
  const { document } = context;
  const element = document.createElement('aside');
  element.className = 'trace';
  element.hidden = true;
  element.tabIndex = -1;
  element.setAttribute('aria-label', 'Where this number comes from');
  let stops: (() => void)[] = [];
  let trail: Quantity[] = [];
  let origin: HTMLElement | undefined;
  let sentence: Element | null = null;

  const clear = () => {
    for (const stop of stops) stop();
    stops = [];
    element.replaceChildren();
  };
  const show = () => {
    clear();
    const quantity = trail.at(-1)!;
    element.append(header(), ...tellOf(context, quantity, stops));
    const field = editor(quantity, stops);
    if (field) element.append(field);
    element.hidden = false;
    element.focus();
  };
  const header = () => {
    const bar = document.createElement('div');
    bar.className = 'trace-bar';
    if (trail.length > 1) {
      bar.append(
        button(document, `Back to ${trail.at(-2)!.name}`, () => {
          trail = trail.slice(0, -1);
          show();
        }),
      );
    }
    bar.append(button(document, 'Close', close));
    return bar;
  };
  /** A sentence that changed has new elements for its numbers: then the new one of the same quantity. */
  const focusOrigin = () => {
    const now = origin?.isConnected
      ? origin
      : sentence?.querySelector<HTMLElement>(`[data-quantity="${trail[0]?.id}"]`);
    now?.focus();
  };
  const close = () => {
    clear();
    element.hidden = true;
    focusOrigin();
    trail = [];
  };
  element.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') close();
  });
  return {
    element,
    close,
    open(quantity, from) {
      if (element.contains(from)) trail = [...trail, quantity];
      else {
        origin = from;
        sentence = from.closest('.sentence');
        trail = [quantity];
      }
      show();
    },
  };
}

function button(document: Document, text: string, act: () => void): HTMLElement {
  const element = document.createElement('button');
  element.type = 'button';
  element.textContent = text;
  element.addEventListener('click', act);
  return element;
}

function tellOf(context: PageContext, quantity: Quantity, stops: (() => void)[]): HTMLElement[] {
  const { document } = context;
  const heading = document.createElement('h2');
  heading.textContent = quantity.name;
  const value = document.createElement('p');
  value.className = 'trace-value';
  value.append(mathElement(document, quantity.symbol), ' = ', valueElement(context, quantity, stops));
  const about = paragraph(document, quantity.about);
  const parts = [heading, value, about];
  if (quantity.kind === 'derived') parts.push(...tellOfDerived(context, quantity, stops));
  if (quantity.kind === 'number') {
    parts.push(paragraph(document, `You can set this, ${rangeText(quantity)}.`));
  }
  if (quantity.kind === 'constant')
    parts.push(paragraph(document, `Fixed. Source: ${citation(quantity.source)}`));
  const note = paragraph(document, '');
  note.className = 'note';
  stops.push(
    context.live.watch(quantity, {
      changed: (outcome) => {
        note.textContent = 'problem' in outcome ? outcome.problem.message : (outcome.note ?? '');
        note.hidden = note.textContent === '';
      },
    }),
  );
  const id = paragraph(document, quantity.id);
  id.className = 'trace-id';
  return [...parts, note, id];
}

function tellOfDerived(context: PageContext, quantity: Derived, stops: (() => void)[]): HTMLElement[] {
  const { document } = context;
  const equation = document.createElement('p');
  equation.className = 'trace-formula';
  equation.append(mathElement(document, `${quantity.symbol} = ${quantity.formula}`, true));
  const list = document.createElement('dl');
  list.className = 'trace-from';
  for (const other of Object.values(quantity.from)) {
    const term = document.createElement('dt');
    term.append(mathElement(document, other.symbol), ` ${other.name}`);
    const description = document.createElement('dd');
    description.append(valueElement(context, other, stops));
    list.append(term, description);
  }
  const source = paragraph(document, '');
  watchAll(context, Object.values(quantity.from), stops, {
    pending: () => {},
    settled: () => {},
    changed: (outcomeOf) => setText(source, sourceText(quantity, outcomeOf)),
  });
  return [equation, list, source];
}

/** Where a result comes from, in words. */
export function sourceText(quantity: Derived, outcomeOf: (quantity: Quantity) => Outcome): string {
  const source = sourceOf(quantity, outcomeOf);
  return source === undefined ? 'Typed, without a source.' : `Source: ${citation(source)}`;
}

function paragraph(document: Document, text: string): HTMLElement {
  const element = document.createElement('p');
  element.textContent = text;
  return element;
}
