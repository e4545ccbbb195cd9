import { parseHTML } from 'linkedom';
import { expect, it } from 'vitest';
import type { FigureSpec, MarkSpec } from '../../notebooks/document.ts';
import { createFigure } from '../../notebooks/page/figures/drawFigure.ts';
import { layOut } from '../../notebooks/page/figures/layout.ts';
import { textWidth } from '../../notebooks/page/figures/text.ts';

const x = Float64Array.from({ length: 401 }, (_, i) => i / 400);
const mark: MarkSpec = { kind: 'vertical', x: 0.5, label: 'dark centre', role: 'reference' };

/** Box of the only label, px of the frame, with the widest its letters can be. */
function labelOf(y: (x: number) => number, width: number, marks = [mark]) {
  const spec: FigureSpec = {
    title: 't',
    x: { label: 'x', unit: '1', domain: [0, 1] },
    y: { label: 'y', unit: '1', domain: [0, 1] },
    series: [{ label: 'curve', role: 'main', x, y: x.map(y) }],
    marks,
    summary: 's',
  };
  const document = parseHTML('<!doctype html><html><body></body></html>').document as unknown as Document;
  const view = createFigure(document, width);
  view.update(spec);
  const { frameWidth, frameHeight } = layOut(spec, width, 'wide');
  const text = view.element.querySelector('.figure-marks text')!;
  const spans = [...text.querySelectorAll('tspan')];
  const wide = Math.max(...spans.map((span) => textWidth(span.textContent, 12)));
  const anchor = Number(spans[0]!.getAttribute('x'));
  const left = text.getAttribute('text-anchor') === 'end' ? anchor - wide : anchor;
  const [top, bottom] = [
    Number(spans[0]!.getAttribute('y')) - 10,
    Number(spans.at(-1)!.getAttribute('y')) + 3,
  ];
  const through = [...x].filter((value) => {
    const [px, py] = [value * frameWidth, (1 - y(value)) * frameHeight];
    return px > left && px < left + wide && py > top && py < bottom;
  });
  return { through, top };
}

const curves: readonly [string, (x: number) => number][] = [
  ['flat at the top', () => 0.97],
  ['flat at the second row', () => 0.9],
  ['falling through', (x) => 1 - x],
  ['steep beside the mark', (x) => Math.min(1, Math.max(0, 20 * (x - 0.52)))],
  ['a wave', (x) => 0.5 + 0.5 * Math.cos(20 * x)],
];
for (const width of [720, 358]) {
  it.each(curves)(`no curve runs through a label at ${width} px: %s`, (_name, y) => {
    expect(labelOf(y, width).through).toEqual([]);
  });
}

it('stays in its usual place where nothing is in the way', () => {
  expect(labelOf(() => 0.1, 720).top).toBe(3);
});

it('keeps clear of curves along a horizontal mark too', () => {
  const horizontal: MarkSpec = { kind: 'horizontal', y: 0.5, label: 'today', role: 'today' };
  expect(labelOf((x) => (x > 0.8 ? 0.52 : 0), 720, [horizontal]).through).toEqual([]);
});
