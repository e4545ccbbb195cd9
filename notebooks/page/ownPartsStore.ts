import { readPartsFile, writePartsFile } from '../../lib/design/ownPartsFile.ts';
import type { OwnParts } from '../../lib/design/ownPartsList.ts';

/** The list of a person's own parts, kept in the browser. */
export interface OwnPartsStore {
  parts(): OwnParts;
  /** Replaces the list by what `next` makes of it; a Problem thrown there changes nothing. */
  change(next: (parts: OwnParts) => OwnParts): void;
  /** Why the list will not last, in words; empty while all is well. */
  trouble(): string;
  /** Called after every change, those of other tabs included; returns how to stop. */
  onChange(listener: () => void): () => void;
}

/** What the store needs of a window; reading `localStorage` may throw. */
export type StoreWindow = Pick<Window, 'localStorage' | 'addEventListener'>;

/** Where the list is in the browser's storage. */
export const storageKey = 'stepwell.parts';
/** Where a list goes that could not be read, before a new one takes its place. */
export const asideKey = 'stepwell.parts.unreadable';

const notKept =
  'This browser keeps nothing for this page (a private window, or its storage is blocked or full): the list lasts until the page closes. Save it to a file to keep it.';

interface Stored {
  readonly parts: OwnParts;
  readonly trouble: string;
  /** The text of a list that could not be read, until it is set aside. */
  readonly unreadable: string | undefined;
}

const empty: Stored = { parts: [], trouble: '', unreadable: undefined };

/** Opens the list of this browser; without storage it works as long as the page is open. */
export function createOwnPartsStore(window: StoreWindow): OwnPartsStore {
  const listeners = new Set<() => void>();
  let stored = readStored(window);
  /** True while the list here is newer than the browser's. */
  let ahead = false;
  const tell = () => {
    for (const listener of listeners) listener();
  };
  window.addEventListener('storage', ({ key }) => {
    // A null key says that all was cleared.
    if (ahead || (key !== storageKey && key !== null)) return;
    stored = readStored(window);
    tell();
  });
  return {
    parts: () => stored.parts,
    trouble: () => stored.trouble,
    change(next) {
      // Another tab may have written since: read first, so that nothing of it is lost.
      if (!ahead) stored = readStored(window);
      const parts = next(stored.parts);
      ahead = !writeStored(window, parts, stored.unreadable);
      stored = ahead ? { ...stored, parts, trouble: notKept } : { ...empty, parts };
      tell();
    },
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

function readStored(window: StoreWindow): Stored {
  const text = readText(window);
  if (text === null) return empty;
  try {
    return { ...empty, parts: readPartsFile(text, 'list in this browser').parts };
  } catch (error) {
    const trouble = `The list that this browser kept cannot be read; with the next part that you keep it is set aside and a new one begins. ${(error as Error).message}`;
    return { ...empty, trouble, unreadable: text };
  }
}

/** Storage that cannot be read holds nothing for us; it says so when something is to be kept. */
function readText(window: StoreWindow): string | null {
  try {
    return window.localStorage.getItem(storageKey);
  } catch {
    return null;
  }
}

/** True where the list was written. */
function writeStored(window: StoreWindow, parts: OwnParts, unreadable: string | undefined): boolean {
  try {
    if (unreadable !== undefined) window.localStorage.setItem(asideKey, unreadable);
    window.localStorage.setItem(storageKey, writePartsFile(parts));
    return true;
  } catch {
    return false;
  }
}
