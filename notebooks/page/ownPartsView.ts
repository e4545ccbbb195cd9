import { type PartKind, partKinds } from '../../lib/design/ownParts.ts';
import type { PageContext } from './context.ts';
import { createOwnPartsField } from './controls/ownPartsField.ts';
import { download } from './figures/exportFigure.ts';

/** Puts the choice among a person's own parts under the heading of a panel whose element one can own. */
export function renderOwnParts(
  { document, live, ownParts }: PageContext,
  name: string,
  panel: HTMLElement,
  stops: (() => void)[],
): void {
  const kind = partKinds.find((one) => one === name) as PartKind | undefined;
  if (!kind) return;
  const field = createOwnPartsField(document, kind, ownParts, {
    inputs: () => live.state().inputs,
    set: (patch) => live.set(patch),
    save: (file, text) => download(file, new Blob([text], { type: 'application/json' })),
  });
  panel.querySelector('.inputs-heading')!.after(field.element);
  stops.push(live.onState(field.refresh), ownParts.onChange(field.refresh));
}
