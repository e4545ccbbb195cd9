import type { Outcome } from '../../lib/graph/outcome.ts';
import { type Derived, enteredIn, type Quantity, sourceOf } from '../../lib/graph/quantity.ts';
import { rangeText, shownValue } from '../../lib/graph/shown.ts';
import { citation } from '../../lib/materials/bibliography.ts';
import { equationTex } from '../equationTex.ts';
import { isNumberResult } from '../studyNames.ts';
import { isWorded } from '../wordedSymbol.ts';
import type { Opened, PageContext } from './context.ts';
import { element, setText } from './element.ts';
import { mathElement, valueElement } from './proseView.ts';
import { renderRequirement } from './studies/asked/requirementInTrace.ts';
import { watchAll } from './watchAll.ts';

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
  const { document, live } = context;
  const panel = document.createElement('aside');
  panel.className = 'trace';
  panel.hidden = true;
  panel.tabIndex = -1;
  panel.setAttribute('aria-label', 'Where this number comes from');
  let stops: (() => void)[] = [];
  let trail: Quantity[] = [];
  let origin: HTMLElement | undefined;
  let sentence: Element | null = null;

  const clear = () => {
    for (const stop of stops) stop();
    stops = [];
    panel.replaceChildren();
  };
  const show = () => {
    clear();
    const quantity = trail.at(-1)!;
    panel.append(header(), ...tellOf(context, quantity, stops));
    const field = editor(quantity, stops);
    if (field) panel.append(field);
    if (!context.passing) panel.append(...renderRequirement(context, quantity, stops));
    stops.push(live.onState(followOwn));
  };
  const bring = () => {
    closeOther(document, close);
    show();
    panel.hidden = false;
    panel.focus();
  };
  /** The line of an own quantity may change while its trace is open; one that is gone says so itself. */
  const followOwn = () => {
    const now = trail.map((one) => live.graph.quantities.get(one.id) ?? one);
    if (now.every((one, i) => one === trail[i])) return;
    trail = now;
    const within = panel.contains(document.activeElement);
    show();
    if (within) panel.focus();
  };
  const header = () => {
    const bar = document.createElement('div');
    bar.className = 'trace-bar';
    if (trail.length > 1) {
      bar.append(
        button(document, `Back to ${trail.at(-2)!.name}`, () => {
          trail = trail.slice(0, -1);
          bring();
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
    panel.hidden = true;
    focusOrigin();
    trail = [];
  };
  panel.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') close();
  });
  return {
    element: panel,
    close,
    open(quantity, from) {
      if (panel.contains(from)) trail = [...trail, quantity];
      else {
        origin = from;
        sentence = from.closest('.sentence');
        trail = [quantity];
      }
      bring();
    },
  };
}

/** How to close the trace that was opened last: one number at a time is told of, whichever design it is of. */
const openedLast = new WeakMap<Document, () => void>();

function closeOther(document: Document, close: () => void): void {
  const last = openedLast.get(document);
  if (last !== close) last?.();
  openedLast.set(document, close);
}

function button(document: Document, text: string, act: () => void): HTMLElement {
  const made = element(document, 'button', { type: 'button' }, text);
  made.addEventListener('click', act);
  return made;
}

function tellOf(context: PageContext, quantity: Quantity, stops: (() => void)[]): HTMLElement[] {
  const { document } = context;
  const heading = document.createElement('h2');
  heading.textContent = quantity.name;
  const value = document.createElement('p');
  value.className = 'trace-value';
  if (!isWorded(quantity)) value.append(mathElement(document, quantity.symbol), ' = ');
  value.append(ownValue(context, quantity, stops));
  const about = paragraph(document, quantity.about);
  const parts = [heading, value, about];
  if (quantity.kind === 'derived') parts.push(...tellOfDerived(context, quantity, stops));
  if (isNumberResult(quantity)) parts.push(...studyActs(context, quantity));
  if (quantity.kind === 'number') {
    parts.push(
      paragraph(document, `${context.passing ? 'An input' : 'You can set this'}, ${rangeText(quantity)}.`),
    );
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

/** What can be done with a result beyond reading it. */
function studyActs({ document, study }: PageContext, quantity: Quantity): HTMLElement[] {
  if (!study) return [];
  const act = (words: string, tool: 'solve' | 'vary') => button(document, words, () => study(tool, quantity));
  return [
    element(
      document,
      'p',
      { class: 'trace-acts' },
      act('Find inputs that give another value', 'solve'),
      act('Vary what it depends on', 'vary'),
    ),
  ];
}

/** The number that the panel is about: not to be opened again from there. */
function ownValue(context: PageContext, quantity: Quantity, stops: (() => void)[]): HTMLElement {
  const span = element(context.document, 'span', { 'data-quantity': quantity.id });
  stops.push(
    context.live.watch(quantity, {
      pending: () => span.setAttribute('data-pending', ''),
      changed: (outcome) => setText(span, shownValue(quantity, outcome)),
      settled: () => span.removeAttribute('data-pending'),
    }),
  );
  return span;
}

function tellOfDerived(context: PageContext, quantity: Derived, stops: (() => void)[]): HTMLElement[] {
  const { document } = context;
  const equation = element(document, 'p', { class: 'trace-formula' });
  const list = element(document, 'dl', { class: 'trace-from' });
  const rows = Object.entries(quantity.from).map(([key, other]) => {
    const term = element(document, 'dt', {}, ...nameOf(document, other));
    const description = element(document, 'dd', {}, valueElement(context, other, stops));
    list.append(term, description);
    return { key, parts: [term, description] };
  });
  const table = element(document, 'dl', { class: 'trace-from' });
  const source = paragraph(document, '');
  let formula: string | undefined;
  watchAll(context, Object.values(quantity.from), stops, {
    pending: () => {},
    settled: () => {},
    changed: (outcomeOf) => {
      setText(source, sourceText(quantity, outcomeOf));
      const entered = enteredIn(quantity, outcomeOf);
      for (const { key, parts } of rows) {
        for (const part of parts) part.hidden = entered.keys?.includes(key) === false;
      }
      table.replaceChildren(...tableRows(document, entered.table ?? []));
      table.hidden = entered.table === undefined;
      const now = entered.formula ?? quantity.formula;
      if (now === formula) return;
      formula = now;
      equation.replaceChildren(mathElement(document, equationTex(quantity.symbol, now), true));
    },
  });
  return [equation, list, table, source];
}

/** Symbol and name of what goes in; the name alone where the symbol is words. */
function nameOf(document: Document, quantity: Quantity): (Node | string)[] {
  return isWorded(quantity) ? [quantity.name] : [mathElement(document, quantity.symbol), ` ${quantity.name}`];
}

function tableRows(document: Document, table: readonly (readonly [string, string])[]): HTMLElement[] {
  return table.flatMap(([symbol, shown]) => [
    element(document, 'dt', {}, mathElement(document, symbol)),
    element(document, 'dd', {}, shown),
  ]);
}

/** Where a result comes from, in words. */
export function sourceText(quantity: Derived, outcomeOf: (quantity: Quantity) => Outcome): string {
  const source = sourceOf(quantity, outcomeOf);
  return source === undefined ? 'Typed, without a source.' : `Source: ${citation(source)}`;
}

function paragraph(document: Document, text: string): HTMLElement {
  return element(document, 'p', {}, text);
}
