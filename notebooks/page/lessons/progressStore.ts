import type { Progress, Run } from '../../lessons/progress.ts';
import { readProgress, writeProgress } from '../../lessons/savedProgress.ts';
import { createLocalStore, type LocalStore, type StoreWindow } from '../localStore.ts';

/** What was done of the lessons, kept in the browser. */
export interface ProgressStore extends LocalStore<Progress> {
  /** Keeps the run of a lesson in place of the one before. */
  keep(lesson: string, run: Run): void;
  /** Takes everything that was kept away. */
  forget(): void;
}

/** Where it is in the browser's storage. */
export const storageKey = 'stepwell.lessons';

/** Opens what this browser keeps; without storage it works as long as the page is open. */
export function createProgressStore(window: StoreWindow): ProgressStore {
  const store = createLocalStore<Progress>(window, {
    key: storageKey,
    empty: {},
    read: readProgress,
    // Nothing done leaves nothing behind.
    write: (runs) => (Object.keys(runs).length === 0 ? undefined : writeProgress(runs)),
    notKept:
      'This browser keeps nothing for this page (a private window, or its storage is blocked or full): what you do in the lessons lasts until the page closes.',
    notRead: () =>
      'What this browser had kept of your lessons cannot be read; with the next lesson that you open it begins anew.',
  });
  return {
    ...store,
    keep: (lesson, run) => store.change((all) => ({ ...all, [lesson]: run })),
    forget: () => store.change(() => ({})),
  };
}

const stores = new WeakMap<StoreWindow, ProgressStore>();

/** The one store of a window. */
export function progressOf(window: StoreWindow): ProgressStore {
  const known = stores.get(window);
  if (known) return known;
  const made = createProgressStore(window);
  stores.set(window, made);
  return made;
}
