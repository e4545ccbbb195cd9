import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { mostSlots, ownProse } from '../../notebooks/ownProse.ts';
import type { Prose, ProseNode } from '../../notebooks/prose.ts';
import { neededQuantities } from '../../notebooks/prose.ts';
import { proseText } from '../../notebooks/slotPieces.ts';
import { cases } from '../cases.ts';

const engine = createEngine(designGraph);
const outcomeOf = ({ id }: { readonly id: string }) => engine.evaluate([id])[id]!;
const read = (text: string) => ownProse(designGraph, text);
const said = (text: string) => proseText(read(text), outcomeOf).trim();

function tagsOf({ nodes }: Prose): string[] {
  const tags = (node: ProseNode): string[] =>
    'tag' in node ? [node.tag, ...node.children.flatMap(tags)] : [];
  return nodes.flatMap(tags);
}

function linksOf({ nodes }: Prose): string[] {
  const links = (node: ProseNode): string[] =>
    'tag' in node ? [...(node.href === undefined ? [] : [node.href]), ...node.children.flatMap(links)] : [];
  return nodes.flatMap(links);
}

describe('text of a person', () => {
  it('holds values of today where ids stand in braces', () => {
    const quantity = designGraph.quantities.get('lens.focalLength')!;
    const value = shownValue(quantity, { value: designGraph.initial['lens.focalLength'] });
    expect(said('The lens: {lens.focalLength}.')).toBe(`The lens: ${value}.`);
    expect(said('**{lens.focalLength}** and `{lens.focalLength}`')).toBe(`${value} and ${value}`);
  });

  it('an id that there is not is told of in words, with the nearest', () => {
    expect(said('It is {lens.focalLenght} long.')).toBe(
      'It is (there is no number ‘lens.focalLenght’; did you mean lens.focalLength?) long.',
    );
    expect(said('{zzz.qqqqqqqqq}')).toMatch(/^\(there is no number ‘zzz\.qqqqqqqqq’/);
    expect(said('{own.gone}')).toMatch(/no number ‘own\.gone’/);
  });

  it('a paragraph stands although a value in it is missing', () => {
    const prose = read('Words and {lens.focalLength}.');
    expect(neededQuantities(prose)).toEqual([]);
  });

  it('equations stand between dollars, in the line and large; prices and escaped dollars are none', () => {
    const texOf = (text: string) =>
      read(text).slots.map((slot) => (slot.slot === 'math' ? slot.tex : slot.slot));
    expect(texOf('as $w_0 = \\frac{a}{b}$ says')).toEqual(['w_0 = \\frac{a}{b}']);
    expect(texOf('$$E = mc^2$$')).toEqual(['\\displaystyle E = mc^2']);
    for (const plain of ['from $5 to $6', 'a \\$b\\$ c', '$ a $', '$$', '$a\n\nb$', '$'])
      expect(texOf(plain), plain).toEqual([]);
    expect(said('a \\$b\\$ c')).toBe('a $b$ c');
  });

  it('headings begin below the title of the page, without gaps', () => {
    expect(tagsOf(read('# A\n\n### B\n\n###### C\n\n####### d'))).toEqual(['h2', 'h3', 'h4', 'p']);
    expect(tagsOf(read('### Only'))).toEqual(['h2']);
  });

  it('points of a list, tables and quotations are what they are in Markdown', () => {
    expect(tagsOf(read('- a\n- b\n  - c'))).toEqual(['ul', 'li', 'li', 'ul', 'li']);
    expect(tagsOf(read('| a |\n|---|\n| {lens.focalLength} |'))).toContain('td');
    expect(tagsOf(read('> so'))).toEqual(['blockquote', 'p']);
  });

  it('links lead to web pages and mail only', () => {
    expect(linksOf(read('[a](https://example.org) [b](mailto:a@example.org)'))).toEqual([
      'https://example.org',
      'mailto:a@example.org',
    ]);
    for (const address of [
      'javascript:alert(1)',
      'JAVASCRIPT:alert(1)',
      ' javascript:alert(1)',
      'java\tscript:alert(1)',
      '&#106;avascript:alert(1)',
      'data:text/html,<script>',
      'data:image/svg+xml,<svg>',
      'vbscript:x',
      'file:///etc/passwd',
      '//example.org',
      '#design=x',
      'blob:x',
    ])
      expect(linksOf(read(`[a](${address}) <${address}> [b]: ${address}\n\n[b]`)), address).toEqual([]);
  });

  it('an address loses the places of values', () => {
    expect(linksOf(read('[a](https://example.org/{lens.focalLength}/x)'))).toEqual([
      'https://example.org//x',
    ]);
  });
});

/** Tags that a text may come to. */
const harmless = new Set(
  'p h2 h3 h4 ul ol li strong em s code a br hr blockquote table thead tbody tr th td'.split(' '),
);

describe('hostile text', () => {
  const hostile: readonly string[] = [
    '<script>alert(1)</script>',
    '<img src=x onerror=alert(1)>',
    '![x](https://example.org/x.png) ![y](javascript:alert(1))',
    '<svg/onload=alert(1)>',
    '<iframe src="https://example.org"></iframe>',
    '\uE0000\uE001 \uE00099999\uE001 {lens.focalLength}',
    '\uE000{lens.focalLength}\uE001',
    `${'{'.repeat(5000)}lens.focalLength${'}'.repeat(5000)}`,
    '{{lens.focalLength}} {__proto__} {constructor} {toString} {hasOwnProperty}',
    `${'>'.repeat(3000)} deep`,
    `${'- '.repeat(2000)}x`,
    `${'*'.repeat(20000)}`,
    `${'['.repeat(9000)}a${']('.repeat(500)}`,
    `${'$'.repeat(20001)}`,
    `${'$a'.repeat(10000)}`,
    '$\\href{javascript:alert(1)}{x}$',
    `$${'x'.repeat(5000)}$`,
    '{lens.focalLength}'.repeat(2000),
    '`'.repeat(10000),
    '|a'.repeat(3000),
    '\u0000\u202e\ud800',
  ];

  it('comes to plain words, whatever it holds', () => {
    for (const text of hostile) {
      const prose = read(text);
      for (const tag of tagsOf(prose)) expect(harmless, text.slice(0, 40)).toContain(tag);
      expect(prose.slots.length).toBeLessThanOrEqual(mostSlots);
      expect(() => proseText(prose, outcomeOf)).not.toThrow();
    }
    expect(said('<script>alert(1)</script>')).toBe('<script>alert(1)</script>');
    expect(said('`{__proto__}` x')).toBe('{__proto__} x');
    expect(linksOf(read('[a]()'))).toEqual([]);
    expect(said('{constructor}')).toMatch(/no number ‘constructor’/);
  });

  it('marks of slots cannot be typed', () => {
    const prose = read('\uE0000\uE001{lens.focalLength}\uE0005\uE001');
    expect(prose.slots).toHaveLength(1);
    const used = JSON.stringify(prose.nodes).match(/"slotIndex":\d+/g);
    expect(used).toEqual(['"slotIndex":0']);
  });

  it('every place of a slot has its slot, for texts thrown together', () => {
    const random = createRandom(8);
    const parts = [
      ...hostile.map((text) => text.slice(0, 30)),
      '\n\n',
      '# ',
      '- ',
      '{spot.width}',
      '$x$',
      '$',
      '[a](',
      ')',
      '|',
      '**',
    ];
    for (let i = 0; i < cases(2000, 200); i++) {
      const text = Array.from({ length: 12 }, () => parts[Math.floor(random.between(0, parts.length))]).join(
        '',
      );
      const { nodes, slots } = read(text);
      for (const [, index] of JSON.stringify(nodes).matchAll(/"slotIndex":(\d+)/g))
        expect(slots[Number(index)], text).toBeDefined();
      expect(JSON.stringify(nodes)).not.toMatch(/[\uE000\uE001]/);
      for (const link of linksOf({ nodes, slots })) expect(link).toMatch(/^(https?:\/\/|mailto:)/i);
    }
  });
});
