import { describe, expect, it } from 'vitest';
import { createPart } from '../../lib/design/ownParts.ts';
import { writePartsFile } from '../../lib/design/ownPartsFile.ts';
import { addPart, removePart } from '../../lib/design/ownPartsList.ts';
import type { StoreWindow } from '../../notebooks/page/localStore.ts';
import { asideKey, createOwnPartsStore, storageKey } from '../../notebooks/page/ownPartsStore.ts';

const lens = (name: string, f = 0.16) => createPart('lens', name, { 'lens.focalLength': f });

/** Tabs of one browser: a write of one is an event in the others, as the HTML standard has it for storage. */
function openBrowser() {
  const texts = new Map<string, string>();
  const tabs: { tell: (key: string | null) => void }[] = [];
  let blocked: 'no' | 'writing' | 'all' = 'no';
  const openTab = () => {
    const listeners: ((event: { key: string | null }) => void)[] = [];
    const tab = {
      tell: (key: string | null) => {
        for (const listener of listeners) listener({ key });
      },
    };
    tabs.push(tab);
    const localStorage = {
      getItem: (key: string) => texts.get(key) ?? null,
      setItem: (key: string, text: string) => {
        if (blocked !== 'no') throw new Error('QuotaExceededError');
        texts.set(key, text);
        for (const other of tabs) if (other !== tab) other.tell(key);
      },
    };
    const window = {
      addEventListener: (_: string, listener: (event: { key: string | null }) => void) =>
        listeners.push(listener),
      get localStorage() {
        if (blocked === 'all') throw new Error('SecurityError');
        return localStorage;
      },
    };
    return createOwnPartsStore(window as unknown as StoreWindow);
  };
  return {
    texts,
    openTab,
    block: (what: typeof blocked) => {
      blocked = what;
    },
    clear: () => {
      texts.clear();
      for (const tab of tabs) tab.tell(null);
    },
  };
}

const names = (store: ReturnType<typeof createOwnPartsStore>) => store.value().map(({ name }) => name);

describe('list in the browser', () => {
  it('begins empty and writes nothing by itself', () => {
    const { openTab, texts } = openBrowser();
    const store = openTab();
    expect([store.value(), store.trouble(), texts.size]).toEqual([[], '', 0]);
  });

  it('survives a reload', () => {
    const { openTab } = openBrowser();
    const part = lens('A', 0.1 + 0.06);
    openTab().change((parts) => addPart(parts, part));
    expect(openTab().value()).toEqual([part]);
  });

  it('changes nothing where a change is refused', () => {
    const { openTab, texts } = openBrowser();
    const store = openTab();
    store.change((parts) => addPart(parts, lens('A')));
    const before = texts.get(storageKey);
    expect(() => store.change((parts) => addPart(parts, lens('a')))).toThrow('already has the lens ‘A’');
    expect([names(store), texts.get(storageKey)]).toEqual([['A'], before]);
  });

  it('follows other tabs, and tells whoever listens', () => {
    const { openTab, clear } = openBrowser();
    const [first, second] = [openTab(), openTab()];
    let told = 0;
    const stop = second.onChange(() => {
      told += 1;
    });
    first.change((parts) => addPart(parts, lens('A')));
    second.change((parts) => addPart(parts, lens('B')));
    expect([names(first), names(second), told]).toEqual([['A', 'B'], ['A', 'B'], 2]);
    stop();
    clear();
    expect([names(first), names(second), told]).toEqual([[], [], 2]);
  });

  it('does not lose what another tab wrote before its event came', () => {
    const { openTab, texts } = openBrowser();
    const store = openTab();
    texts.set(storageKey, writePartsFile([lens('from elsewhere')]));
    store.change((parts) => addPart(parts, lens('A')));
    expect(names(openTab())).toEqual(['from elsewhere', 'A']);
  });

  it.each(['writing', 'all'] as const)('works until the page closes where the browser blocks %s', (what) => {
    const { openTab, block } = openBrowser();
    block(what);
    const store = openTab();
    expect(store.trouble()).toBe('');
    store.change((parts) => addPart(parts, lens('A')));
    store.change((parts) => addPart(parts, lens('B')));
    store.change((parts) => removePart(parts, 'lens', 'A'));
    expect(names(store)).toEqual(['B']);
    expect(store.trouble()).toMatch(
      /keeps nothing for this page .* until the page closes\. Save it to a file/,
    );
    expect(names(openTab())).toEqual([]);
    block('no');
    store.change((parts) => addPart(parts, lens('C')));
    expect([store.trouble(), names(openTab())]).toEqual(['', ['B', 'C']]);
  });

  it('keeps its own list while it could not be written, whatever other tabs do', () => {
    const { openTab, block, clear } = openBrowser();
    const store = openTab();
    block('writing');
    store.change((parts) => addPart(parts, lens('A')));
    clear();
    expect(names(store)).toEqual(['A']);
  });

  it('sets aside a list that it cannot read, and says so', () => {
    const { openTab, texts } = openBrowser();
    texts.set(storageKey, '{"format": "stepwell-parts", "version": 99, "parts": []}');
    const store = openTab();
    expect(store.value()).toEqual([]);
    expect(store.trouble()).toMatch(/cannot be read; .* 'list in this browser' is version 99/);
    expect([...texts.keys()]).toEqual([storageKey]);
    store.change((parts) => addPart(parts, lens('A')));
    expect([store.trouble(), names(openTab())]).toEqual(['', ['A']]);
    expect(texts.get(asideKey)).toContain('"version": 99');
  });
});
