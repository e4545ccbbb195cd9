import { createLocalStore, type StoreWindow } from '../localStore.ts';

/** Where the list of what was read is in the browser's storage. */
export const readKey = 'stepwell.read';

/** What was read, kept in this browser. */
export interface ReadStore {
  has(id: string): boolean;
  add(id: string): void;
  forget(): void;
}

/** Opens what this browser remembers of reading; where it keeps nothing, it lasts as long as the page is open. */
export function createReadStore(window: StoreWindow): ReadStore {
  const store = createLocalStore<readonly string[]>(window, {
    key: readKey,
    empty: [],
    read: readIds,
    write: (ids) => (ids.length === 0 ? undefined : JSON.stringify(ids)),
    // A mark of what was read is not worth a warning.
    notKept: '',
    notRead: () => '',
  });
  return {
    has: (id) => store.value().includes(id),
    add: (id) => store.change((ids) => (ids.includes(id) ? ids : [...ids, id])),
    forget: () => store.change(() => []),
  };
}

function readIds(text: string): readonly string[] {
  const read: unknown = JSON.parse(text);
  return Array.isArray(read) ? read.filter((one) => typeof one === 'string') : [];
}
