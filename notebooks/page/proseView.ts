import katex from 'katex';
import type { Outcome } from '../../lib/graph/outcome.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import {
  firstProblem,
  neededQuantities,
  type Piece,
  type Prose,
  type ProseNode,
  type Slot,
  slotQuantities,
  standIn,
  waitingText,
} from '../prose.ts';
import { slotPieces } from '../slotPieces.ts';
import type { PageContext } from './context.ts';
import { element, setText } from './element.ts';
import { renderJump, renderLink } from './linkView.ts';
import { marksOf } from './requirementMarks.ts';
import { type Age, markAge, watchAll } from './watchAll.ts';
import { renderTerm } from './words/termView.ts';

/** Prose as DOM nodes, its slots kept up to date; `stops` collects how to stop watching. */
export function renderProse(context: PageContext, prose: Prose, stops: (() => void)[]): DocumentFragment {
  const { document } = context;
  const build = (node: ProseNode): Node => {
    if ('slotIndex' in node) return renderSlot(context, prose.slots[node.slotIndex]!, stops);
    if ('text' in node) return document.createTextNode(node.text);
    const made = document.createElement(node.tag);
    if (node.href !== undefined) made.setAttribute('href', node.href);
    made.append(...node.children.map(build));
    return made;
  };
  const fragment = document.createDocumentFragment();
  fragment.append(...prose.nodes.map(build));
  foldWhereMissing(context, prose, fragment, stops);
  return fragment;
}

/** Paragraphs give way to what stands in for them while something they need is missing; a block says it once. */
function foldWhereMissing(
  context: PageContext,
  prose: Prose,
  fragment: DocumentFragment,
  stops: (() => void)[],
): void {
  const paragraphs = [...fragment.childNodes].flatMap((shown, i) => {
    const node = prose.nodes[i]!;
    return 'tag' in node && !/^h\d$/.test(node.tag) ? [{ shown: shown as HTMLElement, node }] : [];
  });
  const said: (string | undefined)[] = paragraphs.map(() => undefined);
  const notes = paragraphs.map(() => element(context.document, 'p', { class: 'stand-in', hidden: true }));
  const show = () => {
    const anyWords = said.includes(undefined);
    paragraphs.forEach(({ shown }, i) => {
      const text = said[i];
      shown.hidden = text !== undefined;
      const again = said.indexOf(text) < i || (text === waitingText && anyWords);
      setText(notes[i]!, text ?? '');
      notes[i]!.hidden = text === undefined || again;
    });
  };
  paragraphs.forEach(({ shown, node }, i) => {
    const needed = neededQuantities(prose, [node]);
    if (needed.length === 0) return;
    shown.setAttribute('data-needs', '');
    shown.after(notes[i]!);
    const changed = (text: string | undefined) => {
      said[i] = text;
      show();
    };
    watchProblem(context, needed, stops, changed, markAge(notes[i]!));
  });
}

/** Tells what stands in for something that needs these quantities; undefined while they all have values. `age` hears whether it is older than the design. */
export function watchProblem(
  context: PageContext,
  needed: readonly Quantity[],
  stops: (() => void)[],
  changed: (text: string | undefined) => void,
  age: Age = { pending: () => {}, settled: () => {} },
): void {
  const { result } = context;
  watchAll(context, result ? [...new Set([...needed, result])] : needed, stops, {
    ...age,
    changed: (outcomeOf) =>
      changed(standIn(firstProblem(needed, outcomeOf), firstProblem(result ? [result] : [], outcomeOf))),
  });
}

function renderSlot(context: PageContext, slot: Slot, stops: (() => void)[]): Node {
  if (slot.slot === 'math') return mathElement(context.document, slot.tex);
  if (slot.slot === 'link') return renderLink(context, slot, stops);
  if (slot.slot === 'jump') return renderJump(context.document, slot);
  if (slot.slot === 'term') return renderTerm(context, slot);
  if (slot.slot === 'value') return valueElement(context, slot.quantity, stops);
  const element = context.document.createElement('span');
  element.className = 'sentence';
  const marks = marksOf(context.document, context.live);
  const age = (older: boolean) => {
    for (const value of element.querySelectorAll<HTMLElement>('[data-quantity]')) marks.age(value, older);
  };
  watchAll(context, slotQuantities(slot), stops, {
    pending: () => {
      element.setAttribute('data-pending', '');
      age(true);
    },
    failed: () => {
      element.textContent = '(This sentence cannot be written for this design: a fault of the program.)';
    },
    changed: (outcomeOf) => {
      element.replaceChildren(
        ...slotPieces(slot, outcomeOf).map((piece) => pieceNode(context, piece, outcomeOf)),
      );
      age(element.hasAttribute('data-pending'));
    },
    settled: (revision) => {
      element.removeAttribute('data-pending');
      age(false);
      for (const value of element.querySelectorAll('[data-quantity]'))
        value.setAttribute('data-revision', String(revision));
    },
  });
  return element;
}

function pieceNode(context: PageContext, piece: Piece, outcomeOf: (quantity: Quantity) => Outcome): Node {
  if (!('quantity' in piece)) return context.document.createTextNode(piece.text);
  const element = valueShell(context, piece.quantity);
  showOutcome(context, element, piece.text, piece.quantity, outcomeOf(piece.quantity));
  return element;
}

/** A number in the text: a button that opens its trace, with id and revision. */
export function valueElement(context: PageContext, quantity: Quantity, stops: (() => void)[]): HTMLElement {
  const element = valueShell(context, quantity);
  const marks = marksOf(context.document, context.live);
  stops.push(
    context.live.watch(quantity, {
      pending: () => {
        element.setAttribute('data-pending', '');
        marks.age(element, true);
      },
      changed: (outcome) => {
        // An own quantity may have another unit than when this was written.
        const now = context.live.graph.quantities.get(quantity.id) ?? quantity;
        element.title = now.about;
        const { text } = slotPieces({ slot: 'value', quantity: now }, () => outcome)[0]!;
        showOutcome(context, element, text, now, outcome);
      },
      settled: (revision) => {
        element.removeAttribute('data-pending');
        marks.age(element, false);
        element.setAttribute('data-revision', String(revision));
      },
    }),
  );
  return element;
}

/** A span, not a button element: it breaks lines and keeps to its punctuation as words do. */
function valueShell(context: PageContext, quantity: Quantity): HTMLElement {
  const element = context.document.createElement('span');
  element.className = 'value';
  element.tabIndex = 0;
  element.setAttribute('role', 'button');
  element.setAttribute('data-quantity', quantity.id);
  element.title = quantity.about;
  const openTrace = () => context.open(context.live.graph.quantities.get(quantity.id) ?? quantity, element);
  element.addEventListener('click', openTrace);
  element.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    openTrace();
  });
  return element;
}

function showOutcome(
  { document, live }: PageContext,
  element: HTMLElement,
  text: string,
  quantity: Quantity,
  outcome: Outcome,
): void {
  // Behind the text may stand the sign of what is required of the number.
  const shown = element.firstChild ?? element.appendChild(document.createTextNode(''));
  if (shown.nodeValue !== text) shown.nodeValue = text;
  marksOf(document, live).show(element, quantity, outcome);
  element.classList.toggle('value-list', hasValue(outcome) && Array.isArray(outcome.value));
  if (hasValue(outcome)) {
    element.removeAttribute('data-problem');
    if (outcome.note === undefined) element.removeAttribute('data-note');
    else element.setAttribute('data-note', outcome.note);
  } else element.setAttribute('data-problem', outcome.problem.message);
}

/** Rules and gaps of an equation are no larger, em: whoever wrote it. */
const widestMath = 40;

/** An equation, typeset; MathML inside for screen readers. */
export function mathElement(document: Document, tex: string, display = false): HTMLElement {
  const element = document.createElement('span');
  element.className = display ? 'equation' : 'math';
  katex.render(tex, element, {
    displayMode: display,
    throwOnError: false,
    maxSize: widestMath,
    output: 'htmlAndMathml',
  });
  return element;
}
