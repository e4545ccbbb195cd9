import type { StepwellDocument } from './document.ts';
import { prose } from './prose.ts';
import { pulseCautions } from './pulseCautions.ts';

/** Short lessons, each over a design of its own. */
export const lessonsDocument: StepwellDocument = {
  id: 'lessons',
  title: 'Lessons',
  lead: prose`Find out whether you have understood: say what you expect, look at what comes, and see why. Each lesson takes a few minutes and has a design of its own, with values that change when you take it again.`,
  learning: true,
  blocks: [
    { kind: 'tool', id: 'lessons-list', tool: 'lessons' },
    {
      kind: 'prose',
      id: 'before-the-table',
      prose: prose`
        ## Before you go to the table

        What follows is about the design that you have open, not about that of a lesson.
      `,
    },
    ...pulseCautions,
  ],
};
