import { describe, expect, it } from 'vitest';
import type { OwnBlock } from '../../lib/graph/studies.ts';
import { placeAmong, type Writing, writingAmong } from '../../notebooks/page/studies/own/writings.ts';

const piece = (text: string): OwnBlock => ({ kind: 'text', text });
const [a, b, c] = [piece('a'), piece('b'), piece('c')];
const changing = (one: OwnBlock, place: number) => ({ place, piece: one, isNew: false });
const adding = (place: number) => ({ place, piece: undefined, isNew: true });

describe('what is written on a page', () => {
  it('follows its piece', () => {
    expect(placeAmong(changing(b, 1), [a, b, c], [b, c, a])).toEqual(changing(b, 0));
    expect(placeAmong(changing(b, 1), [a, b, c], [b])).toEqual(changing(b, 0));
  });

  it('belongs to a piece that was changed in its place', () => {
    const other = piece('b as it was');
    expect(placeAmong(changing(b, 1), [a, b, c], [a, other, c])).toEqual(changing(other, 1));
    const numbers: OwnBlock = { kind: 'values', ids: [] };
    expect(placeAmong(changing(b, 1), [a, b, c], [a, numbers, c]).isNew).toBe(true);
  });

  it('becomes a new piece where its piece has gone, and is that one again once it is back', () => {
    const gone = placeAmong(changing(b, 1), [a, b, c], [a, c]);
    expect(gone).toEqual({ place: 1, piece: b, isNew: true });
    expect(placeAmong(gone, [a, c], [a, b, c])).toEqual(changing(b, 1));
  });

  it('a new piece is below the same one again when that comes back', () => {
    const begun = { place: 2, blocks: [a, b, c] };
    const writing: Writing = { place: 2, piece: undefined, isNew: true, form: undefined, begun };
    const meanwhile = writingAmong(writing, [c]);
    expect(meanwhile.place).toBe(0);
    expect(writingAmong(meanwhile, [a, b, c]).place).toBe(2);
  });

  it('a piece that comes back with the very list it stood in is changed again', () => {
    const blocks = [a];
    const writing: Writing = { ...changing(a, 0), form: undefined, begun: { place: 0, blocks } };
    expect(writingAmong(writingAmong(writing, []), blocks)).toMatchObject(changing(a, 0));
  });

  it('what was written for a piece that has gone is never taken for another one', () => {
    const begun = { place: 0, blocks: [a] };
    const writing: Writing = { ...changing(a, 0), form: undefined, begun };
    expect(writingAmong(writingAmong(writing, []), [b]).isNew).toBe(true);
  });

  it('a new piece stays below the one that it was begun below', () => {
    expect(placeAmong(adding(2), [a, b, c], [b, a, c])).toEqual(adding(1));
    expect(placeAmong(adding(2), [a, b, c], [a, c])).toEqual(adding(1));
    expect(placeAmong(adding(2), [a, b], [])).toEqual(adding(0));
    expect(placeAmong(adding(1), [a, b], [c, a, b])).toEqual(adding(2));
  });
});
