import type { Drafts } from './controls/drafts.ts';

/**
 * Puts the cursor into the field of an input: what it holds is selected, so that typing replaces it; behind what was
 * typed and not taken typing goes on.
 */
export function focusInput(place: HTMLElement, drafts: Drafts, id: string): void {
  const field = place.querySelector<HTMLInputElement>(
    `.field[data-input="${id}"]:not([hidden]) input[type="text"]`,
  );
  const typed = drafts.of(id) !== undefined;
  field?.focus({ preventScroll: typed });
  field?.setSelectionRange(typed ? field.value.length : 0, field.value.length);
  // Enter would take it: it must be seen. What stands above has its height from the next frame on.
  if (typed) requestAnimationFrame(() => field?.scrollIntoView({ block: 'center' }));
}
