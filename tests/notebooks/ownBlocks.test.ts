import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import type { OwnBlock } from '../../lib/graph/studies.ts';
import { ownGraph } from '../../lib/studies/ownGraph.ts';
import { blockChoices, hasAxes } from '../../notebooks/blockChoices.ts';
import { blockNames } from '../../notebooks/blockNames.ts';
import { blockQuantities } from '../../notebooks/blockQuantities.ts';
import { documents } from '../../notebooks/contents.ts';
import type { FigureBlock } from '../../notebooks/document.ts';
import { matching } from '../../notebooks/matching.ts';
import { isShowable, type OwnContent, ownBlockToBlock, ownContents } from '../../notebooks/ownBlocks.ts';
import { pieceWords } from '../../notebooks/pieceWords.ts';
import { readValues } from '../../notebooks/prose.ts';
import { proseText } from '../../notebooks/slotPieces.ts';
import { line } from '../studies/ownOnes.ts';

const { graph } = ownGraph(designGraph, [line('twice', '2 * lens.focalLength'), line('bad', '1 +')]);
const engine = createEngine(graph);
const outcomeOf = ({ id }: { readonly id: string }) => engine.evaluate([id])[id]!;
const content = (piece: OwnBlock) => ownBlockToBlock(graph, documents, piece, 'own-1');

function blockOf(one: OwnContent) {
  return one.kind === 'block' ? one.block : expect.fail(JSON.stringify(one));
}
function problemOf(piece: OwnBlock): string {
  const one = content(piece);
  return one.kind === 'problem' ? one.message : expect.fail(`${one.kind} and no problem`);
}

const over = { id: 'lens.focalLength', unit: 'm', from: 0.05, to: 0.2, count: 5, by: 'steps' } as const;

describe('pieces of own pages', () => {
  it('every block of every document can stand on one, and shows what it shows there', () => {
    let figures = 0;
    for (const document of documents)
      for (const block of document.blocks.filter(isShowable)) {
        const made = blockOf(content({ kind: 'block', document: document.id, block: block.id }));
        expect([made.kind, made.id]).toEqual([block.kind, 'own-1']);
        expect(new Set(blockQuantities(made))).toEqual(new Set(blockQuantities(block)));
        if (block.kind === 'figure') figures += 1;
      }
    expect(figures).toBeGreaterThan(20);
  });

  it('a chart has the title and the ends that the person gave, and else all of its own', () => {
    const block = matching.blocks.find(({ id }) => id === 'profile') as FigureBlock;
    const read = readValues(block.from, outcomeOf);
    if (!('values' in read)) expect.fail(read.problem.message);
    const piece: OwnBlock = { kind: 'block', document: 'matching', block: 'profile' };
    const view = (own: OwnBlock) => (blockOf(content(own)) as FigureBlock).view(read.values);
    expect(view(piece)).toEqual(block.view(read.values));
    const own = view({ ...piece, title: 'Mine', x: [-5, 5] });
    expect([own.title, own.x.domain, own.y]).toEqual(['Mine', [-5, 5], block.view(read.values).y]);
  });

  it('values stand in a table, own ones too; what there is not is told of in its row', () => {
    const block = blockOf(content({ kind: 'values', ids: ['lens.focalLength', 'own.twice', 'no.such'] }));
    if (block.kind !== 'table') expect.fail(block.kind);
    const [first, second, third] = block.table.rows;
    expect([first![1], second![1]]).toEqual(
      ['lens.focalLength', 'own.twice'].map((id) => graph.quantities.get(id)),
    );
    expect(third![0]).toBe('There is no number ‘no.such’.');
  });

  it('inputs stand side by side, and results cannot be set', () => {
    const block = blockOf(content({ kind: 'controls', ids: ['lens.focalLength'], title: 'Try it' }));
    expect(block).toMatchObject({
      kind: 'controls',
      heading: 'Try it',
      inputs: [{ id: 'lens.focalLength' }],
    });
    expect(problemOf({ kind: 'controls', ids: ['spot.width'] })).toMatch(/spot width follows from other/);
    expect(problemOf({ kind: 'controls', ids: ['own.gone'] })).toMatch(/no number ‘own\.gone’/);
  });

  it('a formula stands with what goes in and the values of today', () => {
    const said = (id: string) => {
      const block = blockOf(content({ kind: 'equation', id }));
      return block.kind === 'prose' ? proseText(block.prose, outcomeOf) : expect.fail(block.kind);
    };
    expect(said('own.twice')).toContain('Today 200\u202fmm, with');
    expect(said('own.twice')).toContain('focal length: 100\u202fmm');
    expect(said('lens.focalLength')).toMatch(/100\u202fmm, focal length\./);
    // Every quantity has one.
    for (const { id } of graph.order) expect(blockOf(content({ kind: 'equation', id })).kind).toBe('prose');
  });

  it('a chart over an input is planned as it is varied', () => {
    const one = content({ kind: 'chart', over, ids: ['spot.width', 'own.twice'], caption: 'So.' });
    if (one.kind !== 'chart') expect.fail(one.kind);
    expect(one.caption).toBe('So.');
    const [axis] = one.plan.axes;
    expect(axis.values).toEqual([0.05, 0.0875, 0.125, 0.1625, 0.2].map((x) => expect.closeTo(x, 12)));
    expect(one.plan.results.map(({ id }) => id)).toEqual(['spot.width', 'own.twice']);
  });

  it('what cannot be shown says why', () => {
    const problems: readonly (readonly [OwnBlock, RegExp])[] = [
      [{ kind: 'block', document: 'matching', block: 'no-such' }, /‘no-such’ of ‘Matching/],
      [{ kind: 'block', document: 'no-such', block: 'x' }, /is not there in this program/],
      [{ kind: 'block', document: 'own-pages', block: 'own-pages-list' }, /is not there/],
      [{ kind: 'equation', id: 'no.such' }, /no number ‘no\.such’/],
      [{ kind: 'chart', over, ids: [] }, /needs a number/],
      [{ kind: 'chart', over, ids: ['plate.glass'] }, /needs a number/],
      [{ kind: 'chart', over: { ...over, id: 'spot.width' }, ids: ['spot.width'] }, /runs over an input/],
      [{ kind: 'chart', over: { ...over, unit: 'J' }, ids: ['spot.width'] }, /set them again/],
      [{ kind: 'chart', over: { ...over, to: 0.01 }, ids: ['spot.width'] }, /below the second/],
      [{ kind: 'chart', over: { ...over, to: 1e9 }, ids: ['spot.width'] }, /focal length/i],
      [{ kind: 'chart', over: { ...over, from: -1, by: 'factors' }, ids: ['spot.width'] }, /above 0/],
    ];
    for (const [piece, words] of problems) expect(problemOf(piece)).toMatch(words);
  });

  it('a tool works once on a page', () => {
    const tool: OwnBlock = { kind: 'block', document: 'what-if', block: 'compare-table' };
    const kinds = ownContents(graph, documents, [tool, tool], (_, i) => `own-${i}`).map(({ kind }) => kind);
    expect(kinds).toEqual(['block', 'problem']);
  });

  it('are told apart in a few words', () => {
    const words = (piece: OwnBlock) => pieceWords(graph, documents, piece);
    expect(words({ kind: 'text', text: '# Why **this** spot' })).toBe('Text: Why this spot');
    expect(words({ kind: 'text', text: 'Before it.\n\n## A heading\n\nMore.' })).toBe('Text: A heading');
    expect(
      words({ kind: 'text', text: 'Twelve short words stand here, and more than forty signs of them.' }),
    ).toBe('Text: Twelve short words stand here, and more …');
    expect(words({ kind: 'text', text: '  ' })).toBe('Text');
    expect(words({ kind: 'block', document: 'matching', block: 'profile' })).toBe(
      'Chart: Fluence across the spot, from ‘Matching beam and plate’',
    );
    expect(words({ kind: 'values', ids: ['spot.width', 'no.such'] })).toBe('Values: spot width and no.such');
    expect(words({ kind: 'controls', ids: ['lens.focalLength'] })).toBe('Inputs: focal length');
    expect(words({ kind: 'equation', id: 'spot.width' })).toBe('Formula: spot width');
    expect(words({ kind: 'chart', over, ids: ['spot.width'] })).toBe('Chart: spot width over focal length');
    expect(words({ kind: 'chart', over, ids: ['spot.width'], title: 'Mine' })).toBe('Mine');
  });
});

describe('blocks to choose from', () => {
  it('each document gives all of its blocks, told apart by their labels', () => {
    for (const document of documents) {
      const choices = blockChoices(document);
      expect(choices.map(({ id }) => id)).toEqual(document.blocks.filter(isShowable).map(({ id }) => id));
      const labels = choices.map(({ label }) => label);
      expect(new Set(labels).size, labels.join('\n')).toBe(labels.length);
      for (const label of labels) {
        expect(label).toMatch(/^[A-Z][a-z]+: \S/);
        expect(label).not.toMatch(/undefined|^\w+: …/);
      }
    }
  });

  it('no label is an id, and every name is used', () => {
    const all = documents.flatMap((document) => {
      const labels = new Map(blockChoices(document).map(({ id, label }) => [id, label]));
      return [...labels].map(([id, label]) => ({
        document: document.id,
        id,
        words: label.replace(/^\w+: /, ''),
      }));
    });
    const plain = ({ id, words }: (typeof all)[number]) =>
      words.replace(/ \(\d+\)$/, '') === id.replaceAll('-', ' ');
    expect(all.filter(plain)).toEqual([]);
    const used = ([key, name]: readonly [string, string]) =>
      all.some(({ document, id, words }) => [id, `${document}/${id}`].includes(key) && words === name);
    expect(Object.entries(blockNames).filter((entry) => !used(entry))).toEqual([]);
    const ownNames = Object.values(blockNames);
    expect(ownNames.filter((name) => name.length > 50 || !/^[A-Z]/.test(name))).toEqual([]);
  });

  it('charts have axes', () => {
    const kinds = documents.flatMap(({ blocks }) => blocks.filter(hasAxes).map(({ kind }) => kind));
    expect(new Set(kinds)).toEqual(new Set(['figure', 'figures']));
    expect(hasAxes(undefined)).toBe(false);
  });
});
