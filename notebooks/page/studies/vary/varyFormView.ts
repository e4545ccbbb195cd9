import { isMovable, isNumberResult } from '../../../studyNames.ts';
import { emptyAxis, overMap, usualAxis, usualCounts, type VaryFault } from '../../../varyForm.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { actButton, formPart } from '../formField.ts';
import { createRows } from '../formRows.ts';
import { createNames } from '../names.ts';
import { toolMemory } from '../toolMemory.ts';
import { createAxisRow } from './axisRow.ts';
import { createInfluenceList } from './influenceList.ts';
import { createResultRow } from './resultRow.ts';

/** Results that are looked at together. */
const mostResults = 6;

/** The form of what is varied. `chosen` hears of another first result, `submitted` when the person asks for it. */
export function createVaryForm(context: PageContext, hearer: { chosen(): void; submitted(): void }) {
  const { document, live } = context;
  const { vary: form } = toolMemory(live);
  const names = createNames(live, isNumberResult);
  const inputs = createNames(live, isMovable);
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const moreResults = actButton(document, 'Look at another result too', () =>
    results.add({ search: '' }).focus(),
  );
  const moreAxes = actButton(document, 'Vary a second input too', () => axes.add(emptyAxis()).focus());
  /** As many values as usual for one input or two, unless the person has typed another number. */
  const count = () => {
    const [now, before] = form.axes.length > 1 ? (['two', 'one'] as const) : (['one', 'two'] as const);
    for (const axis of form.axes) if (axis.count === usualCounts[before]) axis.count = usualCounts[now];
    for (const row of axes.shown) row.refresh();
    moreAxes.hidden = form.axes.length > 1;
    moreResults.hidden = form.results.length >= mostResults;
    mapped();
  };
  const mapped = () => {
    for (const row of axes.shown) row.onMap(overMap(live.graph, form));
  };
  const results = createRows(
    document,
    form.results,
    (row, remove) =>
      createResultRow(document, row, names, {
        chosen: hearer.chosen,
        removed: () => {
          remove();
          moreResults.focus();
          hearer.chosen();
        },
      }),
    () => count(),
  );
  const axes = createRows(
    document,
    form.axes,
    (row, remove) =>
      createAxisRow(document, live, row, inputs, {
        chosen: () => mapped(),
        removed: () => {
          remove();
          moreAxes.focus();
        },
      }),
    () => count(),
  );
  count();
  const addAxis = (id: string) => {
    const label = inputs().find(({ quantity }) => quantity.id === id)?.label;
    if (label === undefined) return;
    const place = form.axes.findIndex(({ search }) => search === label);
    if (place >= 0) return axes.shown[place]!.focus();
    const waits = form.axes.some(({ search }) => search.trim() === '');
    axes.dropEmpty();
    // Without a row that waits for it the one varied before makes room: nobody asked for a map.
    while (form.axes.length > (waits ? 1 : 0))
      axes.shown[0]!.element.querySelector<HTMLElement>(':scope > .plain')!.click();
    axes.add({ ...emptyAxis(label), ...usualAxis(live.graph, id) }).focus();
  };
  const influences = createInfluenceList(context, addAxis);
  const made = element(
    document,
    'form',
    { class: 'study-form', novalidate: true },
    formPart(document, 'Which result', results.element, moreResults),
    formPart(document, 'Over which input', influences.element, axes.element, moreAxes),
    element(document, 'button', { type: 'submit', class: 'study-go' }, 'Draw it'),
    problem,
  );
  made.addEventListener('submit', (event) => {
    event.preventDefault();
    setText(problem, '');
    hearer.submitted();
  });
  return {
    element: made,
    influences,
    /** Puts one result in the place of those there. */
    look(id: string) {
      const label = names().find(({ quantity }) => quantity.id === id)?.label;
      if (label === undefined) return;
      for (const row of form.results) row.search = '';
      results.dropEmpty();
      results.add({ search: label });
      hearer.chosen();
      influences.element.tabIndex = -1;
      influences.element.focus();
    },
    follow() {
      for (const row of axes.shown) row.follow();
    },
    fault(faults: readonly VaryFault[]) {
      for (const { place, index, message } of faults) {
        if (place === 'form') setText(problem, message);
        else (place === 'results' ? results : axes).shown[index]?.fault(message);
      }
      const first = faults.find(({ place }) => place !== 'form');
      if (first) (first.place === 'results' ? results : axes).shown[first.index]?.focus();
    },
  };
}
