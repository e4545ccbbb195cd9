import type { OriginalFile } from '../../../lib/graph/originals.ts';
import type { SavedHistory } from '../../keeping/savedHistory.ts';
import type { Draft } from '../controls/drafts.ts';

/** A design as the browser keeps it. */
export interface JournalRecord {
  readonly id: string;
  /** When it was last written, ms. */
  readonly changed: number;
  readonly history: SavedHistory;
  /** SHA-256 of the files in it. */
  readonly files: readonly string[];
  /** What was typed and not taken; records of earlier programs have none. */
  readonly drafts?: readonly Draft[];
}

/** What the journal keeps of a design. */
export interface JournalContent {
  readonly history: SavedHistory;
  readonly files: readonly OriginalFile[];
  readonly drafts: readonly Draft[];
}

/** Open designs with their undo, kept in the browser; files lie beside them by their SHA-256, once each. */
export interface Journal {
  /** The record of that id with the bytes of its files. */
  read(
    id: string,
  ): Promise<{ readonly record: JournalRecord; readonly bytes: ReadonlyMap<string, Uint8Array> } | undefined>;
  /** Id of the design changed last; undefined where none is kept. */
  latest(): Promise<string | undefined>;
  /** All or nothing; rejects where the browser has no room. */
  write(id: string, content: JournalContent): Promise<void>;
  /** Removes designs beyond the twelve changed last, and files that no design names. */
  prune(): Promise<void>;
}

/** Enough for tabs closed by mistake; a camera picture in each may take some megabytes. */
const mostDesigns = 12;

/** Opens the journal of this browser; rejects where it keeps nothing. */
export async function openJournal(factory: IDBFactory): Promise<Journal> {
  const opening = factory.open('stepwell', 1);
  opening.onupgradeneeded = () => {
    opening.result.createObjectStore('designs', { keyPath: 'id' });
    opening.result.createObjectStore('files');
  };
  const database = await answer(opening);
  // Another tab with a newer program may change the stores; this one then says that it keeps nothing.
  database.onversionchange = () => database.close();
  const begin = (mode: IDBTransactionMode) => {
    const transaction = database.transaction(['designs', 'files'], mode, { durability: 'strict' });
    return {
      designs: transaction.objectStore('designs'),
      files: transaction.objectStore('files'),
      done: ended(transaction),
      commit: () => transaction.commit?.(),
    };
  };
  const all = async (designs: IDBObjectStore): Promise<JournalRecord[]> => {
    const records: JournalRecord[] = await answer(designs.getAll());
    return records.sort((a, b) => b.changed - a.changed);
  };
  return {
    async read(id) {
      const { designs, files } = begin('readonly');
      const record: JournalRecord | undefined = await answer(designs.get(id));
      if (!record) return undefined;
      const found = await Promise.all(
        record.files.map(
          async (hash) => [hash, await answer<Uint8Array | undefined>(files.get(hash))] as const,
        ),
      );
      return { record, bytes: new Map(found.flatMap(([hash, bytes]) => (bytes ? [[hash, bytes]] : []))) };
    },
    latest: async () => (await all(begin('readonly').designs))[0]?.id,
    async write(id, { history, files: originals, drafts }) {
      const { designs, files, done, commit } = begin('readwrite');
      const hashes = [...new Set(originals.map(({ sha256 }) => sha256))];
      designs.put({ id, changed: Date.now(), history, files: hashes, drafts } satisfies JournalRecord);
      for (const { sha256, bytes } of originals) {
        const asking = files.getKey(sha256);
        asking.onsuccess = () => {
          if (asking.result === undefined) files.put(bytes, sha256);
        };
      }
      // At once, since a page that is being left is not asked again.
      if (hashes.length === 0) commit();
      await done;
    },
    async prune() {
      const { designs, files, done } = begin('readwrite');
      const records = await all(designs);
      for (const { id } of records.slice(mostDesigns)) designs.delete(id);
      const named = new Set(records.slice(0, mostDesigns).flatMap((record) => record.files));
      const hashes = await answer(files.getAllKeys());
      for (const hash of hashes) if (!named.has(hash as string)) files.delete(hash);
      await done;
    },
  };
}

/** The result of a request. */
function answer<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('The browser gave no reason.'));
    if (request instanceof IDBOpenDBRequest)
      request.onblocked = () => reject(new Error('Another tab holds the storage.'));
  });
}

/** Resolves when a transaction has been written. */
function ended(transaction: IDBTransaction): Promise<void> {
  const end = new Promise<void>((resolve, reject) => {
    const fail = () => reject(transaction.error ?? new Error('The browser gave no reason.'));
    transaction.oncomplete = () => resolve();
    transaction.onabort = fail;
    transaction.onerror = fail;
  });
  // Readers do not wait for it.
  end.catch(() => {});
  return end;
}
