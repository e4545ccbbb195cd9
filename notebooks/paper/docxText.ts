import {
  AlignmentType,
  InternalHyperlink,
  Math as MathElement,
  Paragraph,
  type ParagraphChild,
  SimpleField,
  TextRun,
  XmlComponent,
} from 'docx';
import { latexToMath } from 'docx/math';
import { cleanText } from './cleanText.ts';
import { pairBrackets } from './pairBrackets.ts';
import type { Run } from './paper.ts';
import type { Reference } from './references.ts';
import { quoteScriptSigns } from './scriptSigns.ts';

/** An equation as Word's own, which can be edited; what cannot be read as one stays TeX. */
function mathOf(tex: string): ParagraphChild {
  const clean = cleanText(tex);
  try {
    return new MathElement({ children: latexToMath(pairBrackets(quoteScriptSigns(clean))) });
  } catch {
    return new TextRun({ text: clean, font: 'Courier New' });
  }
}

/** Runs of a line. */
export function childrenOf(
  runs: readonly Run[],
  references: ReadonlyMap<string, Reference>,
): ParagraphChild[] {
  return runs.map((run) => {
    if ('tex' in run) return mathOf(run.tex);
    if ('cite' in run) {
      const { number } = references.get(run.cite)!;
      return new InternalHyperlink({ anchor: bookmarkOf(number), children: [new TextRun(`[${number}]`)] });
    }
    return new TextRun({
      text: cleanText(run.text),
      ...(run.strong ? { bold: true } : {}),
      ...(run.emphasis ? { italics: true } : {}),
    });
  });
}

/** An equation in a line of its own, with room for fractions. */
export function equationLine(tex: string, keepNext: boolean): Paragraph {
  const math = mathOf(tex);
  const line = { alignment: AlignmentType.CENTER, spacing: { before: 120, after: 120 }, keepNext };
  if (!(math instanceof MathElement)) return new Paragraph({ ...line, children: [math] });
  const made = new Paragraph(line);
  made.addChildElement(new DisplayedMath(math));
  return made;
}

class DisplayedMath extends XmlComponent {
  constructor(math: MathElement) {
    super('m:oMathPara');
    this.root.push(math);
  }
}

/** The number of a caption, which Word counts again when captions are moved. */
export class CaptionNumber extends SimpleField {
  constructor(kind: 'Figure' | 'Table', number: number) {
    super(`SEQ ${kind} \\* ARABIC`);
    this.root.push(new TextRun({ text: String(number), bold: true }));
  }
}

/** Name of the place a citation leads to. */
export function bookmarkOf(number: number): string {
  return `reference_${number}`;
}
