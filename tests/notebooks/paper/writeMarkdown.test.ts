import { strFromU8, unzipSync } from 'fflate';
import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import { drawPaperPictures } from '../../../notebooks/command/paperPictures.ts';
import { figureCsv } from '../../../notebooks/page/figures/figureCsv.ts';
import { writeMarkdown } from '../../../notebooks/paper/writeMarkdown.ts';
import { blocks, hostile, samplePaper } from './samplePaper.ts';

const pictures = drawPaperPictures(samplePaper);
const zip = writeMarkdown(samplePaper, pictures, 'rationale');
const files = unzipSync(zip);
const text = strFromU8(files['rationale.md']!);
// As much as a reader may take for more than text: tags and bare addresses too.
const tokens = new MarkdownIt({ html: true, linkify: true }).parse(text, {});
const inline = tokens.flatMap((token) => token.children ?? []);
const contentAfter = (type: string) =>
  tokens.flatMap((token, index) =>
    token.type === type ? [(tokens[index + 1]!.children ?? []).map(({ content }) => content).join('')] : [],
  );

describe('a paper as Markdown with its figures', () => {
  it('holds the text, the sources, and three files for each figure', () => {
    const stems = ['figure-1-spot-across', 'figure-2-focus-map', 'figure-3-depth'];
    const figures = stems.flatMap((stem) =>
      ['csv', 'png', 'svg'].map((ending) => `figures/${stem}.${ending}`),
    );
    expect(Object.keys(files).sort()).toEqual([...figures, 'rationale.md', 'references.bib'].sort());
    for (const [index, block] of blocks.filter((other) => other.kind === 'figure').entries()) {
      const { svg, png } = pictures.get(block.id)!;
      expect(strFromU8(files[`figures/${stems[index]}.svg`]!)).toBe(svg);
      expect(files[`figures/${stems[index]}.png`]).toEqual(png);
      expect(strFromU8(files[`figures/${stems[index]}.csv`]!)).toBe(figureCsv(block.spec));
    }
  });

  it('reads back with its headings', () => {
    const headings = blocks.flatMap((block) => (block.kind === 'heading' ? [block.text] : []));
    expect(contentAfter('heading_open')).toEqual([samplePaper.title, ...headings, 'References']);
  });

  it('shows pictures that are in the zip, with what they show in words', () => {
    const images = inline.filter(({ type }) => type === 'image');
    expect(images).toHaveLength(3);
    for (const image of images) expect(Object.keys(files)).toContain(image.attrGet('src'));
    const summaries = blocks.flatMap((block) => (block.kind === 'figure' ? [block.spec.summary] : []));
    expect(images.map(({ content }) => content)).toEqual(summaries);
    for (const number of [1, 2, 3]) expect(text).toContain(`**Figure ${number}.** `);
  });

  it('reads back with its table: a bar or a dollar ends no cell', () => {
    expect(tokens.filter(({ type }) => type === 'th_open')).toHaveLength(4);
    expect(tokens.filter(({ type }) => type === 'tr_open')).toHaveLength(4);
    const cells = contentAfter('td_open');
    expect(cells).toHaveLength(12);
    expect(cells[8]).toBe('|bar| and $dollar$');
    expect(cells[9]).toBe('$\\left\\vert H\\right\\vert$');
    expect(cells[10]).toBe(hostile);
  });

  it('shows hostile text as text', () => {
    expect(tokens.filter(({ type }) => type === 'html_block')).toEqual([]);
    expect(inline.filter(({ type }) => type === 'html_inline' || type === 'code_inline')).toEqual([]);
    const links = inline.filter(({ type }) => type === 'link_open').map((link) => link.attrGet('href'));
    expect(links).toEqual(['https://doi.org/10.1364/AO.5.001550']);
    const paragraphs = contentAfter('paragraph_open');
    for (const words of [`${hostile} abcd\ufffdefg`, '# no heading', '1. no list', 'two - lines'])
      expect(paragraphs).toContain(words);
    expect(inline.filter(({ type }) => type === 'em_open')).toHaveLength(1);
  });

  it('keeps three lists apart, and sets a failed requirement off', () => {
    expect(tokens.filter(({ type }) => type === 'ordered_list_open')).toHaveLength(2);
    // The facts are a list too.
    expect(tokens.filter(({ type }) => type === 'bullet_list_open')).toHaveLength(2);
    expect(text).toContain('\n\n> **Not met:** the flat top is 27.4 µm wide');
  });

  it('is the same twice, byte for byte, and bears the day of the paper', () => {
    expect(writeMarkdown(samplePaper, drawPaperPictures(samplePaper), 'rationale')).toEqual(zip);
    // Date of the first entry: years from 1980, month and day in seven, four and five bits.
    expect(zip[12]! | (zip[13]! << 8)).toBe(((2026 - 1980) << 9) | (3 << 5) | 14);
  });
});
