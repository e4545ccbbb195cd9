import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { kindWords, searchQuantities } from '../../notebooks/quantitySearch.ts';

const all = [...designGraph.quantities.values()];
const ids = (typed: string, most = 5) => searchQuantities(all, typed, most).map(({ id }) => id);

describe('finding quantities', () => {
  it('every quantity is the first that its own id finds', () => {
    for (const { id } of all) expect(ids(id, 1)).toEqual([id]);
  });

  it('every quantity is found by its name, capitals and spaces aside', () => {
    for (const { id, name } of all) expect(ids(`  ${name.toUpperCase()} `, all.length), name).toContain(id);
  });

  it('the words may stand in any order, and in the description', () => {
    expect(ids('width spot')[0]).toBe('spot.width');
    const { id, about } = all.find(({ about }) => about.split(' ').length > 6)!;
    expect(ids(about.split(' ').slice(-3).join(' '), all.length)).toContain(id);
  });

  it('nothing is found for nothing, and for what there is not', () => {
    expect(ids('')).toEqual([]);
    expect(ids('   ')).toEqual([]);
    expect(ids('zebra crossing')).toEqual([]);
  });

  it('finds as many as asked for at most', () => {
    expect(ids('e', 3)).toHaveLength(3);
  });

  it('says what each is', () => {
    expect(kindWords(designGraph.quantities.get('lens.focalLength')!)).toBe('input');
    expect(kindWords(designGraph.quantities.get('spot.width')!)).toBe('result');
    expect(kindWords(all.find(({ kind }) => kind === 'constant')!)).toBe('constant');
    expect(kindWords({ ...all[0]!, id: 'own.x' })).toBe('own quantity');
  });
});
