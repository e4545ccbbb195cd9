import { designGraph } from '../../../../lib/design/design.ts';
import type { OwnLine } from '../../../../lib/graph/studies.ts';
import { idOfName, ownLinesOf, putLine } from '../../../../lib/studies/ownEdits.ts';
import { isNumber } from '../../../../lib/studies/ownFormula.ts';
import { isOwnId, ownLimits } from '../../../../lib/studies/ownLines.ts';
import { formulaRules } from '../../../ownWords.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { createFormulaFeedback } from './formulaFeedback.ts';
import { labelledField, textInput, wordButton } from './labelledField.ts';
import { type NumberDraft, numberDrafts } from './numberDraft.ts';
import { createSearchField } from './searchField.ts';

/** Where an own quantity is written or changed. */
export interface OwnLineForm {
  readonly element: HTMLElement;
  /** Shows the line of that id to be changed; what is written until then is kept first, or says why it cannot be. */
  change(id: string): void;
  /** After a change of the design: what is typed stays, and is held against the lines as they are. */
  follow(): void;
}

/** Characters of a formula and of a unit that a field takes; the reader of formulas has bounds of its own. */
const longest = { formula: 2000, unit: 40 } as const;

/** `said` hears in words what was kept. */
export function createOwnLineForm(
  context: PageContext,
  stops: (() => void)[],
  said: (text: string) => void,
): OwnLineForm {
  const { document, live } = context;
  const name = textInput(document, ownLimits.name);
  const formula = element(document, 'textarea', {
    class: 'field-text own-formula',
    rows: 2,
    maxlength: longest.formula,
    spellcheck: 'false',
    autocapitalize: 'off',
  });
  const unit = textInput(document, longest.unit);
  const about = textInput(document, ownLimits.about);
  const id = textInput(document, ownLimits.id);
  const feedback = createFormulaFeedback(context, stops);
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const keep = element(document, 'button', { type: 'submit', class: 'own-main' }, 'Keep this number');
  const leave = wordButton(document, 'Leave it as it was', () => clear());
  /** Id of the line that is being changed; none while a new one is written. */
  let changing: string | undefined;
  /** Until the person types an id it is made from the name. */
  let idTyped = false;
  /** What stood there before the person typed. */
  let untouched = '';
  const fields = [name, formula, unit, about, id];

  const lines = () => ownLinesOf(live.state());
  const place = () => lines().findIndex((line) => line.id === changing);
  const typed = (): OwnLine => ({
    id: id.value.trim(),
    name: name.value.trim(),
    formula: formula.value.trim(),
    ...(unit.value.trim() !== '' && { display: unit.value.trim() }),
    ...(about.value.trim() !== '' && { about: about.value.trim() }),
  });
  const written = () => {
    const line = typed();
    return JSON.stringify(changing !== undefined || idTyped ? line : { ...line, id: '' });
  };
  const check = () => {
    numberDrafts.set(live, { changing, idTyped, texts: fields.map(({ value }) => value) });
    setText(problem, '');
    const line = typed();
    const at = place();
    const others = new Set(lines().map((one) => one.id));
    const free = isOwnId(line.id) && (at >= 0 || !others.has(line.id));
    // The formula is judged for itself: name and id are asked for when it is to be kept.
    const draft = {
      ...line,
      id: free ? line.id : idOfName('draft', others),
      name: line.name || 'draft',
      about: '',
    };
    const next = at >= 0 ? lines().with(at, draft) : [...lines(), draft];
    feedback.show(next, line.formula === '' ? undefined : at >= 0 ? at : next.length - 1);
  };
  const makeId = () => {
    if (changing === undefined && !idTyped)
      id.value = name.value.trim() === '' ? '' : idOfName(name.value, new Set(live.graph.quantities.keys()));
  };
  const entitle = (line: OwnLine | undefined) => {
    changing = line?.id;
    id.readOnly = line !== undefined;
    leave.hidden = line === undefined;
    setText(heading, line ? `Change ‘${line.name}’` : 'A new number');
    setText(keep, line ? 'Keep the change' : 'Keep this number');
  };
  const fill = (line: OwnLine | undefined) => {
    idTyped = false;
    entitle(line);
    const texts = [line?.name, line?.formula, line?.display, line?.about, line?.id];
    fields.forEach((field, i) => {
      field.value = texts[i] ?? '';
    });
    untouched = written();
    check();
  };
  /** Puts back what was written when the person left. */
  const resume = (draft: NumberDraft | undefined) => {
    fill(lines().find((line) => line.id === draft?.changing));
    if (!draft) return;
    changing = draft.changing;
    idTyped = draft.idTyped;
    fields.forEach((field, i) => {
      field.value = draft.texts[i] ?? '';
    });
    check();
  };
  const clear = () => {
    fill(undefined);
    name.focus();
  };
  const heading = element(document, 'h3');
  const search = createSearchField(document, {
    label: 'Put a number of the design in',
    quantities: () => [...live.graph.quantities.values()].filter(isNumber),
    chosen: (quantity) => {
      formula.setRangeText(quantity.id, formula.selectionStart, formula.selectionEnd, 'end');
      formula.focus();
      check();
    },
  });
  const form = element(
    document,
    'form',
    { class: 'own-form', autocomplete: 'off', 'aria-label': 'An own number' },
    heading,
    labelledField(document, 'Name', name, 'As it stands beside the number: depth to width.'),
    labelledField(document, 'Formula', formula),
    feedback.element,
    search.element,
    labelledField(document, 'Unit to show it in', unit, 'May stay empty; um, %, J/cm^2 …'),
    labelledField(document, 'What it is for', about, 'May stay empty; shown where the number is opened.'),
    labelledField(
      document,
      'Its id',
      id,
      'By which formulas, pages and the command line name it; it stays for good.',
    ),
    element(document, 'div', { class: 'own-buttons' }, keep, leave),
    problem,
    rulesOf(document),
  );
  name.addEventListener('input', makeId);
  id.addEventListener('input', () => {
    idTyped = id.value.trim() !== '';
  });
  for (const field of fields) field.addEventListener('input', check);
  formula.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' || event.shiftKey) return;
    event.preventDefault();
    form.requestSubmit();
  });
  const take = (): boolean => {
    const line = typed();
    try {
      const at = place();
      live.open(putLine(designGraph, live.state(), line, at < 0 ? undefined : at));
    } catch (error) {
      setText(problem, (error as Error).message);
      if (line.name === '') name.focus();
      else if (line.formula === '') formula.focus();
      return false;
    }
    clear();
    said(`‘${line.name}’ is kept, and can be used as ${line.id}.`);
    return true;
  };
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    take();
  });
  resume(numberDrafts.get(live));
  return {
    element: form,
    change(line) {
      const isWritten = written() !== untouched;
      if (isWritten && changing !== line && !take()) {
        problem.scrollIntoView({ block: 'center' });
        return;
      }
      if (!isWritten || changing !== line) fill(lines().find((one) => one.id === line));
      name.focus();
      name.scrollIntoView({ block: 'center' });
    },
    follow() {
      if (changing !== undefined && place() < 0) {
        if (written() === untouched) fill(undefined);
        else {
          entitle(undefined);
          said(
            'The number that you were changing is gone; what you wrote is kept, to be added as a new one.',
          );
        }
      }
      makeId();
      check();
    },
  };
}

/** How formulas are written, behind a line that opens. */
function rulesOf(document: Document): HTMLElement {
  const rules = formulaRules.map(([rule, ...examples]) =>
    element(
      document,
      'li',
      {},
      rule,
      ...examples.flatMap((example) => [' ', element(document, 'code', {}, example)]),
    ),
  );
  return element(
    document,
    'details',
    { class: 'own-rules' },
    element(document, 'summary', {}, 'How a formula is written'),
    element(document, 'ul', {}, ...rules),
  );
}
