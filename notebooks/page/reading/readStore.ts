/** Where the list of what was read is in the browser's storage. */
export const readKey = 'stepwell.read';

/** What was read, kept in this browser. */
export interface ReadStore {
  has(id: string): boolean;
  add(id: string): void;
  forget(): void;
}

/** What the store needs of a window; reading `localStorage` may throw. */
export type StoreWindow = Pick<Window, 'localStorage'>;

/** Opens what this browser remembers of reading; where it keeps nothing, it lasts as long as the page is open. */
export function createReadStore(window: StoreWindow): ReadStore {
  const here = new Set(readStored(window));
  return {
    has: (id) => here.has(id),
    add(id) {
      // Another tab may have added since.
      for (const other of readStored(window)) here.add(other);
      here.add(id);
      write(window, [...here]);
    },
    forget() {
      here.clear();
      write(window, []);
    },
  };
}

function readStored(window: StoreWindow): readonly string[] {
  try {
    const read: unknown = JSON.parse(window.localStorage.getItem(readKey) ?? '[]');
    return Array.isArray(read) ? read.filter((one) => typeof one === 'string') : [];
  } catch {
    // Blocked, or not ours: nothing is remembered.
    return [];
  }
}

function write(window: StoreWindow, ids: readonly string[]): void {
  try {
    window.localStorage.setItem(readKey, JSON.stringify(ids));
  } catch {
    // Blocked or full: then it is forgotten with the page.
  }
}
