import { actOf, type GivingAct, type KeyPlace } from '../../lectures/givingKeys.ts';

/** What the keys of a window do for a lecture; returns how to end that. */
export function takeKeys(window: Window, take: (act: GivingAct) => void): () => void {
  const pressed = (event: KeyboardEvent) => {
    const act = event.isComposing ? undefined : actOf(event, placeOf(event.target));
    if (!act) return;
    event.preventDefault();
    // Before all others: undo would be that of the open design.
    event.stopPropagation();
    take(act);
  };
  window.addEventListener('keydown', pressed, { capture: true });
  return () => window.removeEventListener('keydown', pressed, { capture: true });
}

function placeOf(target: EventTarget | null): KeyPlace {
  const at = target as Partial<Element> | null;
  const isIn = (selector: string) => Boolean(at?.closest?.(selector));
  if (isIn('textarea, select, [contenteditable], [role="listbox"], [role="combobox"]')) return 'list';
  if (isIn('input[type="range"], input[type="radio"], [role="slider"]')) return 'slider';
  if (isIn('input:is([type="text"], [type="number"], [type="search"])')) return 'field';
  return isIn('button, a[href], summary, input, [role="button"]') ? 'button' : 'page';
}
