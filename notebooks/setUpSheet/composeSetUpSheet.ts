import type { Paper, PaperBlock } from '../paper/paper.ts';
import { writtenBlock } from '../paper/writtenBlock.ts';
import { factsOf, type Made } from '../rationale/facts.ts';
import { requirementBlocks } from '../rationale/requirementsPart.ts';
import type { ToldDesign } from '../rationale/told.ts';
import { setUpBlocks } from './setUpBlocks.ts';

/** The set-up sheet as a paper: the blocks of the page, and what is required of the design. */
export function composeSetUpSheet(told: ToldDesign, made: Made): Paper {
  const required: PaperBlock[] =
    told.studies.requirements.length === 0
      ? []
      : [{ kind: 'heading', level: 1, text: 'What is required' }, ...requirementBlocks(told)];
  return {
    compact: true,
    title: `Set-up sheet: ${made.name}`,
    date: made.date,
    design: made.name,
    facts: factsOf(made),
    blocks: [...setUpBlocks.flatMap((block) => writtenBlock(block, told, { headings: 1 })), ...required],
    references: [],
  };
}
