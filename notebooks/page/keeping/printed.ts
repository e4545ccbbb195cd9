import { shownValue } from '../../../lib/graph/shown.ts';
import type { Patch } from '../../../lib/graph/state.ts';
import { inputGroups } from '../../inputGroups.ts';
import { element } from '../element.ts';
import type { Live } from '../live.ts';
import { createCautions } from '../startPage.ts';
import { shownName } from './designPanel.ts';

/** What only paper shows: what the design is called, before the document, and behind it all values that were typed. */
export interface Printed {
  readonly head: HTMLElement;
  readonly tail: HTMLElement;
}

/** Follows the design when the page is about to be printed. */
export function createPrinted(document: Document, live: Live): Printed {
  const head = element(document, 'div', { class: 'printed printed-head' });
  const tail = element(document, 'div', { class: 'printed' });
  const fill = () => {
    head.replaceChildren(...headOf(document, live));
    tail.replaceChildren(valuesOf(document, live.state().inputs), createCautions(document));
  };
  const clear = () => {
    head.replaceChildren();
    tail.replaceChildren();
  };
  const view = document.defaultView!;
  view.addEventListener('beforeprint', fill);
  view.addEventListener('afterprint', clear);
  view.matchMedia('print').addEventListener('change', ({ matches }) => (matches ? fill() : clear()));
  return { head, tail };
}

function headOf(document: Document, live: Live): HTMLElement[] {
  const notes = (live.state().about ?? '').split(/\n+/).filter((line) => line.trim() !== '');
  return [
    element(
      document,
      'p',
      { class: 'printed-name' },
      shownName(live),
      element(document, 'span', { class: 'printed-date' }, `, printed on ${dayHere(new Date())}`),
    ),
    ...notes.map((line) => element(document, 'p', {}, line)),
  ];
}

/** The day where the page is, as papers give it. */
function dayHere(now: Date): string {
  const here = new Date(now.getTime() - now.getTimezoneOffset() * 60_000);
  return here.toISOString().slice(0, 10);
}

/** All inputs that count, as a plain list below the names of their elements. */
function valuesOf(document: Document, inputs: Patch): HTMLElement {
  const rows = printedGroups(inputs).flatMap(({ heading, values }) => [
    element(document, 'h3', {}, heading),
    element(
      document,
      'dl',
      { class: 'printed-values' },
      ...values.map(([name, value]) =>
        element(document, 'div', {}, element(document, 'dt', {}, name), element(document, 'dd', {}, value)),
      ),
    ),
  ]);
  const title = element(document, 'h2', {}, 'Values that were set');
  return element(document, 'section', {}, title, ...rows);
}

/** Names and values of what counts, by element of the beam path; inputs of no element come last. */
export function printedGroups(inputs: Patch) {
  return inputGroups(inputs).map(({ heading, inputs: list }) => ({
    heading,
    values: list.map((input) => [input.name, shownValue(input, { value: inputs[input.id] })] as const),
  }));
}
