import type { ChangeStudy } from '../lib/studies/change.ts';
import { listed } from './shortTexts.ts';

/** Inputs of one change that are told by name; of more only the number. */
const mostNamed = 3;

/** What was changed last, from what to what. */
export function changedSaid({ inputs }: ChangeStudy): string {
  if (inputs.length === 0) return 'The last step changed no input.';
  const told = inputs.slice(0, mostNamed).map(({ name, texts: [before, now] }) => {
    return `${name} from ${before} to ${now}`;
  });
  const more = inputs.length - told.length;
  const others = more === 0 ? [] : [`${more} ${more === 1 ? 'other input' : 'other inputs'}`];
  return `The last step changed ${listed([...told, ...others])}.`;
}

/** How much of a document moved. */
export function movedSaid({ moved, same, heavy }: ChangeStudy, title: string): string {
  const all = moved.length + same;
  const left =
    heavy.length === 0
      ? ''
      : ` ${heavy.length === 1 ? 'One number takes' : `${heavy.length} numbers take`} a longer computation and ${heavy.length === 1 ? 'is' : 'are'} left out.`;
  if (all === 0) return `‘${title}’ shows no numbers that can be compared at once.${left}`;
  if (moved.length === 0) return `None of the ${all} numbers of ‘${title}’ moved.${left}`;
  return `${moved.length} of the ${all} numbers of ‘${title}’ moved; what moved furthest in parts of itself stands first.${left}`;
}
