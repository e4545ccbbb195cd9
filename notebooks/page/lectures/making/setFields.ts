import type { ChoiceInput, InputQuantity, NumberInput, Quantity } from '../../../../lib/graph/quantity.ts';
import { rangeText, shownValue } from '../../../../lib/graph/shown.ts';
import type { LectureStep } from '../../../../lib/graph/studies.ts';
import { leaveInStep, type StepPlace, setInStep, stepAt } from '../../../../lib/studies/lectureSteps.ts';
import { amountText, readAmount } from '../../../typedAmount.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { formPart, selectField } from '../../studies/formField.ts';
import { textInput, wordButton } from '../../studies/own/labelledField.ts';
import { createSearchField } from '../../studies/own/searchField.ts';
import { createKeptField, type KeptField } from './keptField.ts';

/** A part of the form of a step. */
export interface StepPart {
  readonly element: HTMLElement;
  refresh(step: LectureStep): void;
  /** Takes what is typed; false where something cannot be taken. */
  take(): boolean;
}

/** One input that a step sets. */
interface SetRow {
  readonly element: HTMLElement;
  readonly field: KeptField | undefined;
  refresh(value: unknown): void;
  focus(): void;
}

/** The inputs that a step sets as it opens: found by a word of their name, each with its value. */
export function createSetFields(context: PageContext, at: StepPlace, drafts: Map<string, string>): StepPart {
  const { document, live } = context;
  const rows = new Map<string, SetRow>();
  const list = element(document, 'ul', { class: 'own-chosen lecture-sets', 'aria-label': 'Inputs it sets' });
  const later = element(document, 'p', { class: 'own-said' });
  const search = createSearchField(document, {
    label: 'Search for an input to set',
    quantities: () => [...live.graph.quantities.values()].filter(isSettable),
    chosen(quantity) {
      const set = stepAt(live.state(), at).sets ?? {};
      if (!Object.hasOwn(set, quantity.id))
        live.open(
          setInStep(live.graph, live.state(), at, { [quantity.id]: live.state().inputs[quantity.id] }),
        );
      rows.get(quantity.id)?.focus();
    },
  });
  const takeOut = (id: string) => {
    drafts.delete(keyOf(at, id));
    live.open(leaveInStep(live.state(), at, id));
    search.input.focus();
  };
  const rowOf = (id: string): SetRow => {
    const known = rows.get(id) ?? createSetRow(context, at, id, drafts, takeOut);
    rows.set(id, known);
    return known;
  };
  return {
    element: formPart(
      document,
      'Inputs it sets as it opens',
      element(document, 'p', { class: 'own-said' }, 'All others are as the design has them.'),
      list,
      later,
      search.element,
    ),
    refresh({ sets = {}, kept = {} }) {
      for (const id of [...rows.keys()]) if (!Object.hasOwn(sets, id)) rows.delete(id);
      const wanted = Object.keys(sets).map((id) => rowOf(id).element);
      // Only where others stand there: a field in use keeps its place.
      if (wanted.length !== list.childElementCount || wanted.some((one, i) => list.children[i] !== one))
        list.replaceChildren(...wanted);
      list.hidden = wanted.length === 0;
      for (const [id, value] of Object.entries(sets)) rows.get(id)!.refresh(value);
      const unknown = Object.keys(kept).join(', ');
      setText(later, unknown && `A later program sets more here, which is kept: ${unknown}.`);
    },
    take: () => [...rows.values()].every(({ field }) => field?.take() ?? true),
  };
}

const keyOf = ({ lecture, step }: StepPlace, id: string) => `${lecture}/${step}/sets/${id}`;

const isSettable = ({ kind }: Quantity): boolean => kind === 'number' || kind === 'choice';

function createSetRow(
  context: PageContext,
  at: StepPlace,
  id: string,
  drafts: Map<string, string>,
  takeOut: (id: string) => void,
): SetRow {
  const { document, live } = context;
  const input = live.graph.quantities.get(id) as InputQuantity;
  const today = element(document, 'small', { class: 'lecture-today' });
  const put = (value: unknown) => live.open(setInStep(live.graph, live.state(), at, { [id]: value }));
  const value = createValue(context, at, input, drafts, put);
  return {
    element: element(
      document,
      'li',
      {},
      value.element,
      wordButton(document, 'Take out', () => takeOut(id), { about: `Take ${input.name} out` }),
      today,
    ),
    field: value.field,
    refresh(set) {
      value.refresh(set);
      const now = shownValue(input, { value: live.state().inputs[id] });
      setText(
        today,
        `The design has ${now}${input.kind === 'number' ? `; possible is ${rangeText(input)}` : ''}.`,
      );
    },
    focus: value.focus,
  };
}

/** What is needed of the field of one value. */
interface SetValue {
  readonly element: HTMLElement;
  readonly field: KeptField | undefined;
  refresh(value: unknown): void;
  focus(): void;
}

function createValue(
  context: PageContext,
  at: StepPlace,
  input: InputQuantity,
  drafts: Map<string, string>,
  put: (value: unknown) => void,
): SetValue {
  const { document } = context;
  if (input.kind === 'choice') return choiceValue(document, input, put);
  if (input.kind === 'number') return numberValue(context, at, input, drafts, put);
  // Nothing that is typed here: a design file brought it.
  const name = element(document, 'span', {}, input.name);
  return { element: name, field: undefined, refresh: () => {}, focus: () => {} };
}

function choiceValue(document: Document, input: ChoiceInput, put: (value: unknown) => void): SetValue {
  const select = selectField(document, input.options, Object.keys(input.options)[0]!, put);
  const label = element(document, 'label', { class: 'study-field study-wide' });
  label.append(element(document, 'span', {}, input.name), select);
  return {
    element: label,
    field: undefined,
    refresh(value) {
      select.value = String(value);
    },
    focus: () => select.focus(),
  };
}

function numberValue(
  { document, live }: PageContext,
  at: StepPlace,
  input: NumberInput,
  drafts: Map<string, string>,
  put: (value: unknown) => void,
): SetValue {
  const control = textInput(document, 40);
  const field = createKeptField(document, drafts, {
    key: keyOf(at, input.id),
    label: input.name,
    control,
    value: () => amountText(input, Number(stepAt(live.state(), at).sets?.[input.id] ?? Number.NaN)),
    put(text) {
      // What is shown is rounded: left as it is, it changes nothing.
      const before = Number(stepAt(live.state(), at).sets?.[input.id]);
      if (text.trim() !== amountText(input, before)) put(readAmount(input, text));
    },
  });
  return {
    element: field.element,
    field,
    refresh: field.refresh,
    focus() {
      control.focus();
      control.select();
    },
  };
}
