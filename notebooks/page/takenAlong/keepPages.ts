import type { Keeping } from '../keeping/keeping.ts';
import type { Notices } from '../keeping/notices.ts';
import { newerElsewhere, newerWords, type TakenAlong } from './takenAlongWords.ts';

/** What the keeping of the pages needs of a window. */
export type PagesWindow = Pick<Window, 'navigator' | 'isSecureContext' | 'location'>;

/** Says how the pages are there without network. */
export interface KeptPages {
  taken(): TakenAlong;
  onTaken(listener: () => void): void;
}

/**
 * Lets the browser keep the pages, and tells of a newer version. Nothing is loaded again unless the person says so;
 * `mode` is that of the build: only the built pages have what it takes.
 */
export function keepPages(window: PagesWindow, mode: string, keeping: Keeping, notices: Notices): KeptPages {
  const listeners: (() => void)[] = [];
  let taken: TakenAlong = 'network';
  const tell = (next: TakenAlong) => {
    taken = next;
    for (const listener of listeners) listener();
  };
  const container = (window.navigator as Partial<Navigator>).serviceWorker;
  if (mode === 'single') taken = 'file';
  else if (mode === 'production' && container) {
    taken = 'coming';
    container.ready.then(() => tell('kept'));
    const failed = () => tell('network');
    container
      .register('./sw.js')
      .then((found) => (found ? watchForNewer(window, container, found, keeping, notices) : failed()))
      .catch(failed);
  } else if (mode === 'production' && !window.isSecureContext) taken = 'insecure';
  return { taken: () => taken, onTaken: (listener) => void listeners.push(listener) };
}

function watchForNewer(
  { location }: PagesWindow,
  container: ServiceWorkerContainer,
  found: ServiceWorkerRegistration,
  keeping: Keeping,
  notices: Notices,
): void {
  // The first visit has no former version: then the browser has just taken the pages in.
  let former = container.controller !== null;
  let asked = false;
  const offer = () => {
    const { waiting } = found;
    if (!waiting || !former) return;
    const use = async () => {
      asked = true;
      await keeping.flush();
      waiting.postMessage({ type: 'SKIP_WAITING' });
    };
    const kept = keeping.status().trouble === '';
    notices.show('newer', newerWords(kept), [{ words: 'Use it now', act: () => void use() }]);
  };
  offer();
  found.addEventListener('updatefound', () => {
    const next = found.installing;
    next?.addEventListener('statechange', () => next.state === 'installed' && offer());
  });
  container.addEventListener('controllerchange', () => {
    const again = { words: 'Load it again', act: () => location.reload() };
    if (asked) location.reload();
    else if (former) notices.show('newer', newerElsewhere, [again]);
    former = true;
  });
}
