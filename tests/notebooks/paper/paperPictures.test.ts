import { decode } from 'fast-png';
import { parseHTML } from 'linkedom';
import { expect, it } from 'vitest';
import { drawPaperPictures } from '../../../notebooks/command/paperPictures.ts';
import { drawFigureStatic } from '../../../notebooks/figurePicture.ts';
import { figuresOf, pictureOf } from '../../../notebooks/paper/pictures.ts';
import { elements, readXml, textOf } from './readXml.ts';
import { samplePaper } from './samplePaper.ts';

const pictures = drawPaperPictures(samplePaper);
const figures = figuresOf(samplePaper);

it('draws each figure as SVG and, two px for one, as PNG', () => {
  expect([...pictures.keys()]).toEqual(figures.map(({ id }) => id));
  for (const { svg, dark, png, width, height } of pictures.values()) {
    const { attributes } = readXml(svg);
    expect([attributes.width, attributes.height]).toEqual([String(width), String(height)]);
    expect(readXml(dark).attributes.viewBox).toBe(attributes.viewBox);
    const decoded = decode(png);
    expect([decoded.width, decoded.height]).toEqual([2 * width, 2 * height]);
  }
});

it('leaves title and summary to the caption: the drawing alone remains', () => {
  const [{ spec, id }] = figures as [(typeof figures)[number]];
  const document = parseHTML('<!doctype html><html><body></body></html>').document as unknown as Document;
  const alone = drawFigureStatic(spec, document, 540);
  expect(alone).toContain('figure-file-title');
  const { svg, height } = pictureOf(pictures, id);
  expect(svg).not.toContain('figure-file-');
  expect(height).toBeLessThan(Number(readXml(alone).attributes.height));
  // Still said to those who do not see it.
  expect(readXml(svg).attributes['aria-description']).toBe(spec.summary);
});

it('draws the letters: without them the row of the legend has no dark px beside its samples', () => {
  const { png, svg } = pictureOf(pictures, 'spot.across');
  const words = elements(readXml(svg), 'text').find((text) => textOf(text) === 'with the plate')!;
  const x = words.attributes.x;
  const { data, width, channels } = decode(png);
  const from = Math.round((Number(x) + 12) * 2);
  let dark = 0;
  for (let row = 0; row < 56; row++)
    for (let column = from; column < from + 140; column++)
      if (data[(row * width + column) * channels]! < 100) dark++;
  expect(dark).toBeGreaterThan(150);
});

it('is white by day and dark by night', () => {
  const { svg, dark, png } = pictureOf(pictures, 'focus.map');
  const paper = (text: string) => elements(readXml(text), 'rect')[0]!.attributes.fill;
  expect([paper(svg), paper(dark)]).toEqual(['#ffffff', '#17191c']);
  expect([...decode(png).data.subarray(0, 3)]).toEqual([255, 255, 255]);
});

it('says which figure has not been drawn', () => {
  expect(() => pictureOf(pictures, 'nowhere')).toThrow(/'nowhere'/);
});
