import { svgElement } from '../element.ts';
import type { Palette } from './palette.ts';
import { labelSize, lineHeight, wrapText } from './text.ts';

/** Words around a drawing in a file, and the px they take. */
export interface PictureText {
  readonly element: SVGTextElement;
  readonly height: number;
}

const titleSize = 16;
const titleLine = 20;
/** Semibold letters are some 5 % wider than those `wrapText` measures. */
const bold = 1.06;

/** The title in lines that end above the drawing, whose top is at 0. */
export function captionAbove(document: Document, text: string, width: number, palette: Palette): PictureText {
  const lines = wrapText(text, width / bold, titleSize);
  const height = lines.length * titleLine + 6;
  const look = { class: 'figure-file-title', 'font-size': titleSize, 'font-weight': 600, fill: palette.ink };
  return { element: write(document, lines, titleSize - height, titleLine, look), height };
}

/** The summary in lines that begin below a drawing of that height. */
export function textBelow(
  document: Document,
  text: string,
  width: number,
  drawing: number,
  palette: Palette,
): PictureText {
  const lines = wrapText(text, width, labelSize);
  const look = { class: 'figure-file-summary', 'font-size': labelSize, fill: palette.muted };
  return {
    element: write(document, lines, drawing + 8 + labelSize, lineHeight + 1, look),
    height: 8 + lines.length * (lineHeight + 1) + 4,
  };
}

function write(
  document: Document,
  lines: readonly string[],
  first: number,
  step: number,
  look: Readonly<Record<string, string | number>>,
): SVGTextElement {
  const spans = lines.map((line, index) =>
    svgElement(document, 'tspan', { x: 0, y: first + index * step }, line),
  );
  return svgElement(document, 'text', { ...look, 'text-anchor': 'start' }, ...spans);
}
