/** A value that this browser keeps beside the design, for all tabs. */
export interface LocalStore<Value> {
  value(): Value;
  /** Replaces the value by what `next` makes of it; a Problem thrown there changes nothing. */
  change(next: (value: Value) => Value): void;
  /** Why it will not last, in words; empty while all is well. */
  trouble(): string;
  /** Called after every change, those of other tabs included; returns how to stop. */
  onChange(listener: () => void): () => void;
}

/** What a store needs of a window; reading `localStorage` may throw. */
export type StoreWindow = Pick<Window, 'localStorage' | 'addEventListener'>;

/** How a value is kept. */
export interface Keeping<Value> {
  readonly key: string;
  /** Where a text goes that could not be read, before a new one takes its place; without it, it is lost. */
  readonly asideKey?: string;
  /** What there is before anything was kept. */
  readonly empty: Value;
  /** Reads what was kept; throws where it cannot be read. */
  read(text: string): Value;
  /** What is kept; undefined where nothing is to be left behind. */
  write(value: Value): string | undefined;
  /** Told where the browser keeps nothing. */
  readonly notKept: string;
  /** Told where what was kept cannot be read, with the reason. */
  notRead(reason: string): string;
}

interface Stored<Value> {
  readonly value: Value;
  readonly trouble: string;
  /** A text that could not be read, until it is set aside. */
  readonly unreadable?: string;
}

/** Opens what this browser keeps; without storage it lasts as long as the page is open. */
export function createLocalStore<Value>(window: StoreWindow, keeping: Keeping<Value>): LocalStore<Value> {
  const listeners = new Set<() => void>();
  let stored = readStored(window, keeping);
  /** True while the value here is newer than the browser's. */
  let ahead = false;
  const tell = () => {
    for (const listener of listeners) listener();
  };
  window.addEventListener('storage', ({ key }) => {
    // A null key says that all was cleared.
    if (ahead || (key !== keeping.key && key !== null)) return;
    stored = readStored(window, keeping);
    tell();
  });
  return {
    value: () => stored.value,
    trouble: () => stored.trouble,
    change(next) {
      // Another tab may have written since: read first, so that nothing of it is lost.
      if (!ahead) stored = readStored(window, keeping);
      const value = next(stored.value);
      ahead = !writeStored(window, keeping, value, stored.unreadable);
      stored = ahead ? { ...stored, value, trouble: keeping.notKept } : { value, trouble: '' };
      tell();
    },
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

function readStored<Value>(
  window: StoreWindow,
  { key, empty, read, notRead }: Keeping<Value>,
): Stored<Value> {
  const text = readText(window, key);
  if (text === null) return { value: empty, trouble: '' };
  try {
    return { value: read(text), trouble: '' };
  } catch (error) {
    return { value: empty, trouble: notRead((error as Error).message), unreadable: text };
  }
}

/** Storage that cannot be read holds nothing for us; it says so when something is to be kept. */
function readText(window: StoreWindow, key: string): string | null {
  try {
    return window.localStorage.getItem(key);
  } catch {
    return null;
  }
}

/** True where it was written. */
function writeStored<Value>(
  window: StoreWindow,
  { key, asideKey, write }: Keeping<Value>,
  value: Value,
  unreadable: string | undefined,
): boolean {
  try {
    if (asideKey !== undefined && unreadable !== undefined) window.localStorage.setItem(asideKey, unreadable);
    const text = write(value);
    if (text === undefined) window.localStorage.removeItem(key);
    else window.localStorage.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}
