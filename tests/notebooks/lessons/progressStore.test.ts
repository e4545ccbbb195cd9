import { describe, expect, it } from 'vitest';
import type { Run } from '../../../notebooks/lessons/progress.ts';
import { readProgress, writeProgress } from '../../../notebooks/lessons/savedProgress.ts';
import {
  createProgressStore,
  progressOf,
  storageKey,
} from '../../../notebooks/page/lessons/progressStore.ts';
import type { StoreWindow } from '../../../notebooks/page/localStore.ts';

/** Tabs of one browser: a write of one is an event in the others, as the HTML standard has it for storage. */
function openBrowser() {
  const texts = new Map<string, string>();
  const tabs: ((key: string | null) => void)[] = [];
  let blocked: 'no' | 'writing' | 'all' = 'no';
  const openWindow = () => {
    const listeners: ((event: { key: string | null }) => void)[] = [];
    const tell = (key: string | null) => {
      for (const listener of listeners) listener({ key });
    };
    tabs.push(tell);
    const changed = (key: string, change: () => void) => {
      if (blocked !== 'no') throw new Error('QuotaExceededError');
      change();
      for (const other of tabs) if (other !== tell) other(key);
    };
    const localStorage = {
      getItem: (key: string) => texts.get(key) ?? null,
      setItem: (key: string, text: string) => changed(key, () => texts.set(key, text)),
      removeItem: (key: string) => changed(key, () => texts.delete(key)),
    };
    const window = {
      addEventListener: (_: string, listener: (event: { key: string | null }) => void) =>
        listeners.push(listener),
      get localStorage() {
        if (blocked === 'all') throw new Error('SecurityError');
        return localStorage;
      },
    };
    return window as unknown as StoreWindow;
  };
  const openTab = () => createProgressStore(openWindow());
  const block = (what: typeof blocked) => {
    blocked = what;
  };
  const clear = () => {
    texts.clear();
    for (const tell of tabs) tell(null);
  };
  return { texts, openWindow, openTab, block, clear };
}

const run = (seed: number): Run => ({
  seed,
  reached: 2,
  before: 1,
  tasks: { width: { tries: ['5 mm', 0.25], end: 'right' }, side: { tries: ['far'] } },
});

describe('what was done of the lessons', () => {
  it('begins empty and writes nothing by itself', () => {
    const { openTab, texts } = openBrowser();
    const store = openTab();
    expect([store.value(), store.trouble(), texts.size]).toEqual([{}, '', 0]);
  });

  it('survives a reload, seed and tries included', () => {
    const { openTab } = openBrowser();
    openTab().keep('a', run(7));
    expect(openTab().value()).toEqual({ a: run(7) });
  });

  it('keeps what another tab has done of another lesson meanwhile, and hears of it', () => {
    const { openTab } = openBrowser();
    const [one, other] = [openTab(), openTab()];
    let heard = 0;
    const stop = one.onChange(() => {
      heard += 1;
    });
    other.keep('b', run(2));
    expect([one.value(), heard]).toEqual([{ b: run(2) }, 1]);
    one.keep('a', run(1));
    expect(other.value()).toEqual({ a: run(1), b: run(2) });
    stop();
    other.keep('c', run(3));
    expect(heard).toBe(2);
  });

  it('is forgotten as a whole, and leaves nothing behind', () => {
    const { openTab, texts } = openBrowser();
    const store = openTab();
    store.keep('a', run(1));
    expect(texts.has(storageKey)).toBe(true);
    store.forget();
    expect([store.value(), texts.size]).toEqual([{}, 0]);
  });

  it('is gone when the browser is cleared', () => {
    const { openTab, clear } = openBrowser();
    const store = openTab();
    store.keep('a', run(1));
    clear();
    expect(store.value()).toEqual({});
  });

  for (const what of ['writing', 'all'] as const) {
    it(`works as long as the page is open where storage is blocked (${what}), and says so`, () => {
      const { openTab, block } = openBrowser();
      block(what);
      const store = openTab();
      expect(store.trouble()).toBe('');
      store.keep('a', run(1));
      store.keep('b', run(2));
      expect(store.value()).toEqual({ a: run(1), b: run(2) });
      expect(store.trouble()).toMatch(/^This browser keeps nothing .* until the page closes\.$/);
      block('no');
      store.keep('c', run(3));
      expect([store.trouble(), Object.keys(openTab().value())]).toEqual(['', ['a', 'b', 'c']]);
    });
  }

  it('begins anew where what was kept cannot be read, says so, and writes over it with the next answer only', () => {
    const { openTab, texts } = openBrowser();
    texts.set(storageKey, '{"format":"stepwell-lessons"');
    const store = openTab();
    expect([store.value(), texts.get(storageKey)]).toEqual([{}, '{"format":"stepwell-lessons"']);
    expect(store.trouble()).toContain('cannot be read');
    store.keep('a', run(1));
    expect([store.trouble(), openTab().value()]).toEqual(['', { a: run(1) }]);
  });

  it('is one store a window', () => {
    const { openWindow } = openBrowser();
    const window = openWindow();
    expect(progressOf(window)).toBe(progressOf(window));
    expect(progressOf(openWindow())).not.toBe(progressOf(window));
  });
});

describe('progress as a text', () => {
  it('comes back as it was', () => {
    expect(readProgress(writeProgress({ a: run(3), b: run(2 ** 31 - 1) }))).toEqual({
      a: run(3),
      b: run(2 ** 31 - 1),
    });
  });

  const damaged: Readonly<Record<string, (text: string) => string>> = {
    'no JSON': (text) => text.slice(0, -2),
    'another format': (text) => text.replace('stepwell-lessons', 'stepwell-parts'),
    'a later version': (text) => text.replace('"version":1', '"version":2'),
    'a seed that is no whole number': (text) => text.replace('"seed":3', '"seed":3.5'),
    'an end that there is not': (text) => text.replace('"right"', '"wrong"'),
    'an answer that nobody typed': (text) => text.replace('5 mm', '5'.repeat(1000)),
  };
  for (const [name, damage] of Object.entries(damaged)) {
    it(`${name} is refused`, () => {
      const text = writeProgress({ a: run(3) });
      const bad = damage(text);
      expect(bad).not.toBe(text);
      expect(() => readProgress(bad)).toThrow();
    });
  }
});
