import type { Paper } from '../paper/paper.ts';
import {
  figuresOf,
  type PaperFigure,
  type PaperPicture,
  type PaperPictures,
  paperFigureWidth,
  pixelScale,
  svgSize,
} from '../paper/pictures.ts';
import { canvasPng, drawPicture, svgPng } from './figures/exportFigure.ts';
import type { Scheme } from './figures/palette.ts';

/** Draws the figures of a paper with the browser, one after the other. */
export async function drawPaperPictures(paper: Paper, document: Document): Promise<PaperPictures> {
  const pictures = new Map<string, PaperPicture>();
  for (const figure of figuresOf(paper)) pictures.set(figure.id, await draw(figure, document));
  return pictures;
}

async function draw({ spec, shape }: PaperFigure, document: Document): Promise<PaperPicture> {
  const inScheme = (scheme: Scheme) =>
    drawPicture(spec, document, paperFigureWidth, canvasPng(document), { scheme, shape, bare: true });
  const svg = inScheme('light');
  const png = await svgPng(document, svg, pixelScale);
  return {
    svg,
    dark: inScheme('dark'),
    png: new Uint8Array(await png.arrayBuffer()),
    ...svgSize(svg),
  };
}
