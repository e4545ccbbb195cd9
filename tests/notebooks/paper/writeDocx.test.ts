import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { drawPaperPictures } from '../../../notebooks/command/paperPictures.ts';
import { writeDocx } from '../../../notebooks/paper/writeDocx.ts';
import { elements, readXml, textOf, type XmlElement } from './readXml.ts';
import { blocks, hostile, samplePaper } from './samplePaper.ts';

const pictures = drawPaperPictures(samplePaper);
const docx = await writeDocx(samplePaper, pictures);
const files = unzipSync(docx);
const xml = (path: string) => readXml(strFromU8(files[path]!));
const document = xml('word/document.xml');
const paragraphs = elements(document, 'w:p');
const styleOf = (paragraph: XmlElement) => elements(paragraph, 'w:pStyle')[0]?.attributes['w:val'];
const styled = (style: string) => paragraphs.filter((paragraph) => styleOf(paragraph) === style);
const relations = new Map(
  elements(xml('word/_rels/document.xml.rels'), 'Relationship').map(({ attributes }) => [
    attributes.Id!,
    attributes.Target!,
  ]),
);

describe('a paper as DOCX', () => {
  it('is made of well-formed parts, the list of types first', () => {
    const parts = Object.keys(files);
    expect(parts[0]).toBe('[Content_Types].xml');
    for (const part of parts.filter((name) => /\.(xml|rels)$/.test(name)))
      expect(() => xml(part), part).not.toThrow();
  });

  it('has headings in the styles that Word builds a table of contents from', () => {
    expect(styled('Title').map(textOf)).toEqual([samplePaper.title]);
    for (const level of [1, 2, 3]) {
      const said = blocks.flatMap((block) =>
        block.kind === 'heading' && block.level === level ? [block.text] : [],
      );
      expect(styled(`Heading${level}`).map(textOf)).toEqual([
        ...said,
        ...(level === 1 ? ['References'] : []),
      ]);
    }
    const defined = elements(xml('word/styles.xml'), 'w:style').map(
      ({ attributes }) => attributes['w:styleId'],
    );
    for (const style of new Set(paragraphs.map(styleOf))) if (style) expect(defined).toContain(style);
  });

  it('has tables of its own, whose head comes again on each page', () => {
    const tables = elements(document, 'w:tbl');
    expect(tables).toHaveLength(1);
    const rows = elements(tables[0]!, 'w:tr');
    expect(rows.map((row) => elements(row, 'w:tblHeader').length)).toEqual([1, 0, 0, 0]);
    expect(rows.map((row) => elements(row, 'w:tc').length)).toEqual([4, 4, 4, 4]);
    expect(textOf(elements(rows[3]!, 'w:tc')[2]!)).toBe(hostile);
  });

  it('counts captions with fields, and has each beside what it names', () => {
    const captions = styled('Caption');
    const said = blocks.flatMap((block) => {
      if (block.kind === 'table') return [['Table', block.caption]];
      return block.kind === 'figure' ? [['Figure', block.caption]] : [];
    });
    const counts: Record<string, number> = {};
    expect(captions.map(textOf)).toEqual(
      said.map(([kind, words]) => {
        counts[kind!] = (counts[kind!] ?? 0) + 1;
        return `${kind} ${counts[kind!]}. ${words}`;
      }),
    );
    expect(captions.map((caption) => elements(caption, 'w:fldSimple')[0]!.attributes['w:instr'])).toEqual(
      said.map(([kind]) => `SEQ ${kind} \\* ARABIC`),
    );
  });

  it('has every figure as it was drawn, with words for those who do not see it', () => {
    const drawings = elements(document, 'w:drawing');
    const figures = blocks.filter((block) => block.kind === 'figure');
    expect(drawings).toHaveLength(figures.length);
    for (const [index, { id, spec }] of figures.entries()) {
      const [embedded] = elements(drawings[index]!, 'a:blip');
      const media = files[`word/${relations.get(embedded!.attributes['r:embed']!)}`];
      expect(media).toEqual(pictures.get(id)!.png);
      const [extent] = elements(drawings[index]!, 'wp:extent');
      const { width, height } = pictures.get(id)!;
      const [wide, high] = [Number(extent!.attributes.cx), Number(extent!.attributes.cy)];
      expect(Math.abs(wide / high / (width / height) - 1)).toBeLessThan(0.005);
      // 162 mm between the margins, 36000 units a millimetre.
      expect(wide).toBeLessThanOrEqual(162 * 36000);
      expect(elements(drawings[index]!, 'wp:docPr')[0]!.attributes.descr).toBe(spec.summary);
    }
  });

  it('has equations that can be edited; one that cannot be read stays as it was typed', () => {
    expect(elements(document, 'm:oMath')).toHaveLength(5);
    expect(elements(document, 'm:oMathPara')).toHaveLength(2);
    expect(paragraphs.map(textOf)).toContain('<img src=x onerror=alert(1)> \\href{javascript:alert(1)}{x}');
  });

  it('begins each numbered list at one', () => {
    const numbers = paragraphs.flatMap((p) =>
      elements(p, 'w:numId').map(({ attributes }) => attributes['w:val']),
    );
    expect(numbers).toHaveLength(7);
    expect(new Set(numbers).size).toBe(3);
  });

  it('leads from citations to the list of references', () => {
    const links = elements(document, 'w:hyperlink');
    const marks = elements(document, 'w:bookmarkStart').map(({ attributes }) => attributes['w:name']);
    const anchors = links.flatMap(({ attributes }) => attributes['w:anchor'] ?? []);
    expect(anchors).toEqual(['reference_1', 'reference_2', 'reference_3']);
    for (const anchor of anchors) expect(marks).toContain(anchor);
    const addresses = links.flatMap(({ attributes }) => relations.get(attributes['r:id'] ?? '') ?? []);
    expect(addresses).toEqual(['https://doi.org/10.1364/AO.5.001550']);
    expect(styled('Reference')).toHaveLength(4);
  });

  it('shows hostile text as text', () => {
    expect(paragraphs.map(textOf)).toContain(`${hostile} abcd\ufffdefg`);
  });

  it('names the design on top of each page and counts pages below; says its title, language and day', () => {
    expect(textOf(xml('word/header1.xml'))).toBe('Rain-gauge funnel');
    expect(textOf(xml('word/footer1.xml'))).toContain('page PAGE of NUMPAGES');
    const core = strFromU8(files['docProps/core.xml']!);
    expect(core).toContain(`<dc:title>${samplePaper.title}</dc:title>`);
    expect(core).toContain('<dc:language>en-GB</dc:language>');
    expect(core.match(/2026-03-14T12:00:00Z/g)).toHaveLength(2);
  });

  it('is the same twice, byte for byte', async () => {
    expect(await writeDocx(samplePaper, drawPaperPictures(samplePaper))).toEqual(docx);
  });
});
