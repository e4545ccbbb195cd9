/** What the keeping needs of a window; reading any of them may throw. */
export type KeepingWindow = Pick<
  Window,
  'indexedDB' | 'navigator' | 'sessionStorage' | 'crypto' | 'addEventListener'
>;

/** What storage answers; undefined where it throws, or is silent for two seconds, as some browsers’ is. */
export async function patiently<T>(ask: () => Promise<T>): Promise<T | undefined> {
  const silence = new Promise<undefined>((resolve) => {
    setTimeout(() => resolve(undefined), 2000);
  });
  return Promise.race([ask().catch(() => undefined), silence]);
}

export function freshId({ crypto }: KeepingWindow): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) =>
    byte.toString(16).padStart(2, '0'),
  ).join('');
}

export function locksOf({ navigator }: KeepingWindow): LockManager | undefined {
  // Absent where the address is not secure.
  return (navigator as Partial<Navigator>).locks;
}

/** The design of this tab outlives loading the page again and the tab’s crash. */
const tabKey = 'stepwell.design';

export function readTab(window: KeepingWindow): string | undefined {
  try {
    return window.sessionStorage.getItem(tabKey) ?? undefined;
  } catch {
    return undefined;
  }
}

export function writeTab(window: KeepingWindow, id: string): void {
  try {
    window.sessionStorage.setItem(tabKey, id);
  } catch {
    // Then the design changed last is taken for this tab’s.
  }
}
