import type { Progress, Run } from '../../lessons/progress.ts';
import { readProgress, writeProgress } from '../../lessons/savedProgress.ts';
import type { StoreWindow } from '../ownPartsStore.ts';

/** What was done of the lessons, kept in the browser. */
export interface ProgressStore {
  runs(): Progress;
  /** Keeps the run of a lesson in place of the one before. */
  keep(lesson: string, run: Run): void;
  /** Takes everything that was kept away. */
  forget(): void;
  /** Why it will not last, in words; empty while all is well. */
  trouble(): string;
  /** Called after every change, those of other tabs included; returns how to stop. */
  onChange(listener: () => void): () => void;
}

/** Where it is in the browser's storage. */
export const storageKey = 'stepwell.lessons';

const notKept =
  'This browser keeps nothing for this page (a private window, or its storage is blocked or full): what you do in the lessons lasts until the page closes.';
const notRead =
  'What this browser had kept of your lessons cannot be read; with the next lesson that you open it begins anew.';

/** Opens what this browser keeps; without storage it works as long as the page is open. */
export function createProgressStore(window: StoreWindow): ProgressStore {
  const listeners = new Set<() => void>();
  let { runs, trouble } = readStored(window);
  /** True while what is here is newer than the browser's. */
  let ahead = false;
  const tell = () => {
    for (const listener of listeners) listener();
  };
  const change = (next: (runs: Progress) => Progress) => {
    // Another tab may have gone on with another lesson.
    if (!ahead) runs = readStored(window).runs;
    runs = next(runs);
    ahead = !writeStored(window, runs);
    trouble = ahead ? notKept : '';
    tell();
  };
  window.addEventListener('storage', ({ key }) => {
    // A null key says that all was cleared.
    if (ahead || (key !== storageKey && key !== null)) return;
    ({ runs, trouble } = readStored(window));
    tell();
  });
  return {
    runs: () => runs,
    trouble: () => trouble,
    keep: (lesson, run) => change((all) => ({ ...all, [lesson]: run })),
    forget: () => change(() => ({})),
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

interface Stored {
  readonly runs: Progress;
  readonly trouble: string;
}

function readStored(window: StoreWindow): Stored {
  let text: string | null = null;
  try {
    text = window.localStorage.getItem(storageKey);
  } catch {
    // It says so when something is to be kept.
  }
  if (text === null) return { runs: {}, trouble: '' };
  const runs = readProgress(text);
  return runs ? { runs, trouble: '' } : { runs: {}, trouble: notRead };
}

/** True where it was written; nothing done leaves nothing behind. */
function writeStored(window: StoreWindow, runs: Progress): boolean {
  try {
    if (Object.keys(runs).length === 0) window.localStorage.removeItem(storageKey);
    else window.localStorage.setItem(storageKey, writeProgress(runs));
    return true;
  } catch {
    return false;
  }
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
