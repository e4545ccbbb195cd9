import type { Quantity } from '../../lib/graph/quantity.ts';
import type { Paper, PaperBlock } from '../paper/paper.ts';
import { citedIn, shownIn, uniqueFigures } from '../paper/readPaper.ts';
import { lackingIn, writtenBlock } from '../paper/writtenBlock.ts';
import type { Told } from '../paper/writtenValue.ts';
import { alternativeBlocks } from './alternativesPart.ts';
import { formulaBlocks, inputBlocks, ownLineBlocks } from './appendixPart.ts';
import { originBlocks } from './beamPart.ts';
import { cautionBlocks } from './cautionsPart.ts';
import { factsOf, type Made } from './facts.ts';
import { keyNumbers } from './keyNumbers.ts';
import { measuredBeamBlocks } from './otherSections.ts';
import { ownPagesPart } from './ownPagesPart.ts';
import { ownWordsBlocks } from './ownWords.ts';
import { rationaleQuantities } from './rationaleIds.ts';
import { requirementBlocks } from './requirementsPart.ts';
import { ownTexts, type Section } from './section.ts';
import { blocksFor, inShort, sectionsFor } from './sections.ts';
import type { ToldDesign } from './told.ts';
import { uncheckedBlocks } from './uncheckedPart.ts';
import { usesOf } from './uses.ts';

const heading = (text: string, level: 1 | 2 = 1): PaperBlock => ({ kind: 'heading', level, text });
const note = (text: string): PaperBlock => ({ kind: 'paragraph', role: 'note', runs: [{ text }] });

/** The design rationale: assembled from the person's words and the blocks of the documents. */
export function composeRationale(told: ToldDesign, made: Made): Paper {
  const { reasons, rest } = sectionsFor(told.design);
  const uses = usesOf(told.design);
  const body = uniqueFigures([
    ...purposeBlocks(told),
    heading('Requirements'),
    ...requirementBlocks(told),
    heading('Beam and plate'),
    ...originBlocks(told),
    ...measuredBeamBlocks.flatMap((block) => writtenBlock(block, told)),
    heading('Why this design'),
    ...reasons.flatMap((section) => sectionBlocks(section, told)),
    heading('Alternatives that were kept', 2),
    ...alternativeBlocks(told),
    ...rest.flatMap((section) => sectionBlocks(section, told)),
    ...ownPagesPart(told),
    heading(ownTexts.risks.heading),
    ...ownWordsBlocks(told, 'risks'),
    ...cautionBlocks(told, uses),
    heading(ownTexts.unchecked.heading),
    ...ownWordsBlocks(told, 'unchecked'),
    ...uncheckedBlocks(told, {
      problems: blocksFor(told.design).flatMap((block) => lackingIn(block, told)),
      read: notedQuantities(told),
      uses,
    }),
  ]);
  const blocks = [...body, ...appendixBlocks(told, body)];
  return {
    title: `Design rationale: ${made.name}`,
    date: made.date,
    design: made.name,
    facts: factsOf(made),
    blocks,
    references: citedIn(blocks),
  };
}

function purposeBlocks(told: ToldDesign): PaperBlock[] {
  const own = ownWordsBlocks(told, 'purpose');
  const about = (told.design.about ?? '').split(/\n+/).filter((line) => line.trim() !== '');
  return [
    heading(ownTexts.purpose.heading),
    ...(own.length > 0 ? own : [note('The purpose has not been written yet.')]),
    ...about.map((line): PaperBlock => ({ kind: 'paragraph', runs: [{ text: line.trim() }] })),
    ...inShort.flatMap((block) => writtenBlock(block, told)),
  ];
}

/** A part: the person's words, then the blocks; where those are all without a value, why. */
function sectionBlocks({ heading: title, level, own, blocks }: Section, told: ToldDesign): PaperBlock[] {
  const words = own === undefined ? [] : ownWordsBlocks(told, own);
  const written = blocks.flatMap((block) => writtenBlock(block, told));
  return [heading(title, level), ...words, ...(written.length > 0 ? written : whyEmpty(blocks, told))];
}

function whyEmpty(blocks: Section['blocks'], told: Told): PaperBlock[] {
  const [first] = blocks.flatMap((block) => lackingIn(block, told));
  return first === undefined ? [] : [note(first.message)];
}

/** Every number read, and those behind them, whose model may be strained. */
function notedQuantities(told: ToldDesign): Quantity[] {
  const all = [...told.graph.order].filter((quantity) => quantity.kind === 'derived' && quantity.valid);
  return [...new Set([...rationaleQuantities(told.graph, told.design), ...all])];
}

/** Formulas stand there for the numbers that sentences tell and those that decide; a table tells its own. */
function appendixBlocks(told: ToldDesign, body: readonly PaperBlock[]): PaperBlock[] {
  const own = ownLineBlocks(told);
  const named = [
    ...shownIn(body.filter(({ kind }) => kind !== 'table')),
    ...keyNumbers(told).map(({ id }) => id),
  ];
  const shown = [...new Set(named)].flatMap((id) => told.graph.quantities.get(id) ?? []);
  return [
    heading('Appendix: all inputs'),
    ...inputBlocks(told),
    ...(own.length === 0 ? [] : [heading('Appendix: own quantities'), ...own]),
    heading('Appendix: formulas of the numbers in the text'),
    ...formulaBlocks(told, shown),
  ];
}
