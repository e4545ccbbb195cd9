import { parseHTML } from 'linkedom';
import { expect } from 'vitest';
import type { FigureSpec } from '../../notebooks/document.ts';
import { drawFigureStatic } from '../../notebooks/figurePicture.ts';
import { figureCsv } from '../../notebooks/page/figures/figureCsv.ts';

/** Draws a figure for a file and writes its numbers: neither holds what is no number, and all curves are there. */
export function checkFigure(spec: FigureSpec): void {
  const page = parseHTML('<!doctype html><html><body></body></html>').document as unknown as Document;
  const svg = drawFigureStatic(spec, page, 720);
  expect(svg).toContain('<svg');
  expect(svg).not.toMatch(/NaN|undefined/);
  expect(figureCsv(spec)).not.toMatch(/NaN|undefined/);
  expect(spec.x.domain[0]).toBeLessThan(spec.x.domain[1]);
  expect(spec.y.domain[0]).toBeLessThan(spec.y.domain[1]);
  for (const { x, y } of spec.series) expect(y).toHaveLength(x.length);
}
