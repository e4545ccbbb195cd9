import { readPartsFile, writePartsFile } from '../../lib/design/ownPartsFile.ts';
import type { OwnParts } from '../../lib/design/ownPartsList.ts';
import { createLocalStore, type LocalStore, type StoreWindow } from './localStore.ts';

/** The list of a person's own parts, kept in the browser. */
export type OwnPartsStore = LocalStore<OwnParts>;

/** Where the list is in the browser's storage. */
export const storageKey = 'stepwell.parts';
/** Where a list goes that could not be read, before a new one takes its place. */
export const asideKey = 'stepwell.parts.unreadable';

/** Opens the list of this browser; without storage it works as long as the page is open. */
export function createOwnPartsStore(window: StoreWindow): OwnPartsStore {
  return createLocalStore<OwnParts>(window, {
    key: storageKey,
    asideKey,
    empty: [],
    read: (text) => readPartsFile(text, 'list in this browser').parts,
    write: writePartsFile,
    notKept:
      'This browser keeps nothing for this page (a private window, or its storage is blocked or full): the list lasts until the page closes. Save it to a file to keep it.',
    notRead: (reason) =>
      `The list that this browser kept cannot be read; with the next part that you keep it is set aside and a new one begins. ${reason}`,
  });
}
