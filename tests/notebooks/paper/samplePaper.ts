import type { FigureSpec } from '../../../notebooks/document.ts';
import type { Paper, PaperBlock } from '../../../notebooks/paper/paper.ts';

const radius = Float64Array.from({ length: 121 }, (_, i) => i / 2 - 30);

const curve: FigureSpec = {
  title: 'Fluence across the spot',
  x: { label: 'radius', unit: 'µm', domain: [-30, 30] },
  y: { label: 'fluence per pulse, peak', unit: 'J/cm²', domain: [0, 2] },
  series: [
    {
      label: 'with the plate',
      role: 'main',
      x: radius,
      y: radius.map((r) => 1.5 * Math.exp(-((r / 18) ** 8))),
    },
    {
      label: 'without the plate',
      role: 'reference',
      x: radius,
      y: radius.map((r) => 1.9 * Math.exp(-2 * (r / 15) ** 2)),
    },
  ],
  marks: [{ kind: 'horizontal', y: 0.8, label: 'threshold', role: 'today' }],
  summary: 'With the plate the fluence is 1.5 J/cm² over 30 µm; without it 1.9 J/cm² at the centre.',
};

const columns = 61;
const rows = 41;
const map: FigureSpec = {
  title: 'Fluence through the focus',
  x: { label: 'z, down the beam', unit: 'mm', domain: [-3, 3] },
  y: { label: 'radius', unit: 'µm', domain: [-40, 40] },
  series: [],
  map: {
    columns,
    rows,
    values: Float64Array.from({ length: columns * rows }, (_, i) => {
      const [z, r] = [((i % columns) / (columns - 1)) * 6 - 3, Math.floor(i / columns) / (rows - 1)];
      return 1.9 / (1 + z * z) / Math.exp((8 * r * r) / (1 + z * z));
    }),
    range: [0, 1.9],
    mirrored: true,
    label: 'fluence per pulse',
    unit: 'J/cm²',
  },
  summary: 'The fluence is highest, 1.9 J/cm², at z = 0 and falls to a tenth of it at z = ±3 mm.',
};

const depth: FigureSpec = {
  title: 'Depth over passes',
  x: { label: 'passes', unit: '1', domain: [0, 20] },
  y: { label: 'depth', unit: 'µm', domain: [0, 50] },
  series: [
    {
      label: 'depth',
      role: 'main',
      x: Float64Array.from({ length: 21 }, (_, i) => i),
      y: Float64Array.from({ length: 21 }, (_, i) => 2.4 * i),
    },
  ],
  summary: 'Each pass removes 2.4 µm; twenty of them 48 µm.',
};

/** Text that means something to one kind of file or another. */
export const hostile =
  '<script>alert(1)</script> & "quoted" \'so\' *not bold* _nor this_ [a](javascript:alert(1)) | $x$ `code` \\end # 1. {b} ~c~ ^d^ @e <!-- no --> ]]> https://example.org';
/** What no XML may hold: control characters, half a surrogate pair, a turn of the direction. */
export const forbidden = `a\u0000b\u0007c\u001fd\ud800e\u202ef\uffffg`;

const text = (words: string) => ({ text: words });

export const blocks: readonly PaperBlock[] = [
  { kind: 'heading', level: 1, text: 'Requirements' },
  {
    kind: 'paragraph',
    role: 'failed',
    runs: [
      { text: 'Not met: ', strong: true },
      text('the flat top is '),
      { text: '27.4 µm', quantity: 'spot.flatWidth' },
      text(' wide; wanted are at least 30 µm.'),
    ],
  },
  {
    kind: 'paragraph',
    role: 'caution',
    runs: [text('The beam can blind. Align at low power, with goggles for 1030 nm.')],
  },
  { kind: 'paragraph', role: 'note', runs: [text('Values in round brackets were not measured.')] },
  {
    kind: 'table',
    caption: 'Requirements and what the design gives',
    columns: ['Number', 'Wanted', 'Now', 'Met'],
    rows: [
      [
        [text('Flat-top width')],
        [text('at least 30 µm')],
        [{ text: '27.4 µm', quantity: 'spot.flatWidth' }],
        [{ text: 'no', strong: true }],
      ],
      [
        [text('Peak fluence '), { tex: 'F_\\text{peak}' }],
        [text('1.2 to 1.8 J/cm²')],
        [{ text: '1.50 J/cm²', quantity: 'spot.peakFluence' }],
        [text('yes')],
      ],
      [[text('|bar| and $dollar$')], [{ tex: '\\left|H\\right|' }], [text(hostile)], [text('not known')]],
    ],
  },
  { kind: 'heading', level: 2, text: 'Why this step' },
  {
    kind: 'paragraph',
    runs: [
      text('A round step of half a wave makes the middle of the focus flat when the step ratio '),
      { tex: '\\kappa = R_\\text{s}/w' },
      text(' is near 0.65 '),
      { cite: 'veldkamp1982' },
      text('; the field is '),
      { text: 'Collins’ integral', emphasis: true },
      text(' '),
      { cite: 'collins1970' },
      text('.'),
    ],
  },
  {
    kind: 'equation',
    tex: 'U(0)=(1-e^{-\\kappa^2})e^{i\\varphi} + (e^{-\\kappa^2}-e^{-(R/w)^2})',
    note: 'On the axis in the focal plane.',
  },
  {
    kind: 'equation',
    tex: '\\begin{cases} m\\,d_\\text{raw} \\\\ \\frac{2E}{\\pi w^2}\\cdot\\sqrt{\\tau} \\end{cases}',
  },
  {
    kind: 'figure',
    id: 'spot.across',
    spec: curve,
    shape: 'wide',
    caption: 'Fluence across the spot in the plane of work, with and without the plate.',
  },
  { kind: 'figure', id: 'focus.map', spec: map, shape: 'tall', caption: 'Fluence through the focus.' },
  { kind: 'heading', level: 3, text: 'Steps' },
  {
    kind: 'list',
    ordered: true,
    items: [
      [text('Close the shutter.')],
      [text('Set z to '), { text: '−0.35 mm', quantity: 'workpiece.z' }, text('.')],
      [text('Open it at 1 % of the power.')],
    ],
  },
  {
    kind: 'list',
    ordered: false,
    items: [
      [text('What was not checked: pointing.')],
      [text('Heat over many fields '), { cite: 'kogelnik1966' }, text('.')],
    ],
  },
  { kind: 'list', ordered: true, items: [[text('A second list begins at one.')], [text('And goes on.')]] },
  { kind: 'figure', id: 'depth', spec: depth, shape: 'wide', caption: hostile },
  { kind: 'heading', level: 2, text: hostile },
  { kind: 'paragraph', runs: [text(hostile), text(' '), { text: forbidden, strong: true }] },
  { kind: 'paragraph', runs: [text('# no heading')] },
  { kind: 'paragraph', runs: [text('1. no list')] },
  { kind: 'paragraph', runs: [text('two\n\n- lines')] },
  { kind: 'paragraph', runs: [{ tex: '<img src=x onerror=alert(1)> \\href{javascript:alert(1)}{x}' }] },
];

/** A paper with every kind of block. */
export const samplePaper: Paper = {
  title: 'Why this step: rain-gauge funnel',
  design: 'Rain-gauge funnel',
  date: '2026-03-14',
  facts: [
    ['Design', 'Rain-gauge funnel'],
    ['Version', '0.1.0'],
    ['Date', '14 March 2026'],
    ['Made again by', 'stepwell rationale rain-gauge-funnel.json --to rationale.html'],
    ['Hostile', hostile],
  ],
  blocks,
  references: ['veldkamp1982', 'collins1970', 'kogelnik1966', 'bk7catalogue'],
};
