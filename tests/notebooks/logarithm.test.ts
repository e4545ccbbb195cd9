import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import type { FigureSpec } from '../../notebooks/document.ts';
import { createFigure } from '../../notebooks/page/figures/drawFigure.ts';
import { figureCsv } from '../../notebooks/page/figures/figureCsv.ts';
import { layOut } from '../../notebooks/page/figures/layout.ts';
import { logarithmicTicks } from '../../notebooks/page/figures/logarithm.ts';
import { expectClose } from '../close.ts';

const spec: FigureSpec = {
  title: 't',
  x: { label: 'N', unit: '1', domain: [1, 1000], logarithmic: true },
  y: { label: 'F', unit: 'J/cm²', domain: [0.01, 10], logarithmic: true },
  series: [{ label: 'F', role: 'main', x: Float64Array.of(1, 10, 1000), y: Float64Array.of(0.01, 1, 0) }],
  marks: [{ kind: 'vertical', x: 100, label: '100', role: 'today' }],
  summary: 's',
};

describe('a logarithmic axis', () => {
  const document = parseHTML('<!doctype html><html><body></body></html>').document as unknown as Document;
  const view = createFigure(document, 720);
  view.update(spec);
  const { frameWidth, frameHeight } = layOut(spec, 720, 'wide');

  it('has equal steps for equal factors, and what is not above 0 leaves the frame downwards', () => {
    const path = view.element.querySelector('.figure-curve')!.getAttribute('d')!;
    const [first, second, third] = path
      .slice(1)
      .split('L')
      .map((point) => point.split(',').map(Number));
    expect(first).toEqual([0, frameHeight]);
    // Pixels are rounded to a tenth.
    expectClose(second![0]!, frameWidth / 3, { absolute: 0.05, relative: 0 });
    expectClose(second![1]!, frameHeight / 3, { absolute: 0.05, relative: 0 });
    expect(third![1]!).toBeGreaterThan(2 * frameHeight);
    const mark = view.element.querySelector('path.figure-mark')!.getAttribute('d')!;
    expectClose(Number(/M([\d.]+),/.exec(mark)![1]), (2 * frameWidth) / 3, { absolute: 0.05, relative: 0 });
  });

  it('has no line at its 1, which is no zero', () => {
    const rules = (logarithmic: boolean) => {
      const y = {
        label: 'F',
        unit: 'J/cm²',
        domain: logarithmic ? ([0.1, 10] as const) : ([-1, 1] as const),
      };
      const shown = createFigure(document, 720);
      shown.update({ ...spec, marks: [], y: logarithmic ? { ...y, logarithmic: true } : y });
      return shown.element.querySelectorAll('g[stroke-opacity="0.6"] > line').length;
    };
    expect([rules(false), rules(true)]).toEqual([1, 0]);
  });

  it('writes the numbers themselves into files', () => {
    expect(figureCsv(spec)).toBe('N,F (J/cm²)\r\n1,0.01\r\n10,1\r\n1000,0\r\n');
  });

  it.each([
    [[0, 1], 10, '1 2 5 10'],
    [[0, 3], 8, '1 3 10 30 100 300 1000'],
    [[0, 3], 5, '1 10 100 1000'],
    [[-2, 0], 3, '0.01 0.1 1'],
    [[0, 7], 9, '1 10 100 1000 10\u202f000 1·10⁵ 1·10⁶ 1·10⁷'],
  ] as const)('marks %j with at most %d numbers', (domain, most, texts) => {
    expect(logarithmicTicks(domain, most).texts.join(' ')).toBe(texts);
  });
});
