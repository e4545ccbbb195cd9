import { readFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import { decode } from 'fast-png';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import type { FigureSpec } from '../../notebooks/document.ts';
import { drawFigureStatic } from '../../notebooks/figurePicture.ts';
import type { MapSpec } from '../../notebooks/mapSpec.ts';
import { createFigure } from '../../notebooks/page/figures/drawFigure.ts';
import { figureSvg, fileName } from '../../notebooks/page/figures/exportFigure.ts';
import { figureCsv } from '../../notebooks/page/figures/figureCsv.ts';
import { layOut } from '../../notebooks/page/figures/layout.ts';
import { paintMap } from '../../notebooks/page/figures/mapPicture.ts';
import { plainPalettes } from '../../notebooks/page/figures/palette.ts';
import { shortNumber, textWidth, tickTexts } from '../../notebooks/page/figures/text.ts';
import { expectClose } from '../close.ts';

const newDocument = () =>
  parseHTML('<!doctype html><html><body></body></html>').document as unknown as Document;
const radius = Float64Array.from({ length: 101 }, (_, i) => i - 50);
const bell = (peak: number) => radius.map((r) => peak * Math.exp(-2 * (r / 20) ** 2));

function profile(peak = 1, more: Partial<FigureSpec> = {}): FigureSpec {
  return {
    title: 'Fluence across the spot',
    x: { label: 'radius', unit: 'µm', domain: [-50, 50] },
    y: { label: 'fluence', unit: 'J/cm²', domain: [0, 2] },
    series: [
      { label: 'fluence shaped', role: 'main', x: radius, y: bell(peak) },
      { label: 'fluence unshaped', role: 'reference', x: radius, y: bell(peak * 1.5) },
      { label: 'spread', role: 'band', x: radius, y: bell(peak * 0.9), y2: bell(peak * 1.1) },
    ],
    marks: [{ kind: 'vertical', x: 10 * peak, label: 'today', role: 'today' }],
    summary: `The peak is ${peak} J/cm².`,
    ...more,
  };
}

const field: MapSpec = {
  columns: 3,
  rows: 2,
  values: Float64Array.from([0, 1, 2, 3, 4, Number.NaN]),
  range: [0, 4],
  label: 'irradiance',
  unit: 'W/cm²',
};

function shown(spec: FigureSpec, width = 720) {
  const view = createFigure(newDocument(), width);
  view.update(spec);
  const svg = () => view.element.querySelector('svg')!;
  const paths = () => [...view.element.querySelectorAll('.figure-curve')];
  return { view, svg, paths };
}

describe('a figure on the page', () => {
  it('names its axes with units, its second scales and its curves', () => {
    const { svg } = shown(
      profile(1, {
        secondX: { label: 'radius over step', factor: 0.1 },
        secondY: { label: 'times threshold', factor: 3 },
      }),
    );
    const texts = [...svg().querySelectorAll('text')].map((text) => text.textContent);
    for (const words of [
      'radius (µm)',
      'fluence (J/cm²)',
      'radius over step',
      'times threshold',
      'fluence shaped',
      'today',
    ]) {
      expect(texts).toContain(words);
    }
  });

  it('draws one path a series and tells roles apart by dashes', () => {
    const { paths } = shown(
      profile(1, {
        series: (['main', 'second', 'third', 'reference', 'reference'] as const).map((role) => ({
          label: role,
          role,
          x: radius,
          y: bell(1),
        })),
      }),
    );
    const looks = paths().map(
      (path) => `${path.getAttribute('stroke-dasharray')} ${path.getAttribute('stroke-width')}`,
    );
    expect(new Set(looks).size).toBe(5);
  });

  it('keeps its frame and paths while values change, and rewrites only the paths', () => {
    const { view, svg, paths } = shown(profile(1));
    const [frame, before] = [svg(), paths()];
    const shapes = before.map((path) => path.getAttribute('d'));
    view.update(profile(1.2));
    expect(svg()).toBe(frame);
    expect(paths()).toHaveLength(3);
    for (const [index, path] of paths().entries()) {
      expect(path).toBe(before[index]);
      expect(path.getAttribute('d')).not.toBe(shapes[index]);
    }
  });

  it('draws a new frame for a new domain, width or set of series', () => {
    const { view, svg } = shown(profile(1));
    let last = svg();
    const changes = [
      () => view.update(profile(1, { y: { label: 'fluence', unit: 'J/cm²', domain: [0, 3] } })),
      () => view.resize(400),
      () => view.update(profile(1, { series: profile().series.slice(0, 1) })),
    ];
    for (const change of changes) {
      change();
      expect(svg()).not.toBe(last);
      last = svg();
    }
    expect(view.width).toBe(400);
  });

  it('is one picture with a name and a description, and no named parts inside', () => {
    const { view, svg } = shown(profile(1));
    expect(svg().getAttribute('role')).toBe('img');
    expect(svg().getAttribute('aria-label')).toBe('Fluence across the spot');
    view.update(profile(2));
    expect(svg().getAttribute('aria-description')).toBe('The peak is 2 J/cm².');
    expect(view.element.querySelector('.figure-summary')!.textContent).toBe('The peak is 2 J/cm².');
    expect(svg().querySelectorAll('[aria-label]')).toHaveLength(0);
    expect([...view.element.querySelectorAll('button')].map((button) => button.textContent)).toEqual([
      'CSV',
      'SVG',
      'PNG',
    ]);
  });

  it('leaves gaps where values are missing, rings single values, and never writes NaN', () => {
    const y = Float64Array.from([1, 1, Number.NaN, 1, 1, Number.POSITIVE_INFINITY, 1]);
    const x = Float64Array.from([0, 1, 2, 3, 4, 5, 6]);
    const { paths, svg } = shown(profile(1, { series: [{ label: 'measured', role: 'main', x, y }] }));
    const d = paths()[0]!.getAttribute('d')!;
    expect(d.match(/M/g)).toHaveLength(3);
    expect(d.match(/a3,3/g)).toHaveLength(2);
    expect(svg().outerHTML).not.toMatch(/NaN|Infinity/);
  });

  it('draws scattered values as whole rings, whatever the dashes of their role', () => {
    const y = Float64Array.from([1, Number.NaN, 1]);
    const { paths } = shown(
      profile(1, { series: [{ label: 'spots', role: 'second', x: Float64Array.from([0, 1, 2]), y }] }),
    );
    expect(paths()[0]!.getAttribute('d')!.match(/a3,3/g)).toHaveLength(4);
    expect(paths()[0]!.hasAttribute('stroke-dasharray')).toBe(false);
  });

  it('survives empty columns, empty domains and marks without a place', () => {
    const none = new Float64Array();
    const { svg } = shown(
      profile(1, {
        x: { label: 'radius', unit: 'µm', domain: [3, 3] },
        y: { label: 'fluence', unit: 'J/cm²', domain: [Number.NaN, 1] },
        series: [{ label: 'none', role: 'main', x: none, y: none }],
        marks: [
          { kind: 'point', x: Number.NaN, y: 0.5, label: 'lost', role: 'today' },
          { kind: 'vertical', x: 99, label: 'outside', role: 'reference' },
        ],
      }),
    );
    expect(svg().outerHTML).not.toContain('NaN');
    for (const mark of svg().querySelectorAll('.figure-mark'))
      expect(mark.getAttribute('display')).toBe('none');
  });

  it('escapes hostile labels', () => {
    const hostile = '<img src=x onerror=alert(1)>"&';
    const spec = profile(1, {
      title: hostile,
      summary: hostile,
      x: { label: hostile, unit: '<b>', domain: [-50, 50] },
      series: [{ label: hostile, role: 'main', x: radius, y: bell(1) }],
      marks: [{ kind: 'vertical', x: 0, label: hostile, role: 'today' }],
    });
    const { view } = shown(spec);
    expect(view.element.querySelectorAll('img, b')).toHaveLength(0);
    expect(figureSvg(view)).not.toMatch(/<img|<b>/);
    expect(figureSvg(view)).toContain('&lt;img src=x onerror=alert(1)&gt;');
  });

  it('holds every label of a mark inside the frame and apart at 390 px', () => {
    const marks = [0.48, 0.5, 0.52, 0.97].map((x, index) => ({
      kind: 'vertical' as const,
      x,
      label: `mark number ${index}`,
      role: index === 0 ? ('today' as const) : ('reference' as const),
    }));
    const spec = profile(1, { x: { label: 'phase', unit: 'waves', domain: [0, 1] }, series: [], marks });
    const { svg } = shown(spec, 358);
    const { frameWidth } = layOut(spec, 358, 'wide');
    const boxes = [...svg().querySelectorAll('.figure-marks text')].map((text) => {
      const spans = [...text.querySelectorAll('tspan')];
      // 6.2 px a letter is the mean of the font at 12 px.
      const width = Math.max(...spans.map((span) => span.textContent.length)) * 6.2;
      const anchor = Number(spans[0]!.getAttribute('x'));
      const left = text.getAttribute('text-anchor') === 'end' ? anchor - width : anchor;
      return {
        left,
        right: left + width,
        top: Number(spans[0]!.getAttribute('y')) - 10,
        bottom: Number(spans.at(-1)!.getAttribute('y')),
      };
    });
    expect(boxes).toHaveLength(4);
    for (const [index, box] of boxes.entries()) {
      expect(box.left).toBeGreaterThanOrEqual(0);
      expect(box.right).toBeLessThanOrEqual(frameWidth);
      for (const other of boxes.slice(index + 1)) {
        const apart =
          box.right < other.left ||
          other.right < box.left ||
          box.bottom < other.top ||
          other.bottom < box.top;
        expect(apart).toBe(true);
      }
    }
  });
});

describe('files of a figure', () => {
  it('writes curves that share their x as columns with units, to twelve digits without dust', () => {
    const lines = figureCsv(profile(1 / 3)).split('\r\n');
    expect(lines[0]).toBe(
      'radius (µm),fluence shaped (J/cm²),fluence unshaped (J/cm²),"spread, one side (J/cm²)","spread, other side (J/cm²)"',
    );
    expect(lines).toHaveLength(103);
    expect(lines.at(-1)).toBe('');
    expect(lines[51]!.split(',')[1]).toBe('0.333333333333');
    // 0.1 + 0.2 is 0.30000000000000004 in binary.
    const dusty = {
      label: 'sum',
      role: 'main',
      x: Float64Array.of(-29.099999999999998),
      y: Float64Array.of(0.1 + 0.2),
    } as const;
    expect(figureCsv(profile(1, { series: [dusty] })).split('\r\n')[1]).toBe('-29.1,0.3');
  });

  it('gives a curve with its own x its own column, and leaves missing values empty', () => {
    const csv = figureCsv(
      profile(1, {
        series: [
          {
            label: 'model, "best"',
            role: 'main',
            x: Float64Array.from([0, 1]),
            y: Float64Array.from([1, Number.NaN]),
          },
          { label: 'measured', role: 'second', x: Float64Array.from([0.5]), y: Float64Array.from([0.9]) },
        ],
      }),
    );
    expect(csv).toBe(
      'radius (µm),"model, ""best"" (J/cm²)","radius, measured (µm)",measured (J/cm²)\r\n0,1,0.5,0.9\r\n1,,,\r\n',
    );
  });

  it('writes a map as x, y and value', () => {
    const csv = figureCsv(profile(1, { series: [], map: field }));
    expect(csv).toBe(
      'radius (µm),fluence (J/cm²),irradiance (W/cm²)\r\n-50,0,0\r\n0,0,1\r\n50,0,2\r\n-50,2,3\r\n0,2,4\r\n50,2,\r\n',
    );
  });

  it('names every column apart, also a curve beside a map', () => {
    const curve = {
      label: 'level line',
      role: 'second',
      x: Float64Array.of(1, 2),
      y: Float64Array.of(3, 4),
    } as const;
    const [header, first] = figureCsv(
      profile(1, { series: [curve, { ...curve, x: curve.y }], map: field }),
    ).split('\r\n');
    expect(header).toBe(
      'radius (µm),fluence (J/cm²),irradiance (W/cm²),"radius, level line (µm)",level line (J/cm²),"radius, level line, 2 (µm)","level line, 2 (J/cm²)"',
    );
    expect(first).toBe('-50,0,0,1,3,3,3');
  });

  it('names files after the title', () => {
    expect(fileName('On the axis: step ratio, today’s 5 µm', 'csv')).toBe(
      'on-the-axis-step-ratio-todays-5-um.csv',
    );
    expect(fileName('∅', 'svg')).toBe('figure.svg');
  });

  it('resolves every paint, in the colours of the page', () => {
    const tokens = readFileSync(new URL('../../notebooks/page/tokens.css', import.meta.url), 'utf8');
    for (const [scheme, column] of [
      ['light', 1],
      ['dark', 2],
    ] as const) {
      const palette = plainPalettes[scheme];
      const token = (name: string) =>
        new RegExp(`--${name}: light-dark\\((\\S+), (\\S+)\\)`).exec(tokens)![column];
      for (const name of ['paper', 'ink', 'muted', 'line', 'accent'] as const)
        expect(palette[name]).toBe(token(name));
      for (const name of ['main', 'second', 'third', 'reference'] as const)
        expect(palette[name]).toBe(token(`series-${name}`));
      const alpha = Math.round(palette.bandOpacity * 255).toString(16);
      expect(palette.band + alpha).toBe(token('series-band'));
      const svg = drawFigureStatic(profile(1, { map: field }), newDocument(), 600, { scheme });
      expect(svg).not.toMatch(/var\(|currentColor|NaN|undefined/);
      expect(svg).toContain(palette.main);
    }
  });

  it('makes a picture without a browser that another program reads, map and all', () => {
    const svg = drawFigureStatic(profile(1, { map: field, marks: [] }), newDocument(), 600);
    expect(svg).toContain('data:image/png;base64,');
    const picture = decode(new Resvg(svg, { font: { loadSystemFonts: false } }).render().asPng());
    expect(picture.width).toBe(624);
    const [shiftX, shiftY] = /viewBox="(\S+) (\S+)/
      .exec(svg)!
      .slice(1)
      .map((edge) => -Number(edge));
    // Just inside the lower left corner of the frame stands the lowest value: the paper; in the middle of the top the highest.
    const { left, top, frameWidth, frameHeight } = layOut(profile(1, { map: field }), 600, 'wide');
    const pixel = (x: number, y: number) => [
      ...picture.data
        .subarray((Math.round(y + shiftY!) * picture.width + Math.round(x + shiftX!)) * 4)
        .slice(0, 3),
    ];
    const [low, high] = [pixel(left + 4, top + frameHeight - 4), pixel(left + frameWidth / 2, top + 4)];
    expect(low[0]).toBeGreaterThan(230);
    expect(high[0]).toBeLessThan(40);
  });
});

describe('a picture that stands alone', () => {
  const long =
    'A title that is much longer than a narrow column is wide: step ratio against distance from the focus';
  const summary = Array.from(
    { length: 12 },
    (_, i) => `Sentence ${i} of the summary has its numbers, 5\u202f%.`,
  ).join(' ');
  for (const [width, scheme] of [
    [760, 'light'],
    [358, 'dark'],
  ] as const) {
    it(`carries title and summary in full, inside the picture, at ${width} px`, () => {
      const svg = drawFigureStatic(profile(1, { title: long, summary }), newDocument(), width, { scheme });
      const { document } = parseHTML(svg);
      const box = /viewBox="(\S+) (\S+) (\S+) (\S+)"/.exec(svg)!.slice(1).map(Number);
      const [left, top, wide, high] = box as [number, number, number, number];
      for (const [name, words] of [
        ['title', long],
        ['summary', summary],
      ] as const) {
        const lines = [...document.querySelectorAll(`.figure-file-${name} tspan`)];
        expect(lines.map((line) => line.textContent).join(' ')).toBe(words);
        for (const line of lines) {
          const [x, y] = [Number(line.getAttribute('x')), Number(line.getAttribute('y'))];
          expect(x).toBeGreaterThanOrEqual(left);
          // Semibold Source Sans is no wider than Helvetica, whose widths are estimated here.
          const words = textWidth(line.textContent!, name === 'title' ? 16 : 12.5);
          expect(x + words).toBeLessThanOrEqual(left + wide);
          expect(y - 12).toBeGreaterThanOrEqual(top);
          expect(y + 4).toBeLessThanOrEqual(top + high);
        }
      }
      const { height } = layOut(profile(), width, 'wide');
      const under = [...document.querySelectorAll('.figure-file-summary tspan')][0]!;
      expect(Number(under.getAttribute('y')) - 10).toBeGreaterThanOrEqual(height);
      const above = [...document.querySelectorAll('.figure-file-title tspan')].at(-1)!;
      expect(Number(above.getAttribute('y'))).toBeLessThan(0);
    });
  }
});

describe('the parts of a figure', () => {
  it('paints maps from the paper up, top row first, and leaves missing values clear', () => {
    const pixels = new Uint8ClampedArray(field.columns * field.rows * 4);
    paintMap(field, 'light', pixels);
    const at = (index: number) => [...pixels.slice(index * 4, index * 4 + 4)];
    expect(at(3)).toEqual([0xfb, 0xfa, 0xf6, 255]);
    expect(at(1)).toEqual([0x0a, 0x27, 0x44, 255]);
    expect(at(2)).toEqual([0, 0, 0, 0]);
    const darkness = [3, 4, 5, 0, 1].map((index) => at(index)[0]!);
    expect(darkness).toEqual([...darkness].sort((a, b) => b - a));
  });

  it('writes numbers of scales as a person does', () => {
    expect(tickTexts([-0.5, 0, 0.5])).toEqual(['−0.5', '0.0', '0.5']);
    expect(tickTexts([0, 10_000, 20_000])).toEqual(['0', '10\u202f000', '20\u202f000']);
    expect(tickTexts([0, 2e-6, 4e-6])).toEqual(['0', '2·10⁻⁶', '4·10⁻⁶']);
    expect(tickTexts([0, 500_000, 1_000_000])).toEqual(['0', '0.5·10⁶', '1·10⁶']);
    expect(tickTexts([])).toEqual([]);
    expect(shortNumber(1.23456)).toBe('1.23');
    expect(shortNumber(-2.5e-7)).toBe('−2.5·10⁻⁷');
  });

  it('puts ticks of a second scale where the first has the same value', () => {
    const factor = 0.37;
    const { secondX } = layOut(profile(1, { secondX: { label: 's', factor } }), 720, 'wide');
    expect(secondX!.ticks.at.length).toBeGreaterThan(3);
    for (const [index, at] of secondX!.ticks.at.entries()) {
      const written = Number(secondX!.ticks.texts[index]!.replace('−', '-'));
      expectClose(at * factor, written, { absolute: 1e-12, source: 'the second value is x · factor' });
    }
  });
});
