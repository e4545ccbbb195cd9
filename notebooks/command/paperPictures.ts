import { createRequire } from 'node:module';
import { Resvg } from '@resvg/resvg-js';
import { parseHTML } from 'linkedom';
import { drawFigureStatic } from '../figurePicture.ts';
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

const require = createRequire(import.meta.url);
/** Letters of the pictures come with the program, so that they look alike on every machine. */
const fontFiles = ['400Regular/SourceSans3_400Regular.ttf', '600SemiBold/SourceSans3_600SemiBold.ttf'].map(
  (file) => require.resolve(`@expo-google-fonts/source-sans-3/${file}`),
);

/** Draws the figures of a paper without a browser. */
export function drawPaperPictures(paper: Paper): PaperPictures {
  const document = parseHTML('<!doctype html><html><body></body></html>').document as unknown as Document;
  return new Map(figuresOf(paper).map((figure) => [figure.id, draw(figure, document)]));
}

function draw({ spec, shape }: PaperFigure, document: Document): PaperPicture {
  const inScheme = (scheme: 'light' | 'dark') =>
    drawFigureStatic(spec, document, paperFigureWidth, { scheme, shape, bare: true });
  const svg = inScheme('light');
  const { width, height } = svgSize(svg);
  return { svg, dark: inScheme('dark'), png: toPng(svg), width, height };
}

/** SVG text as a PNG. */
function toPng(svg: string): Uint8Array {
  const picture = new Resvg(svg, {
    fitTo: { mode: 'zoom', value: pixelScale },
    font: { fontFiles, loadSystemFonts: false, defaultFontFamily: 'Source Sans 3' },
    background: '#ffffff',
  });
  return new Uint8Array(picture.render().asPng());
}
