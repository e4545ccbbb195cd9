import type { Outcome } from '../../../../lib/graph/outcome.ts';
import { emptyMove, emptyWant, type FormFault, usualLimits } from '../../../solveForm.ts';
import { isMovable, isNumberResult, labelled, type NamedQuantity } from '../../../studyNames.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { actButton, nameList } from '../formField.ts';
import { toolMemory } from '../toolMemory.ts';
import { createMoveRow } from './moveRow.ts';
import { renderPartsChoice } from './partsChoice.ts';
import { createWantRow, type FormRow, type WantRow } from './wantRow.ts';

/** The form of what is wanted and what may change. */
export interface SolveFormView {
  readonly element: HTMLFormElement;
  /** Adds a result that is wanted and puts the cursor to its value. */
  want(id: string): void;
  /** Shows what is wrong, and puts the cursor to the first of it. */
  fault(faults: readonly FormFault[]): void;
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
  const results = createNames(context, 'study-results', isNumberResult, stops);
  const inputs = createNames(context, 'study-inputs', isMovable, stops);
  const wants: WantRow[] = [];
  const moves: FormRow[] = [];
  const wantRows = element(document, 'div', { class: 'study-rows' });
  const moveRows = element(document, 'div', { class: 'study-rows' });
  const suggestions = element(document, 'p', { class: 'study-suggestions', hidden: true });
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const moreWants = actButton(document, 'Want something else too', () => addWant().focus());
  const moreMoves = actButton(document, 'Let another input change', () => addMove().focus());
  const weigh = () => {
    for (const row of wants) row.others(wants.length > 1);
  };
  const showWant = (row: (typeof form.wants)[number]): WantRow => {
    const shown: WantRow = createWantRow(document, row, results.names, {
      chosen: hearer.changed,
      removed: () => {
        form.wants.splice(form.wants.indexOf(row), 1);
        wants.splice(wants.indexOf(shown), 1);
        shown.element.remove();
        weigh();
        moreWants.focus();
        hearer.changed();
      },
    });
    wants.push(shown);
    wantRows.append(shown.element);
    weigh();
    return shown;
  };
  const showMove = (row: (typeof form.moves)[number]): FormRow => {
    const shown: FormRow = createMoveRow(document, live, row, inputs.names, {
      removed: () => {
        form.moves.splice(form.moves.indexOf(row), 1);
        moves.splice(moves.indexOf(shown), 1);
        shown.element.remove();
        moreMoves.focus();
      },
    });
    moves.push(shown);
    moveRows.append(shown.element);
    return shown;
  };
  const addWant = (search = '') => {
    const row = emptyWant(search);
    form.wants.push(row);
    return showWant(row);
  };
  const addMove = (search = '', id?: string) => {
    const row = { ...emptyMove(search), ...(id === undefined ? {} : usualLimits(live.graph, id)) };
    form.moves.push(row);
    return showMove(row);
  };
  /** Rows in which nothing stands make room for what is brought. */
  const dropEmpty = (rows: { search: string }[], shown: FormRow[]) => {
    for (let i = rows.length - 1; i >= 0; i--) {
      if (rows[i]!.search.trim() !== '') continue;
      rows.splice(i, 1);
      shown.splice(i, 1)[0]!.element.remove();
    }
  };
  form.wants.forEach(showWant);
  form.moves.forEach(showMove);
  const made = element(
    document,
    'form',
    { class: 'study-form', novalidate: true },
    results.element,
    inputs.element,
    part(document, 'What you want', wantRows, moreWants),
    part(
      document,
      'What may change for it',
      suggestions,
      moveRows,
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
      const label = results.names().find(({ quantity }) => quantity.id === id)?.label;
      if (label === undefined) return;
      dropEmpty(form.wants, wants);
      const place = form.wants.findIndex(({ search }) => search === label);
      const row = wants[place] ?? addWant(label);
      weigh();
      hearer.changed();
      row.focus();
    },
    fault(faults) {
      for (const { place, index, message } of faults) {
        if (place === 'form') setText(problem, message);
        else (place === 'wants' ? wants : moves)[index]?.fault(message);
      }
      const first = faults.find(({ place }) => place !== 'form');
      if (first) (first.place === 'wants' ? wants : moves)[first.index]?.focus();
    },
    today(outcomes) {
      for (const row of wants) {
        const named = results.names().find(({ label }) => label === row.form.search);
        row.today(named && outcomes[named.quantity.id]);
      }
    },
    suggest(name, ids) {
      suggestions.hidden = ids.length === 0;
      const buttons = ids.flatMap((id) => {
        const label = inputs.names().find(({ quantity }) => quantity.id === id)?.label;
        if (label === undefined) return [];
        const let_ = () => {
          if (form.moves.some(({ search }) => search === label)) return;
          dropEmpty(form.moves, moves);
          addMove(label, id).focus();
        };
        return [actButton(document, label, let_, { 'aria-label': `Let ${label} change` })];
      });
      suggestions.replaceChildren(`What moves ${name} most: `, ...buttons);
    },
  };
}

function part(document: Document, legend: string, ...children: HTMLElement[]): HTMLElement {
  return element(
    document,
    'fieldset',
    { class: 'study-part' },
    element(document, 'legend', {}, legend),
    ...children,
  );
}

/** The list behind search fields; it follows the graph, in which own quantities come and go. */
export function createNames(
  { document, live }: PageContext,
  id: string,
  isOne: (quantity: NamedQuantity['quantity']) => boolean,
  stops: (() => void)[],
) {
  let { graph } = live;
  let names = labelled([...graph.quantities.values()].filter(isOne));
  const list = nameList(document, id, names);
  stops.push(
    live.onState(() => {
      if (live.graph === graph) return;
      ({ graph } = live);
      names = labelled([...graph.quantities.values()].filter(isOne));
      list.replaceChildren(...nameList(document, id, names).children);
    }),
  );
  return { element: list, names: () => names };
}
