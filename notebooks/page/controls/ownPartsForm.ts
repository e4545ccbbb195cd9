import { expanderKind } from '../../../lib/design/expander.ts';
import { wavelength } from '../../../lib/design/laser.ts';
import { longestName, longestNote, type OwnPart, type PartKind } from '../../../lib/design/ownParts.ts';
import {
  apertureDiameter,
  designPhase,
  glass,
  madeHeight,
  plateSource,
  stop,
} from '../../../lib/design/plate.ts';
import { heightOf } from '../../../lib/design/takePart.ts';
import type { NumberInput } from '../../../lib/graph/quantity.ts';
import { shownValue } from '../../../lib/graph/shown.ts';
import type { Patch } from '../../../lib/graph/state.ts';
import { element, setText } from '../element.ts';
import { freshId } from './field.ts';
import { partWords } from './ownPartsChoice.ts';

/** What a person gave the part. */
export interface PartWords {
  readonly name: string;
  readonly note: string;
  readonly withStop: boolean;
}

/** Name and note of a part, to keep it or to change it. */
export interface OwnPartsForm {
  readonly element: HTMLElement;
  /** The chosen part, to be changed, or none, and then today's inputs are there to be kept. */
  show(current: OwnPart | undefined, inputs: Patch): void;
  /** Writes the words of a part into the fields. */
  fill(part: OwnPart): void;
  focus(): void;
}

/** What the form does; each names what is done to the part that is shown. */
export interface FormActions {
  keep(words: PartWords): void;
  change(part: OwnPart, words: PartWords): void;
  remove(part: OwnPart): void;
}

/**
 * The form; it keeps what is typed while the design moves on, until another part is chosen. `problemId` is the element
 * that says what is wrong with a name.
 */
export function createOwnPartsForm(
  document: Document,
  kind: PartKind,
  actions: FormActions,
  problemId: string,
): OwnPartsForm {
  const { one } = partWords[kind];
  const about = element(document, 'p', { class: 'own-parts-note' });
  const name = createText(document, longestName);
  const note = createText(document, longestNote);
  name.text.setAttribute('aria-describedby', problemId);
  setText(note.label, 'Note (may stay empty)');
  const edge = createTick(document);
  const submit = element(document, 'button', { type: 'submit', class: 'own-parts-main' });
  const remove = element(document, 'button', { type: 'button', class: 'plain' }, 'Remove from the list');
  const form = element(
    document,
    'form',
    { class: 'own-parts-form', autocomplete: 'off' },
    about,
    name.label,
    name.text,
    note.label,
    note.text,
    edge.label,
    element(document, 'div', { class: 'own-parts-buttons' }, submit, remove),
  );
  let part: OwnPart | undefined;
  const fill = (next: OwnPart | undefined) => {
    name.text.value = next?.name ?? '';
    note.text.value = next?.note ?? '';
    edge.tick.checked = next !== undefined && Object.hasOwn(next.values, stop.id);
  };
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const words = {
      name: name.text.value,
      note: note.text.value,
      withStop: !edge.label.hidden && edge.tick.checked,
    };
    if (part) actions.change(part, words);
    else actions.keep(words);
  });
  remove.addEventListener('click', () => part && actions.remove(part));
  return {
    element: form,
    show(current, inputs) {
      if (current?.name !== part?.name || current?.note !== part?.note) fill(current);
      part = current;
      setText(about, current ? '' : keepingSentence(kind, inputs));
      setText(name.label, current ? `Name of this ${one}` : `Keep this ${one} as`);
      setText(submit, current ? 'Change' : 'Keep');
      remove.hidden = current === undefined;
      edge.label.hidden = current !== undefined || kind !== 'plate' || inputs[stop.id] !== 'round';
      setText(
        edge.words,
        `Its own edge is the stop, ${shown(apertureDiameter, inputs)} wide: keep that with it`,
      );
    },
    fill,
    focus: () => name.text.focus(),
  };
}

function createText(document: Document, longest: number) {
  const id = freshId();
  const text = element(document, 'input', { type: 'text', id, class: 'field-text', maxlength: longest });
  return { text, label: element(document, 'label', { class: 'field-label', for: id }) };
}

function createTick(document: Document) {
  const tick = element(document, 'input', { type: 'checkbox' });
  const words = element(document, 'span');
  return { tick, words, label: element(document, 'label', { class: 'field-option' }, tick, words) };
}

function shown(input: NumberInput, inputs: Patch): string {
  return shownValue(input, { value: inputs[input.id] });
}

/** What is kept otherwise than it stands, or not kept; empty where it is as one expects. */
export function keepingSentence(kind: PartKind, inputs: Patch): string {
  if (kind === 'expander' && inputs[expanderKind.id] === 'lenses')
    return 'The distances to the laser’s waist and to the plate belong to the table and are not kept.';
  if (kind !== 'plate') return '';
  const designed = inputs[plateSource.id] === 'designed' ? designedSentence(inputs) : '';
  const typed =
    inputs[glass.id] === 'typed' ? `Its typed refractive index belongs to ${shown(wavelength, inputs)}.` : '';
  return [designed, typed].filter((sentence) => sentence !== '').join(' ');
}

function designedSentence(inputs: Patch): string {
  try {
    const height = shownValue(madeHeight, { value: heightOf(inputs) });
    return `Designed for ${shown(designPhase, inputs)} at ${shown(wavelength, inputs)}, this plate is kept, and used from then on, as made with a step of ${height}: a real plate does not change with the laser.`;
  } catch (error) {
    return (error as Error).message;
  }
}
