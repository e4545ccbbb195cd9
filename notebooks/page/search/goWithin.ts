/** What ends a second scrolling: the person has begun to read. */
const handEvents = ['wheel', 'pointerdown', 'keydown', 'touchstart'] as const;

/**
 * Brings a block, or what else the address names within a document, to the top of the window; once more when all
 * numbers are there, since what stands above grows with them, unless the person has moved by then. False where the
 * document holds nothing of that name.
 */
export function goWithin(main: HTMLElement, within: string, settled: () => Promise<unknown>): boolean {
  const found = [...main.querySelectorAll<HTMLElement>('[data-within], [id^="block-"]')].find(
    (one) => one.dataset['within'] === within || one.id === `block-${within}`,
  );
  if (!found || found.hidden) return false;
  found.scrollIntoView();
  const heading = found.querySelector<HTMLElement>('h2, h3') ?? found;
  if (!heading.hasAttribute('tabindex')) heading.tabIndex = -1;
  heading.focus({ preventScroll: true });
  found.setAttribute('data-named', '');
  let moved = false;
  const stop = () => {
    moved = true;
  };
  for (const name of handEvents) window.addEventListener(name, stop, { once: true, passive: true });
  void settled().then(() => {
    if (!moved && found.isConnected) found.scrollIntoView();
    for (const name of handEvents) window.removeEventListener(name, stop);
  });
  return true;
}
