/** Px around the view in which figures are already drawn, about half a screen. */
const near = 400;

/** Tells whether an element is near the view, and when it comes there. Without an observer everything is near. */
export function watchNearness(document: Document, element: Element, arrived: () => void) {
  const Observer = (document.defaultView as { IntersectionObserver?: typeof IntersectionObserver } | null)
    ?.IntersectionObserver;
  if (typeof Observer !== 'function') return { isNear: () => true, stop: () => {} };
  let isNear = false;
  const observer = new Observer(
    (entries) => {
      isNear = entries.at(-1)!.isIntersecting;
      if (isNear) arrived();
    },
    { rootMargin: `${near}px` },
  );
  observer.observe(element);
  return { isNear: () => isNear, stop: () => observer.disconnect() };
}

/** Canvas pictures do not follow CSS: they are painted again when the scheme changes. */
export function watchScheme(document: Document, changed: () => void): () => void {
  const view = document.defaultView as Partial<typeof globalThis.window> | null;
  const query = view?.matchMedia?.('(prefers-color-scheme: dark)');
  query?.addEventListener('change', changed);
  const Observer = (view as { MutationObserver?: typeof MutationObserver } | null)?.MutationObserver;
  const observer = query && Observer ? new Observer(changed) : undefined;
  observer?.observe(document.documentElement, { attributes: true, attributeFilter: ['data-scheme'] });
  return () => {
    query?.removeEventListener('change', changed);
    observer?.disconnect();
  };
}

export function watchPrinting(
  document: Document,
  { before, after }: { before: () => void; after: () => void },
): () => void {
  const view = document.defaultView;
  view?.addEventListener?.('beforeprint', before);
  view?.addEventListener?.('afterprint', after);
  return () => {
    view?.removeEventListener?.('beforeprint', before);
    view?.removeEventListener?.('afterprint', after);
  };
}
