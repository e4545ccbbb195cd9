import type { StepwellDocument } from './document.ts';
import { leads, prose } from './prose.ts';
import { pulseCautions } from './pulseCautions.ts';

/** The eighth document: what else could be done, held against today's design. */
export const whatIf: StepwellDocument = {
  id: 'what-if',
  title: 'What if',
  lead: prose`A design is a choice among others. This page keeps the others beside it: set one, keep it under a name, go on, and see in which inputs and in which numbers they differ. What is kept is saved with the design, travels in its file and its link, and can be taken over again at any time.`,
  blocks: [
    {
      kind: 'prose',
      id: 'what-there-is',
      prose: prose`
        Here you can ${leads('keep and compare alternatives', 'compare')}, ${leads('vary an input or two', 'vary')}, ${leads('find inputs for what you want', 'solve')}, see ${leads('why something changed', 'change')}, ${leads('ask something of the design', 'requirements')}, and write ${leads('numbers of your own', 'own-quantities')}.
      `,
    },
    {
      kind: 'prose',
      id: 'compare',
      prose: prose`
        ## Alternatives side by side

        Keep the design as it stands before you try something else. Today’s design is the one that is set now: each change against it is given in per cent of today’s number, or as a factor where it is more than three times as much.
      `,
    },
    { kind: 'tool', id: 'compare-table', tool: 'compare' },
    {
      kind: 'prose',
      id: 'vary',
      prose: prose`
        ## Vary an input, or two

        Any result over any one or two inputs, everything else as the design stands: a chart with today’s place marked, or a map. Choose a result first; its inputs are then listed by how much each moves it.
      `,
    },
    { kind: 'tool', id: 'vary-form', tool: 'vary' },
    {
      kind: 'prose',
      id: 'solve',
      prose: prose`
        ## Find inputs for what you want

        Say what a result should be, and which inputs may change for it: between two limits, among a few values such as the lenses in the drawer, or among the parts that you keep. What is found is a proposal, which changes nothing until you take it over.
      `,
    },
    { kind: 'tool', id: 'solve-form', tool: 'solve' },
    {
      kind: 'prose',
      id: 'change',
      prose: prose`
        ## Why did this change

        One input moves many numbers. Here is what the last step changed, which numbers of a document moved with it and how far, and by which steps of the calculation the change came to each.
      `,
    },
    { kind: 'tool', id: 'change-table', tool: 'change' },
    {
      kind: 'prose',
      id: 'requirements',
      prose: prose`
        ## What is asked of the design

        Any number can be given a least value, a greatest value or both, with the reason. Whether it is met then shows wherever the number does, on every page, and what is not met stands first here. A number that has no value, or is still being worked out, counts as not known. What is asked is saved with the design.
      `,
    },
    { kind: 'tool', id: 'requirements-table', tool: 'requirements' },
    {
      kind: 'prose',
      id: 'own-quantities',
      prose: prose`
        ## Numbers of your own

        A formula over the numbers of the design becomes a number like the others: its unit is checked, it shows where it comes from when it is chosen, and it can stand on pages of your own. It is saved with the design.
      `,
    },
    { kind: 'tool', id: 'own-quantities-list', tool: 'own-quantities' },
    ...pulseCautions,
  ],
};
