import type { JumpLink, SetsLink } from '../prose.ts';
import { linkRefusal } from '../slotPieces.ts';
import type { PageContext } from './context.ts';
import { element, setAttributes, setText } from './element.ts';
import { inlineButton } from './inlineButton.ts';
import { watchAll } from './watchAll.ts';

/** A link that sets inputs; where the design cannot take them, it says why beside it, and does nothing. */
export function renderLink(context: PageContext, slot: SetsLink, stops: (() => void)[]): Node {
  const { document, live } = context;
  const note = element(document, 'span', { class: 'sets-note' });
  const button = inlineButton(document, 'sets-link', slot.text, () => {
    try {
      live.set(slot.patch(live.read(slot.from)));
    } catch (error) {
      context.report((error as Error).message);
    }
  });
  watchAll(context, Object.values(slot.from), stops, {
    pending: () => {},
    settled: () => {},
    changed: (outcomeOf) => {
      const refusal = linkRefusal(slot, outcomeOf);
      setText(note, refusal ? ` (${refusal.short})` : '');
      setAttributes(button, { 'aria-disabled': refusal && 'true', title: refusal?.message });
    },
  });
  const both = document.createDocumentFragment();
  both.append(button, note);
  return both;
}

/** A button, not a link: the address names the document. */
export function renderJump(document: Document, { text, to }: JumpLink): Node {
  return inlineButton(document, 'sets-link', text, () => {
    const block = document.getElementById(`block-${to}`);
    if (!block) return;
    block.scrollIntoView();
    const first = block.querySelector<HTMLElement>('button:not([hidden]), [tabindex="0"], input');
    first?.focus({ preventScroll: true });
  });
}
