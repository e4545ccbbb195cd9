import { docxStyles, millimetre, page } from './docxStyle.ts';

const [narrow, slight] = [Math.round(12 * millimetre), Math.round(9 * millimetre)];

/** How large and how far apart all is in a file. */
export interface DocxMeasure {
  readonly page: {
    readonly size: typeof page.size;
    readonly margin: Readonly<Record<keyof typeof page.margin, number>>;
  };
  /** Part of the usual size of type. */
  readonly type: number;
  /** Part of the usual space between paragraphs. */
  readonly space: number;
  /** Part of the usual height of lines. */
  readonly lines: number;
}

/** As papers are. */
export const usual: DocxMeasure = { page, type: 1, space: 1, lines: 1 };

/** Small and tight, for what is to be on one page. */
export const compact: DocxMeasure = {
  page: {
    size: page.size,
    margin: { top: narrow, bottom: narrow, left: narrow, right: narrow, header: slight, footer: slight },
  },
  type: 0.82,
  space: 0.3,
  lines: 0.9,
};

/** Room between the margins, twips. */
export const textWidthOf = ({ page: { size, margin } }: DocxMeasure) =>
  size.width - margin.left - margin.right;

/** The styles of the file in a measure: type, lines and the space between paragraphs. */
export function stylesIn(measure: DocxMeasure): typeof docxStyles {
  return measure === usual ? docxStyles : (scaled(docxStyles, measure, false) as typeof docxStyles);
}

/** Sizes are those of type within a run only: those of borders stay. */
function scaled(value: unknown, measure: DocxMeasure, inRun: boolean): unknown {
  if (Array.isArray(value)) return value.map((one) => scaled(one, measure, inRun));
  if (typeof value !== 'object' || value === null) return value;
  const parts = Object.entries(value).map(([key, part]) => {
    const times =
      key === 'size' && inRun
        ? measure.type
        : key === 'before' || key === 'after'
          ? measure.space
          : key === 'line'
            ? measure.lines
            : undefined;
    const is = typeof part === 'number' && times !== undefined ? Math.round(part * times) : undefined;
    return [key, is ?? scaled(part, measure, key === 'run')];
  });
  return Object.fromEntries(parts);
}
