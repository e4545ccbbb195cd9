import type { Outcome } from '../../../../lib/graph/outcome.ts';
import { emptyMove, emptyWant, type FormFault, usualLimits } from '../../../solveForm.ts';
import { isMovable, isNumberResult } from '../../../studyNames.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { actButton, formPart } from '../formField.ts';
import { createRows } from '../formRows.ts';
import { createNames } from '../names.ts';
import { toolMemory } from '../toolMemory.ts';
import { createMoveRow } from './moveRow.ts';
import { renderPartsChoice } from './partsChoice.ts';
import { createWantRow } from './wantRow.ts';

/** The form of what is wanted and what may change. */
export interface SolveFormView {
  readonly element: HTMLFormElement;
  /** Adds a result that is wanted and puts the cursor to its value. */
  want(id: string): void;
  /** Shows what is wrong, and puts the cursor to the first of it. */
  fault(faults: readonly FormFault[]): void;
  /** Follows a change of the design. */
  follow(): void;
  today(outcomes: Readonly<Record<string, Outcome>>): void;
  /** Inputs that move the first want most, as buttons that let them change. */
  suggest(name: string, ids: readonly string[]): void;
}

/** `changed` hears when another result is wanted, `submitted` when the person asks to look. */
export function createSolveForm(
  context: PageContext,
  stops: (() => void)[],
  hearer: { changed(): void; submitted(): void },
): SolveFormView {
  const { document, live } = context;
  const { solve: form } = toolMemory(live);
  const results = createNames(live, isNumberResult);
  const inputs = createNames(live, isMovable);
  const suggestions = element(document, 'p', { class: 'study-suggestions', hidden: true });
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const moreWants = actButton(document, 'Want something else too', () => wants.add(emptyWant()).focus());
  const moreMoves = actButton(document, 'Let another input change', () => moves.add(emptyMove()).focus());
  const weigh = () => {
    for (const row of wants.shown) row.others(wants.shown.length > 1);
  };
  const wants = createRows(
    document,
    form.wants,
    (row, remove) =>
      createWantRow(document, row, results, {
        chosen: hearer.changed,
        removed: () => {
          remove();
          moreWants.focus();
          hearer.changed();
        },
      }),
    () => weigh(),
  );
  const moves = createRows(
    document,
    form.moves,
    (row, remove) =>
      createMoveRow(document, live, row, inputs, {
        removed: () => {
          remove();
          moreMoves.focus();
        },
      }),
    () => {},
  );
  weigh();
  const made = element(
    document,
    'form',
    { class: 'study-form', novalidate: true },
    formPart(document, 'What you want', wants.element, moreWants),
    formPart(
      document,
      'What may change for it',
      suggestions,
      moves.element,
      renderPartsChoice(context, () => form, stops),
      moreMoves,
    ),
    element(document, 'button', { type: 'submit', class: 'study-go' }, 'Look for it'),
    problem,
  );
  made.addEventListener('submit', (event) => {
    event.preventDefault();
    setText(problem, '');
    hearer.submitted();
  });
  return {
    element: made,
    want(id) {
      const label = results().find(({ quantity }) => quantity.id === id)?.label;
      if (label === undefined) return;
      wants.dropEmpty();
      const place = form.wants.findIndex(({ search }) => search === label);
      const row = wants.shown[place] ?? wants.add(emptyWant(label));
      hearer.changed();
      row.focus();
    },
    fault(faults) {
      for (const { place, index, message } of faults) {
        if (place === 'form') setText(problem, message);
        else (place === 'wants' ? wants : moves).shown[index]?.fault(message);
      }
      const first = faults.find(({ place }) => place !== 'form');
      if (first) (first.place === 'wants' ? wants : moves).shown[first.index]?.focus();
    },
    follow() {
      for (const row of moves.shown) row.follow();
    },
    today(outcomes) {
      for (const row of wants.shown) {
        const named = results().find(({ label }) => label === row.form.search);
        row.today(named && outcomes[named.quantity.id]);
      }
    },
    suggest(name, ids) {
      suggestions.hidden = ids.length === 0;
      const buttons = ids.flatMap((id) => {
        const label = inputs().find(({ quantity }) => quantity.id === id)?.label;
        if (label === undefined) return [];
        const allow = () => {
          if (form.moves.some(({ search }) => search === label)) return;
          moves.dropEmpty();
          moves.add({ ...emptyMove(label), ...usualLimits(live.graph, id) }).focus();
        };
        return [actButton(document, label, allow, { 'aria-label': `Let ${label} change` })];
      });
      suggestions.replaceChildren(`What moves ${name} most: `, ...buttons);
    },
  };
}
