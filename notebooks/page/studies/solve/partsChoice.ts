import { type PartKind, partKinds } from '../../../../lib/design/ownParts.ts';
import type { SolveForm } from '../../../solveForm.ts';
import type { PageContext } from '../../context.ts';
import { element } from '../../element.ts';

const plurals: Readonly<Record<PartKind, string>> = {
  lens: 'lenses',
  expander: 'expanders',
  plate: 'plates',
};

/** Tick boxes for the person's own lenses, expanders and plates, as far as there are any. */
export function renderPartsChoice(
  { document, ownParts }: PageContext,
  form: () => SolveForm,
  stops: (() => void)[],
): HTMLElement {
  const holder = element(document, 'div', { class: 'study-parts' });
  const show = () => {
    const kept = partKinds.filter((kind) => ownParts.value().some((part) => part.kind === kind));
    const boxes = kept.map((kind) => {
      const names = ownParts.value().filter((part) => part.kind === kind);
      const box = element(document, 'input', { type: 'checkbox' });
      box.checked = form().parts.includes(kind);
      box.addEventListener('change', () => {
        const others = form().parts.filter((other) => other !== kind);
        form().parts = box.checked ? [...others, kind] : others;
      });
      const which = names.map(({ name }) => name).join(', ');
      return element(
        document,
        'label',
        { class: 'field-option' },
        box,
        `one of my ${plurals[kind]}: ${which}`,
      );
    });
    const words =
      'Lenses, expanders and plates that you keep beside the inputs can be chosen from here as well.';
    holder.replaceChildren(
      ...(boxes.length > 0 ? boxes : [element(document, 'p', { class: 'study-today' }, words)]),
    );
  };
  show();
  stops.push(ownParts.onChange(show));
  return holder;
}
