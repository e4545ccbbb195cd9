import { AlignmentType, BorderStyle, type IPropertiesOptions, LevelFormat, LineRuleType } from 'docx';

/** Lengths of Word: twips, 1440 an inch. */
export const millimetre = 1440 / 25.4;

/** A4 and its margins, twips. */
export const page = {
  size: { width: Math.round(210 * millimetre), height: Math.round(297 * millimetre) },
  margin: {
    top: Math.round(25 * millimetre),
    bottom: Math.round(24 * millimetre),
    left: Math.round(24 * millimetre),
    right: Math.round(24 * millimetre),
    header: Math.round(12 * millimetre),
    footer: Math.round(12 * millimetre),
  },
} as const;

/** Names of the numbered lists in the file. */
export const listNames = { ordered: 'ordered', unordered: 'unordered' } as const;

/** Fonts that Word has and that others have with the same widths. */
const [serif, sans] = ['Times New Roman', 'Arial'];
/** Lines are as high as what stands in them, a picture or a fraction too. */
const lineRule = LineRuleType.AUTO;
const ink = '22262B';
const muted = '5C6168';

const heading = (size: number, before: number, after: number) => ({
  run: { font: sans, size, bold: true, color: ink },
  paragraph: { spacing: { before, after }, keepNext: true, keepLines: true },
});

/** A paragraph with a bar to its left, on a ground where it has one; the lines above and below are room of that ground. */
const barred = (id: string, name: string, color: string, ground?: string) => {
  const bar = { left: { style: BorderStyle.SINGLE, size: 18, space: 8, color } };
  const edge = { style: BorderStyle.SINGLE, size: 4, space: 3, color: ground ?? 'auto' };
  return {
    id,
    name,
    basedOn: 'Normal',
    quickFormat: true,
    paragraph: {
      indent: { left: 170 },
      spacing: { before: 80, after: 160 },
      border: ground === undefined ? bar : { ...bar, top: edge, bottom: edge },
      ...(ground === undefined ? {} : { shading: { fill: ground } }),
    },
  };
};

/** Styles by the names Word has for them, so that a person can change each in one place. */
export const docxStyles: NonNullable<IPropertiesOptions['styles']> = {
  default: {
    document: {
      run: { font: serif, size: 22, language: { value: 'en-GB' } },
      paragraph: { spacing: { after: 120, line: 276, lineRule } },
    },
    title: heading(40, 0, 200),
    heading1: heading(28, 360, 120),
    heading2: heading(24, 280, 100),
    heading3: heading(21, 220, 80),
    caption: {
      run: { font: sans, size: 18, color: ink },
      paragraph: { spacing: { before: 60, after: 240, line: 252, lineRule }, keepLines: true },
    },
  },
  paragraphStyles: [
    barred('Caution', 'Caution', '7A5200', 'FBF1D9'),
    barred('Failed', 'Failed', 'A1260D', 'FAE6E1'),
    { ...barred('Note', 'Note', 'DCD8CE'), run: { size: 20, color: muted } },
    {
      id: 'Fact',
      name: 'Fact',
      basedOn: 'Normal',
      run: { font: sans, size: 19 },
      paragraph: {
        indent: { left: 2268, hanging: 2268 },
        spacing: { after: 40, line: 252, lineRule },
      },
    },
    {
      id: 'TableText',
      name: 'Table Text',
      basedOn: 'Normal',
      run: { font: sans, size: 18 },
      paragraph: { spacing: { before: 30, after: 30, line: 240, lineRule } },
    },
    {
      id: 'Reference',
      name: 'Reference',
      basedOn: 'Normal',
      run: { size: 20 },
      paragraph: { indent: { left: 510, hanging: 510 }, spacing: { after: 60, line: 252, lineRule } },
    },
    {
      id: 'Margin',
      name: 'Margin',
      basedOn: 'Normal',
      run: { font: sans, size: 16, color: muted },
      paragraph: { spacing: { after: 0 } },
    },
  ],
};

const level = (format: 'bullet' | 'decimal', text: string) => ({
  level: 0,
  format: format === 'bullet' ? LevelFormat.BULLET : LevelFormat.DECIMAL,
  text,
  alignment: AlignmentType.LEFT,
  style: { paragraph: { indent: { left: 420, hanging: 300 } } },
});

/** Both kinds of list. */
export const docxLists: NonNullable<IPropertiesOptions['numbering']> = {
  config: [
    { reference: listNames.ordered, levels: [level('decimal', '%1.')] },
    { reference: listNames.unordered, levels: [level('bullet', '•')] },
  ],
};
