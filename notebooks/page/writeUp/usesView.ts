import { type UseName, useNames } from '../../rationale/section.ts';
import { usesOf, withUses } from '../../rationale/uses.ts';
import type { PageContext } from '../context.ts';
import { element } from '../element.ts';

/** Ticks for what the design is for; each use has its own part in the rationale. */
export function renderUses({ document, live }: PageContext, stops: (() => void)[]): HTMLElement {
  const boxes = (Object.keys(useNames) as UseName[]).map((use) => {
    const box = element(document, 'input', { type: 'checkbox', id: `use-${use}` });
    box.addEventListener('change', () => {
      const chosen = boxes.filter(({ box: one }) => one.checked).map(({ use: name }) => name);
      live.open(withUses(live.state(), chosen));
    });
    const label = element(document, 'label', { for: `use-${use}` }, useNames[use]);
    return { use, box, row: element(document, 'div', { class: 'write-up-use' }, box, label) };
  });
  const follow = () => {
    const uses = usesOf(live.state());
    for (const { use, box } of boxes) box.checked = uses.includes(use);
  };
  stops.push(live.onState(follow) as () => void);
  follow();
  return element(
    document,
    'fieldset',
    { class: 'study-part write-up-uses' },
    element(document, 'legend', {}, 'What the design is for'),
    ...boxes.map(({ row }) => row),
  );
}
