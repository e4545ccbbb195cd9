import { longestText } from '../../../lib/design/savedWritings.ts';
import { noStudies } from '../../../lib/graph/studies.ts';
import { type OwnTextName, ownTexts } from '../../rationale/section.ts';
import type { PageContext } from '../context.ts';
import { element } from '../element.ts';

/** Fields for the person's own words, one for each part; they are kept with the design. */
export function renderOwnWords(context: PageContext, stops: (() => void)[]): HTMLElement {
  const { document } = context;
  const fields = (Object.keys(ownTexts) as OwnTextName[]).map((name) => createField(context, name, stops));
  return element(document, 'section', { class: 'own-words', 'aria-label': 'Your own words' }, ...fields);
}

function createField({ document, live }: PageContext, name: OwnTextName, stops: (() => void)[]): HTMLElement {
  const { heading, asks } = ownTexts[name];
  const id = `own-words-${name}`;
  const field = element(document, 'textarea', {
    id,
    class: 'field-text',
    rows: name === 'purpose' ? 4 : 3,
    maxlength: longestText,
    'aria-describedby': `${id}-asks`,
  });
  const follow = () => {
    const text = live.state().studies?.texts[name] ?? '';
    if (field.value !== text) field.value = text;
  };
  // All that is typed until the field is left is one step back.
  const take = (final: boolean) => () => {
    const state = live.state();
    const { studies = noStudies } = state;
    const { [name]: _, ...others } = studies.texts;
    const texts = field.value === '' ? others : { ...others, [name]: field.value };
    live.open({ ...state, studies: { ...studies, texts } }, { final });
  };
  field.addEventListener('input', take(false));
  field.addEventListener('change', take(true));
  stops.push(live.onState(follow) as () => void);
  follow();
  return element(
    document,
    'div',
    { class: 'own-words-field' },
    element(document, 'label', { for: id }, heading),
    element(document, 'p', { id: `${id}-asks`, class: 'own-words-asks' }, asks),
    field,
  );
}
