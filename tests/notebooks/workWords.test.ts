import { describe, expect, it } from 'vitest';
import { blockQuantities } from '../../notebooks/blockQuantities.ts';
import { documents } from '../../notebooks/contents.ts';
import type { Work } from '../../notebooks/page/heavy/work.ts';
import { workNews, workWords } from '../../notebooks/page/workWords.ts';

const work = (id: string, state: Work['state'], part?: number): Work => ({
  id,
  name: `fit ${id}`,
  state,
  part,
  since: 0,
  pressed: false,
});

describe('what a block says of long work', () => {
  it.each([
    [
      'with the part that is told',
      [work('a', 'working', 0.409)],
      'Being worked out: 40\u202f%',
      'Stop: fit a',
    ],
    ['never quite done', [work('a', 'working', 1)], 'Being worked out: 99\u202f%', 'Stop: fit a'],
    ['at its start', [work('a', 'working', 0)], 'Being worked out: 0\u202f%', 'Stop: fit a'],
    ['without a part', [work('a', 'working')], 'Being worked out', 'Stop: fit a'],
    ['behind other work', [work('a', 'waiting')], 'Waiting to be worked out', 'Stop: fit a'],
    [
      'what runs comes first, and the button stops all',
      [work('a', 'waiting'), work('b', 'stopped'), work('c', 'working', 0.5)],
      'Being worked out: 50\u202f%',
      'Stop: fit a, fit c',
    ],
    [
      'after a stop',
      [work('a', 'stopped'), work('b', 'stopped')],
      'Stopped before it was worked out',
      'Work it out: fit a, fit b',
    ],
  ])('%s', (_name, works, text, label) => {
    const words = workWords(works);
    expect([words.text, words.label]).toEqual([text, label]);
    expect(label.startsWith(words.button)).toBe(true);
    expect(words.acts.what).toBe(words.button === 'Stop' ? 'stop' : 'workOut');
    const ids = works.map(({ id }) => id);
    expect(words.acts.on.map((id) => `fit ${id}`).join(', ')).toBe(label.split(': ')[1]);
    expect(ids).toEqual(expect.arrayContaining([...words.acts.on]));
  });

  it('says aloud once what begins, what was stopped and what has come, and no progress', () => {
    const [begun, further, stopped] = [work('a', 'working'), work('a', 'working', 0.5), work('a', 'stopped')];
    expect(workNews([], [begun], [begun])).toBe('Being worked out: fit a.');
    expect(workNews([begun], [further], [further])).toBe('');
    expect(workNews([further], [stopped], [stopped])).toBe('Stopped: fit a.');
    expect(workNews([stopped], [begun], [begun])).toBe('Being worked out: fit a.');
    expect(workNews([further], [], [])).toBe('Worked out: fit a.');
    expect(workNews([further], [], [further]), 'an answer older than the design has come').toBe('');
    expect(workNews([stopped], [], []), 'it was not worked out').toBe('');
    expect(workNews([further], [work('b', 'working')], [work('b', 'working')])).toBe(
      'Being worked out: fit b. Worked out: fit a.',
    );
  });
});

it('every kind of block in the documents that shows values names them', () => {
  const blocks = documents.flatMap((document) => document.blocks);
  for (const block of blocks.filter(({ kind }) => /^(figure|figures|choices|rows|question)$/.test(kind)))
    expect(blockQuantities(block).length, block.id).toBeGreaterThan(0);
  const said = blocks.find(({ id }) => id === 'ladder-said')!;
  expect(blockQuantities(said).map(({ id }) => id)).toContain('ladder.fit');
});
