import type { OwnPart, PartKind } from '../../../lib/design/ownParts.ts';
import { element, setText } from '../element.ts';
import { freshId } from './field.ts';

/** A kind of part in words. */
export const partWords: Readonly<Record<PartKind, { readonly one: string; readonly many: string }>> = {
  lens: { one: 'lens', many: 'lenses' },
  expander: { one: 'expander', many: 'expanders' },
  plate: { one: 'plate', many: 'plates' },
};

/** The list to choose from; while it is empty, a sentence that says what it is for. */
export interface OwnPartsChoice {
  readonly element: HTMLElement;
  /** Shows the parts by name, and which of them the design has. */
  show(parts: readonly OwnPart[], current: OwnPart | undefined): void;
  focus(): void;
}

const byName = new Intl.Collator('en', { numeric: true }).compare;

/** A select of one's own parts with the note of the chosen one. */
export function createOwnPartsChoice(
  document: Document,
  kind: PartKind,
  onChoose: (name: string) => void,
): OwnPartsChoice {
  const { many } = partWords[kind];
  const id = freshId();
  const list = element(document, 'select', {
    id,
    class: 'field-list',
    'aria-describedby': `${id}-note`,
  });
  const label = element(document, 'label', { class: 'field-label', for: id }, `Your ${many}`);
  const row = element(document, 'div', { class: 'own-parts-choice' }, label, list);
  const note = element(document, 'p', { class: 'own-parts-note', id: `${id}-note` });
  list.addEventListener('change', () => onChoose(list.value));
  let listed: readonly string[] | undefined;
  return {
    element: element(document, 'div', {}, row, note),
    show(parts, current) {
      const names = parts.map(({ name }) => name).sort(byName);
      if (names.join('\n') !== listed?.join('\n')) list.replaceChildren(...optionsFor(document, names));
      listed = names;
      row.hidden = names.length === 0;
      for (const option of list.children as Iterable<HTMLOptionElement>)
        if (option.value === (current?.name ?? '')) option.selected = true;
      setText(note, row.hidden ? purposeOf(kind) : (current?.note ?? ''));
    },
    focus: () => list.focus(),
  };
}

function purposeOf(kind: PartKind): string {
  const { many } = partWords[kind];
  return `The ${many} that you own can stand here under names of your own, to be chosen again in one go.`;
}

/** The first option is a state, not a choice: it shows while the design has none of the parts. */
function optionsFor(document: Document, names: readonly string[]): HTMLElement[] {
  return [
    element(document, 'option', { value: '', disabled: true }, 'not from your list'),
    ...names.map((name) => element(document, 'option', { value: name }, name)),
  ];
}
