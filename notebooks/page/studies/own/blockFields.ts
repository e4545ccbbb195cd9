import { Problem } from '../../../../lib/problem.ts';
import { blockChoices, hasAxes, lending } from '../../../blockChoices.ts';
import { documents } from '../../../contents.ts';
import { type Ends, endsProblem } from '../../../ownRanges.ts';
import { element } from '../../element.ts';
import { labelledField, textInput } from './labelledField.ts';
import { captionFields, type FieldsOf } from './pieceParts.ts';

/** Characters of a number. */
const longestNumber = 30;

/** A block of one of the documents, its charts with ends of their axes. */
export const blockFields: FieldsOf<'block'> = (context, start, changed) => {
  const { document } = context;
  const sources = lending(documents);
  const from = element(
    document,
    'select',
    { class: 'field-list' },
    ...sources.map(({ id, title }) => element(document, 'option', { value: id }, title)),
  );
  const part = element(document, 'select', { class: 'field-list' });
  const source = () => sources.find(({ id }) => id === from.value) ?? sources[0]!;
  const offer = () => {
    part.replaceChildren(
      ...blockChoices(source()).map(({ id, label }) => element(document, 'option', { value: id }, label)),
    );
  };
  const x = createEnds(document, 'across', start?.x, changed);
  const y = createEnds(document, 'up', start?.y, changed);
  const axes = element(
    document,
    'fieldset',
    { class: 'own-axes' },
    element(document, 'legend', {}, 'Ends of the axes, in the units of the chart; empty as in its document'),
    x.element,
    y.element,
  );
  const follow = () => {
    axes.hidden = !hasAxes(source().blocks.find(({ id }) => id === part.value));
  };
  from.value = start?.document ?? sources[0]!.id;
  offer();
  if (start) part.value = start.block;
  follow();
  from.addEventListener('change', () => {
    offer();
    follow();
    changed();
  });
  part.addEventListener('change', () => {
    follow();
    changed();
  });
  const caption = captionFields(context, start, changed);
  return {
    elements: [
      labelledField(document, 'Page it comes from', from),
      labelledField(document, 'Part of it', part),
      axes,
      ...caption.elements,
    ],
    read() {
      if (part.value === '') throw new Problem('absent', 'This part is not there any more; choose another.');
      const ends = axes.hidden ? {} : { ...x.read('x'), ...y.read('y') };
      return { kind: 'block', document: from.value, block: part.value, ...ends, ...caption.read() };
    },
    focus: () => from.focus(),
  };
};

/** Two fields for the ends of an axis. */
function createEnds(document: Document, along: string, start: Ends | undefined, changed: () => void) {
  const [low, high] = [textInput(document, longestNumber), textInput(document, longestNumber)];
  low.value = start ? String(start[0]) : '';
  high.value = start ? String(start[1]) : '';
  for (const field of [low, high]) {
    field.inputMode = 'decimal';
    field.addEventListener('input', changed);
  }
  return {
    element: element(
      document,
      'div',
      { class: 'own-ends' },
      labelledField(document, `Axis ${along}, from`, low),
      labelledField(document, `Axis ${along}, to`, high),
    ),
    read<K extends 'x' | 'y'>(key: K): { readonly [P in K]?: Ends } {
      const texts = [low.value, high.value].map((text) => text.trim());
      if (texts.every((text) => text === '')) return {};
      const ends = texts.map(readPlain) as unknown as Ends;
      const wrong = endsProblem(ends);
      if (wrong !== undefined) throw new Problem('impossible', wrong, { value: texts.join(' to ') });
      return { [key]: ends } as { readonly [P in K]?: Ends };
    },
  };
}

/** A number without a unit, as typed; NaN for what is none. */
function readPlain(text: string): number {
  return text === '' ? Number.NaN : Number(text.replace('\u2212', '-').replace(',', '.'));
}
