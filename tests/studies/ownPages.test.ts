import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { longestText, mostOwnBlocks, mostOwnDocuments } from '../../lib/design/savedWritings.ts';
import { initialState } from '../../lib/graph/state.ts';
import type { OwnBlock } from '../../lib/graph/studies.ts';
import { longestTitle } from '../../lib/studies/freshNames.ts';
import {
  addPage,
  addPiece,
  changePiece,
  duplicatePage,
  movePiece,
  ownPagesOf,
  pageOf,
  renamePage,
  takeOutPage,
  takeOutPiece,
} from '../../lib/studies/ownPages.ts';

const text = (words: string): OwnBlock => ({ kind: 'text', text: words });
const empty = initialState(designGraph);
const { design: one, page } = addPage(empty, '  A  page ', ['a', 'b', 'c'].map(text));
type Design = Parameters<typeof pageOf>[0];
const wordsOf = (design: Design, id = page.id) =>
  pageOf(design, id)
    .blocks.map((block) => (block.kind === 'text' ? block.text : ''))
    .join('');

describe('pages of one’s own', () => {
  it('get a title in one line and an id that none has', () => {
    expect(page).toMatchObject({ id: 'page1', title: 'A page' });
    const two = addPage(one, 'Another').design;
    const third = addPage(takeOutPage(two, 'page1'), 'Third');
    expect(ownPagesOf(third.design).map(({ id }) => id)).toEqual(['page2', 'page3']);
    expect(() => addPage(one, '  ')).toThrow(/title of the page is empty/);
    expect(() => addPage(one, 'x'.repeat(longestTitle + 1))).toThrow(/signs/);
  });

  it('are renamed, duplicated under a free title, and taken out', () => {
    expect(pageOf(renamePage(one, page.id, 'New'), page.id).title).toBe('New');
    const twice = duplicatePage(one, page.id);
    expect(twice.page).toMatchObject({ title: 'A page (2)', blocks: page.blocks });
    expect(duplicatePage(twice.design, page.id).page.title).toBe('A page (3)');
    const long = addPage(empty, 'x'.repeat(longestTitle));
    expect(duplicatePage(long.design, long.page.id).page.title.length).toBeLessThanOrEqual(longestTitle);
    expect(ownPagesOf(takeOutPage(one, page.id))).toEqual([]);
    expect(() => renamePage(empty, page.id, 'New')).toThrow(/taken out/);
  });

  it('hold pieces in the order in which they are put', () => {
    expect(wordsOf(addPiece(one, page.id, 1, text('x')))).toBe('axbc');
    expect(wordsOf(addPiece(one, page.id, 3, text('x')))).toBe('abcx');
    expect(wordsOf(changePiece(one, page.id, 1, text('x')))).toBe('axc');
    expect(wordsOf(takeOutPiece(one, page.id, 0))).toBe('bc');
    expect(wordsOf(movePiece(one, page.id, 0, 2))).toBe('bca');
    expect(wordsOf(movePiece(one, page.id, 2, 1))).toBe('acb');
  });

  it('moving beyond the ends changes nothing at all, so that it is no step', () => {
    for (const [from, to] of [
      [0, -1],
      [2, 3],
      [1, 1],
    ] as const)
      expect(movePiece(one, page.id, from, to)).toBe(one);
  });

  it('pieces that do not change stay the same objects', () => {
    const [, second] = page.blocks;
    expect(pageOf(movePiece(one, page.id, 1, 0), page.id).blocks[0]).toBe(second);
  });

  it('too many pages, pieces and signs are refused', () => {
    let many: Design = empty;
    for (let i = 0; i < mostOwnDocuments; i++) many = addPage(many, `Page ${i}`).design;
    expect(() => addPage(many, 'One more')).toThrow(/no more fit/);
    const full = addPage(
      empty,
      'Full',
      Array.from({ length: mostOwnBlocks }, () => text('x')),
    );
    expect(() => addPiece(full.design, full.page.id, 0, text('y'))).toThrow(/no more fit/);
    const long = 'x'.repeat(longestText + 1);
    expect(() => addPiece(one, page.id, 0, text(long))).toThrow(/text has 20001 signs/);
    const captioned: OwnBlock = { kind: 'equation', id: 'spot.width', caption: long };
    expect(() => changePiece(one, page.id, 0, captioned)).toThrow(/caption has/);
  });
});
