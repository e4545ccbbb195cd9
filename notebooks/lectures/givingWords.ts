import { type Giving, roomOf, stepOf, withholds } from './giving.ts';

/** What the room sees that the lecturer should know of. */
export function stateSaid(giving: Giving): string {
  const step = stepOf(giving);
  if (giving.blank) return 'The screen is blank. Going on shows it again.';
  if (!step?.ask) return '';
  if (!withholds(step)) return 'The room is asked; nothing is withheld.';
  return roomOf(giving).revealed
    ? 'The room sees the answer.'
    : 'The room is asked, and does not see the answer yet. Going on shows it.';
}

/** What the room takes for right. */
export function roomSaid(giving: Giving): string {
  const { chosen } = roomOf(giving);
  const option = chosen === undefined ? undefined : stepOf(giving)?.ask?.options[chosen];
  return option === undefined ? '' : `The room says: ${option}`;
}

/** What is read aloud when a step opens. */
export function stepHeard({ lecture, place }: Giving): string {
  return `Step ${place + 1} of ${lecture.steps.length}: ${lecture.steps[place]?.title ?? ''}`;
}
