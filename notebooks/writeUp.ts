import type { StepwellDocument } from './document.ts';
import { prose, term } from './prose.ts';
import { pulseCautions } from './pulseCautions.ts';

/** What is handed in: the design with its reasons, written from the same blocks as the pages. */
export const writeUp: StepwellDocument = {
  id: 'write-up',
  title: 'Write-up',
  lead: prose`The reasons for a design as a paper to hand in, its ${term('rationale')}. Write what only you know; numbers, tables, charts, cautions and sources come from the pages as they stand. The design file keeps your words, and the command line writes the same document from it.`,
  blocks: [
    {
      kind: 'prose',
      id: 'words',
      prose: prose`
        ## Your own words

        Leave empty what you have nothing to say on: its facts stand there all the same. Stars make words *slanted* or **bold**, a dash begins a line of a list, and the id of a number in braces stands for its value, as in {spot.width}: choose any number on these pages to see its id.
      `,
    },
    { kind: 'tool', id: 'own-words', tool: 'own-words' },
    {
      kind: 'prose',
      id: 'asked',
      prose: prose`
        ## What is asked of the design

        A requirement gives a number a least value, a greatest value or both. One that is not met stands first in the rationale.
      `,
    },
    { kind: 'tool', id: 'requirements-table', tool: 'requirements' },
    {
      kind: 'prose',
      id: 'files',
      prose: prose`
        ## What will be in it

        The set-up sheet has a page of its own, which prints on one side; here it can be saved as a file too.
      `,
    },
    { kind: 'tool', id: 'write-up-files', tool: 'write-up' },
    ...pulseCautions,
  ],
};
