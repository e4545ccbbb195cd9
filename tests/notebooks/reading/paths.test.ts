import { describe, expect, it } from 'vitest';
import { documents } from '../../../notebooks/contents.ts';
import { shippedLectures } from '../../../notebooks/lectures/shipped.ts';
import { lessons } from '../../../notebooks/lessons/lessons.ts';
import { createReadStore, readKey } from '../../../notebooks/page/reading/readStore.ts';
import {
  documentOf,
  lessonsAt,
  pathMinutes,
  pathsThrough,
  readingPaths,
  timeSaid,
} from '../../../notebooks/reading/paths.ts';

describe('ways through the pages', () => {
  it('are three, and each goes through every document once', () => {
    expect(readingPaths.map(({ id }) => id).sort()).toEqual(['lecturer', 'newcomer', 'researcher']);
    const all = documents.map(({ id }) => id).filter((id) => id !== 'reading');
    for (const { id, stops } of pathsThrough(documents)) {
      const visited = stops.map(({ to }) => documentOf(to));
      expect([...visited].sort(), id).toEqual([...all].sort());
    }
  });

  it('lead to a lecture that there is', () => {
    const given = readingPaths.flatMap(({ stops }) => stops.map(({ to }) => to.split('/')));
    for (const [name, within] of given)
      if (within !== undefined) {
        expect(name).toBe('lectures');
        expect(shippedLectures.map(({ id }) => id)).toContain(within);
      }
  });

  it('take a newcomer through each lesson once, at the page that it belongs to, widths first', () => {
    const { stops } = readingPaths.find(({ id }) => id === 'newcomer')!;
    const taken = stops.flatMap(lessonsAt).map(({ id }) => id);
    expect([...taken].sort()).toEqual(lessons.map(({ id }) => id).sort());
    expect(taken[0]).toBe('width-words');
    const pageOf = (lesson: string) => stops.find(({ lessons: ids = [] }) => ids.includes(lesson))!.to;
    expect(pageOf('threshold-plot')).toBe('threshold');
    expect(pageOf('ripple-period')).toBe('ripples');
    expect(pageOf('pulses-and-dose')).toBe('throughput');
  });

  it('count the time of the lessons as the lessons say it', () => {
    const all = lessons.reduce((sum, { minutes }) => sum + minutes, 0);
    for (const path of readingPaths) {
      const pages = path.stops
        .filter(({ to }) => to !== 'lessons')
        .reduce((sum, { minutes }) => sum + minutes, 0);
      const { minutes } = path.stops.find(({ to }) => to === 'lessons')!;
      if (path.id === 'newcomer') expect(pathMinutes(path)).toBe(pages + minutes + all);
      else expect(minutes).toBe(all);
    }
  });

  it('say why at each stop, and how long', () => {
    for (const { about, stops } of readingPaths) {
      expect(about).toMatch(/\.$/);
      for (const { to, why, minutes } of stops) {
        expect(why).toMatch(/^[A-Z].*\.$/);
        expect(minutes).toBeGreaterThan(0);
        if (to !== 'lessons') expect(minutes).toBeLessThanOrEqual(60);
      }
    }
  });

  it('stand before all else for learning', () => {
    expect(documents.filter(({ learning }) => learning)[0]!.id).toBe('reading');
  });

  it('round their time', () => {
    expect(timeSaid(25)).toBe('about 25 minutes');
    expect(timeSaid(89)).toBe('about 89 minutes');
    expect(timeSaid(120)).toBe('about 2 hours');
    expect(timeSaid(205)).toBe('about 3½ hours');
  });
});

function storage(first?: string) {
  let text: string | null = first ?? null;
  return {
    localStorage: {
      getItem: (key: string) => (key === readKey ? text : null),
      setItem: (_: string, value: string) => {
        text = value;
      },
      removeItem: () => {
        text = null;
      },
    } as unknown as Storage,
    addEventListener: () => {},
    text: () => text,
  };
}

describe('what was read', () => {
  it('is kept, and can be forgotten', () => {
    const window = storage();
    const store = createReadStore(window);
    store.add('matching');
    store.add('matching');
    store.add('words');
    const again = createReadStore(window);
    expect([again.has('matching'), again.has('words'), again.has('ripples')]).toEqual([true, true, false]);
    again.forget();
    expect(createReadStore(window).has('matching')).toBe(false);
  });

  it('keeps what another tab has added', () => {
    const window = storage();
    const [one, other] = [createReadStore(window), createReadStore(window)];
    one.add('matching');
    other.add('ripples');
    expect(JSON.parse(window.text()!)).toEqual(['matching', 'ripples']);
  });

  it('begins anew where what is kept is not ours, and lasts with the page where nothing is kept', () => {
    for (const text of ['{', '{"a":1}', '[1,null]', '3'])
      expect(createReadStore(storage(text)).has('1')).toBe(false);
    const blocked = {
      get localStorage(): Storage {
        throw new Error('blocked');
      },
      addEventListener: () => {},
    };
    const store = createReadStore(blocked);
    store.add('matching');
    expect(store.has('matching')).toBe(true);
    store.forget();
    expect(store.has('matching')).toBe(false);
  });
});
