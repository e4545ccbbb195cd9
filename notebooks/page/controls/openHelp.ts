/**
 * Keeps at most one of the notes behind the question marks open: another one that opens, Escape, or a press anywhere
 * else closes it. Escape then does nothing else, and gives the focus back to the question mark where it was inside.
 */
export function keepOneHelpOpen(document: Document): void {
  const open = () => [...document.querySelectorAll<HTMLDetailsElement>('details.field-help[open]')];
  const closeAllBut = (kept: EventTarget | null) => {
    for (const help of open()) if (help !== kept) help.removeAttribute('open');
  };
  // `toggle` does not bubble, and is told of after other events: it is caught on its way down.
  document.addEventListener(
    'toggle',
    ({ target }) => {
      if ((target as Element).matches('details.field-help[open]')) closeAllBut(target);
    },
    true,
  );
  // Not when the button goes down: what lies below would move away under the hand.
  document.addEventListener('click', ({ target }) => {
    closeAllBut((target as Element).closest('details.field-help'));
  });
  document.addEventListener(
    'keydown',
    (event) => {
      const [help] = open();
      if (event.key !== 'Escape' || !help) return;
      event.stopPropagation();
      event.preventDefault();
      const within = help.contains(document.activeElement);
      closeAllBut(null);
      if (within) help.querySelector('summary')!.focus();
    },
    true,
  );
}
