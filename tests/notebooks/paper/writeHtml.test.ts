import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { drawPaperPictures } from '../../../notebooks/command/paperPictures.ts';
import { writeHtml } from '../../../notebooks/paper/writeHtml.ts';
import { blocks, hostile, samplePaper } from './samplePaper.ts';

const pictures = drawPaperPictures(samplePaper);
const html = writeHtml(samplePaper, pictures);
const { document } = parseHTML(html);
const all = (selector: string) => [...document.querySelectorAll(selector)];
const texts = (selector: string) => all(selector).map((found) => found.textContent);

describe('a paper as a page', () => {
  it('says its language, title and facts', () => {
    expect(document.documentElement.getAttribute('lang')).toBe('en');
    expect(document.querySelector('title')!.textContent).toBe(samplePaper.title);
    expect(texts('h1')).toEqual([samplePaper.title]);
    expect(texts('.facts dt')).toEqual(samplePaper.facts.map(([name]) => name));
    expect(texts('.facts dd')).toEqual(samplePaper.facts.map(([, value]) => value));
  });

  it('has every heading on its level', () => {
    for (const level of [1, 2, 3]) {
      const said = blocks.flatMap((block) =>
        block.kind === 'heading' && block.level === level ? [block.text] : [],
      );
      const more = level === 1 ? ['References'] : [];
      expect(texts(`h${level + 1}`), `level ${level}`).toEqual([...said, ...more]);
    }
  });

  it('draws every figure twice, for day and night, with number, caption and a description', () => {
    const figures = blocks.filter((block) => block.kind === 'figure');
    expect(all('figure').length).toBe(3);
    for (const [index, { id, spec, caption }] of figures.entries()) {
      const drawn = document.querySelector(`#figure-${index + 1}`)!;
      expect(drawn.querySelector('figcaption')!.textContent).toBe(`Figure ${index + 1}. ${caption}`);
      const svgs = [...drawn.querySelectorAll('svg[role="img"]')];
      expect(svgs.map((svg) => svg.getAttribute('aria-description'))).toEqual([spec.summary, spec.summary]);
      expect(html).toContain(pictures.get(id)!.svg);
      expect(html).toContain(pictures.get(id)!.dark);
    }
    expect(
      all('figure image').every((image) => image.getAttribute('href')!.startsWith('data:image/png')),
    ).toBe(true);
  });

  it('has tables with scopes and a numbered caption', () => {
    expect(texts('caption')).toEqual(['Table 1. Requirements and what the design gives']);
    expect(all('thead th').map((cell) => cell.getAttribute('scope'))).toEqual(Array(4).fill('col'));
    expect(all('tbody th').map((cell) => cell.getAttribute('scope'))).toEqual(Array(3).fill('row'));
    expect(texts('tbody td').filter((text) => text === hostile)).toHaveLength(1);
  });

  it('leads from citations to numbered references, and from there to their DOI', () => {
    const links = all('a.citation');
    expect(links.map((link) => link.textContent)).toEqual(['[1]', '[2]', '[3]']);
    for (const link of links) {
      const target = document.querySelector(link.getAttribute('href')!)!;
      expect(`[${[...target.parentElement!.children].indexOf(target) + 1}]`).toBe(link.textContent);
    }
    expect(all('.references li').length).toBe(4);
    expect(all('.references a').map((link) => link.getAttribute('href'))).toEqual([
      'https://doi.org/10.1364/AO.5.001550',
    ]);
  });

  it('marks shown numbers with their quantity', () => {
    const values = all('.value').map((value) => [value.getAttribute('data-quantity'), value.textContent]);
    expect(values).toContainEqual(['spot.peakFluence', '1.50 J/cm²']);
    expect(values).toContainEqual(['workpiece.z', '−0.35 mm']);
    expect(values).toHaveLength(4);
  });

  it('typesets equations without fonts of its own', () => {
    expect(all('.equation math').length).toBe(2);
    expect(all('p math, td math, th math').length).toBe(4);
    expect(html).not.toContain('@font-face');
  });

  it('shows hostile text as text, and loads nothing', () => {
    expect(texts('p')).toContain(`${hostile} abcd\ufffdefg`);
    expect(all('script, img, iframe, link, object, embed, [src], [onerror], [onload]').length).toBe(0);
    for (const link of all('a'))
      expect(link.getAttribute('href')).toMatch(/^(#reference-\d+|https:\/\/doi\.org\/.+)$/);
    expect(/url\(|@import/.exec(html)?.[0]).toBeUndefined();
    expect(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u.test(html)).toBe(false);
  });

  it('is the same twice', () => {
    expect(writeHtml(samplePaper, drawPaperPictures(samplePaper))).toBe(html);
  });
});
