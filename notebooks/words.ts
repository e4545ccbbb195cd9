import type { StepwellDocument } from './document.ts';
import { leads, prose } from './prose.ts';
import { pulseCautions } from './pulseCautions.ts';

/** The words of the trade with what is behind each today, and two converters for what is most often mixed up. */
export const wordsDocument: StepwellDocument = {
  id: 'words',
  title: 'Words and symbols',
  short: 'Words',
  learning: true,
  lead: prose`What each word and symbol means here, which custom is followed where there are several, and what stands behind it in today’s design. Choose a number to see where it comes from.`,
  blocks: [
    {
      kind: 'prose',
      id: 'converters',
      prose: prose`Below the words you can turn ${leads('one width of a beam into another', 'widths-said')}, and ${leads('energy into peak and mean fluence', 'fluences-said')}.`,
    },
    { kind: 'tool', id: 'glossary', tool: 'words' },
    {
      kind: 'prose',
      id: 'widths-said',
      prose: prose`
        ## One width into another

        The same beam is 1 mm wide by its 1/e² radius, 1.18 mm by its full width at half maximum, and 2 mm by its 1/e² diameter. Type the number that you have into its line; the others follow. All of them hold for a Gaussian only.
      `,
    },
    { kind: 'tool', id: 'widths', tool: 'widths' },
    {
      kind: 'prose',
      id: 'fluences-said',
      prose: prose`
        ## Energy into fluence

        The peak of a Gaussian is twice the mean over its 1/e² circle, so a threshold without the word “peak” or “mean” may be off by a factor of two. Type energy and width, or the fluence that you want. It begins with the plain beam in its focus.
      `,
    },
    { kind: 'tool', id: 'fluences', tool: 'fluences' },
    ...pulseCautions,
  ],
};
