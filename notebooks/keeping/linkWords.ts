import { designGraph } from '../../lib/design/design.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import type { Patch } from '../../lib/graph/state.ts';
import type { LinkedDesign } from './designLink.ts';

/** More names than these are counted. */
const mostNames = 6;
/** Longer names are cut; signs. */
const longestName = 60;

/** What is said to the person who opens a link: that its design is open, and what did not come with it. */
export function linkWords(inputs: Patch, leftOut: LinkedDesign['leftOut']): string {
  const opened = 'The design in the link is open. The steps that led to it do not travel in a link.';
  if (leftOut === 'unknown')
    return `${opened} This link was made by an earlier program, which did not note whether files, such as camera images, stayed behind.`;
  const { files, measured, typed } = leftOut;
  const names = Object.entries(files).map(([id, file]) => `‘${cut(file)}’${inputName(id)}`);
  const behind =
    names.length === 0
      ? ''
      : `Stayed behind with the sender, since a link holds 8 kB at most: ${listed(names)}; a design file would bring ${names.length === 1 ? 'it' : 'them'}.`;
  return [
    opened,
    behind,
    typedWords(inputs, measured, 'What was measured from files counts as typed here'),
    typedWords(
      inputs,
      typed,
      'Nothing that can be typed was measured for these, so they count as typed before',
    ),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

function typedWords(inputs: Patch, ids: readonly string[], words: string): string {
  const values = ids.flatMap((id) => {
    const quantity = designGraph.quantities.get(id);
    return quantity?.kind === 'number'
      ? [`${quantity.name} ${shownValue(quantity, { value: inputs[id] })}`]
      : [];
  });
  return values.length === 0 ? '' : `${words}: ${values.join('; ')}.`;
}

function inputName(id: string): string {
  const name = designGraph.quantities.get(id)?.name;
  return name === undefined ? '' : ` (${name})`;
}

function listed(names: readonly string[]): string {
  const more = names.length > mostNames ? ` and ${names.length - mostNames} more` : '';
  return `${names.slice(0, mostNames).join(', ')}${more}`;
}

function cut(name: string): string {
  return name.length > longestName ? `${name.slice(0, longestName)}…` : name;
}
