import { describe, expect, it } from 'vitest';
import type { Keeping } from '../../../notebooks/page/keeping/keeping.ts';
import type { NoticeAction, Notices } from '../../../notebooks/page/keeping/notices.ts';
import { keepPages, type PagesWindow } from '../../../notebooks/page/takenAlong/keepPages.ts';
import {
  newerElsewhere,
  newerWords,
  takenAlongWords,
} from '../../../notebooks/page/takenAlong/takenAlongWords.ts';

/** A worker that waits, and notes what is said to it. */
interface Waiting {
  readonly said: unknown[];
  postMessage(message: unknown): void;
}

/** A browser with or without a former version, as far as the keeping of the pages sees it. */
function openBrowser({ former = true, refuses = false, trouble = '' } = {}) {
  const said: unknown[] = [];
  const waiting: Waiting = { said, postMessage: (message) => said.push(message) };
  const found = Object.assign(new EventTarget(), {
    waiting: undefined as Waiting | undefined,
    installing: undefined as (EventTarget & { state: string }) | undefined,
  });
  let becomeReady = () => {};
  const ready = new Promise<void>((resolve) => {
    becomeReady = resolve;
  });
  const serviceWorker = Object.assign(new EventTarget(), {
    controller: former ? {} : null,
    ready,
    register: () => (refuses ? Promise.reject(new Error('refused')) : Promise.resolve(found)),
  });
  const steps: string[] = [];
  const window = {
    navigator: { serviceWorker },
    isSecureContext: true,
    location: { reload: () => steps.push('loaded again') },
  } as unknown as PagesWindow;
  const shown = new Map<string, { text: string; actions: readonly NoticeAction[] }>();
  const notices = {
    show: (topic: string, text: string, actions: readonly NoticeAction[] = []) => {
      shown.set(topic, { text, actions });
      return () => {};
    },
  } as unknown as Notices;
  const keeping = {
    status: () => ({ trouble }),
    flush: async () => void steps.push('written'),
  } as unknown as Keeping;
  const newVersion = async () => {
    const installing = Object.assign(new EventTarget(), { state: 'installing' });
    found.installing = installing;
    found.dispatchEvent(new Event('updatefound'));
    installing.state = 'installed';
    found.waiting = waiting;
    installing.dispatchEvent(new Event('statechange'));
    await settle();
  };
  const takesOver = () => serviceWorker.dispatchEvent(new Event('controllerchange'));
  return { window, notices, keeping, shown, steps, said, becomeReady, newVersion, takesOver, found, waiting };
}

const settle = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('the pages in the browser', () => {
  it('are told of as they come', async () => {
    const { window, keeping, notices, becomeReady } = openBrowser({ former: false });
    const pages = keepPages(window, 'production', keeping, notices);
    const heard: string[] = [];
    pages.onTaken(() => heard.push(pages.taken()));
    expect(pages.taken()).toBe('coming');
    becomeReady();
    await settle();
    expect(heard).toEqual(['kept']);
  });

  it('are not promised where the browser refuses, cannot, or may not', async () => {
    const refusing = openBrowser({ refuses: true });
    const refused = keepPages(refusing.window, 'production', refusing.keeping, refusing.notices);
    await settle();
    expect(refused.taken()).toBe('network');

    const { window, keeping, notices } = openBrowser();
    const taken = (other: object, mode = 'production') =>
      keepPages({ ...window, ...other }, mode, keeping, notices).taken();
    expect(taken({ navigator: {} })).toBe('network');
    expect(taken({ navigator: {}, isSecureContext: false })).toBe('insecure');
    expect(taken({}, 'development'), 'pages in the making change under the hand').toBe('network');
    expect(taken({}, 'single')).toBe('file');
  });
});

describe('a newer version', () => {
  it('is offered, and taken only when asked for, after the design is written', async () => {
    const { window, keeping, notices, shown, steps, said, newVersion, takesOver } = openBrowser();
    keepPages(window, 'production', keeping, notices);
    await settle();
    await newVersion();
    expect(shown.get('newer')!.text).toBe(newerWords(true));
    expect([said, steps]).toEqual([[], []]);
    shown.get('newer')!.actions[0]!.act();
    await settle();
    expect(said).toEqual([{ type: 'SKIP_WAITING' }]);
    takesOver();
    expect(steps).toEqual(['written', 'loaded again']);
  });

  it('that waits already is offered at once, with a warning where no design is kept', async () => {
    const { window, keeping, notices, shown, found, waiting } = openBrowser({ trouble: 'nothing is kept' });
    found.waiting = waiting;
    keepPages(window, 'production', keeping, notices);
    await settle();
    expect(shown.get('newer')!.text).toBe(newerWords(false));
  });

  it('taken in another tab does not load this one again', async () => {
    const { window, keeping, notices, shown, steps, takesOver } = openBrowser();
    keepPages(window, 'production', keeping, notices);
    await settle();
    takesOver();
    expect(shown.get('newer')!.text).toBe(newerElsewhere);
    expect(steps).toEqual([]);
    shown.get('newer')!.actions[0]!.act();
    expect(steps).toEqual(['loaded again']);
  });

  it('is not spoken of at the first visit', async () => {
    const { window, keeping, notices, shown, newVersion, takesOver } = openBrowser({ former: false });
    keepPages(window, 'production', keeping, notices);
    await settle();
    await newVersion();
    takesOver();
    expect(shown.size).toBe(0);
  });
});

it('what the start page says is of that case alone', () => {
  const cases = ['file', 'coming', 'kept', 'insecure', 'network'] as const;
  const words = cases.map(takenAlongWords);
  for (const text of words) expect(text).toMatch(/^[A-Z].*\.$/);
  for (const text of words) expect(text).toContain('Nothing you enter leaves this');
  expect(words.filter((text) => /\bopens? .*without network/.test(text))).toHaveLength(3);
  expect(takenAlongWords('network')).not.toContain('without network');
});
