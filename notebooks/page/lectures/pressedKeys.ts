import { actOf, type GivingAct, type KeyPlace } from '../../lectures/givingKeys.ts';
import type { Drafts } from '../controls/drafts.ts';

/** What the keys of a window do for a lecture, `drafts` what is half typed there; returns how to end that. */
export function takeKeys(window: Window, take: (act: GivingAct) => void, drafts?: Drafts): () => void {
  const pressed = (event: KeyboardEvent) => {
    const place = placeOf(event.target, drafts);
    const act = event.isComposing ? undefined : actOf(event, place);
    // A field with nothing half typed is left first, and with it what it keeps the keys for.
    if (event.key === 'Escape' && place === 'settledField') (event.target as HTMLElement).blur();
    if (!act) return;
    event.preventDefault();
    // Before all others: undo would be that of the open design.
    event.stopPropagation();
    take(act);
  };
  window.addEventListener('keydown', pressed, { capture: true });
  return () => window.removeEventListener('keydown', pressed, { capture: true });
}

function placeOf(target: EventTarget | null, drafts: Drafts | undefined): KeyPlace {
  const at = target as Partial<Element> | null;
  const isIn = (selector: string) => Boolean(at?.closest?.(selector));
  if (isIn('textarea, select, [contenteditable], [role="listbox"], [role="combobox"]')) return 'list';
  if (isIn('input[type="range"], input[type="radio"], [role="slider"]')) return 'slider';
  if (isIn('input:is([type="text"], [type="number"], [type="search"])'))
    return isSettled(target as HTMLInputElement, drafts) ? 'settledField' : 'field';
  return isIn('button, a[href], summary, input, [role="button"]') ? 'button' : 'page';
}

/** One of the design's inputs that shows its value; one that was emptied has no draft. */
function isSettled(field: HTMLInputElement, drafts: Drafts | undefined): boolean {
  const input = field.closest<HTMLElement>('.field[data-input]')?.dataset['input'];
  return input !== undefined && field.value.trim() !== '' && drafts !== undefined && !drafts.of(input);
}
