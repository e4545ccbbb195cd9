import { expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import type { OwnBlock } from '../../../lib/graph/studies.ts';
import { headingIn } from '../../../notebooks/blockChoices.ts';
import { documents } from '../../../notebooks/contents.ts';
import { dividedIntoSteps, partsOfDocument } from '../../../notebooks/lectures/dividing.ts';
import { stepContents } from '../../../notebooks/lectures/lectureContents.ts';
import type { Prose } from '../../../notebooks/prose.ts';

const contentsOf = (title: string, pieces: readonly OwnBlock[]) =>
  stepContents(designGraph, { id: 'a', title, pieces }, (place) => `p${place}`);
const proseOf = (title: string, text: string): Prose => {
  const [content] = contentsOf(title, [{ kind: 'text', text }]);
  if (content?.kind !== 'block' || content.block.kind !== 'prose') throw new Error('no text');
  return content.block.prose;
};

it('the title of a step is not said again by the heading that it comes from', () => {
  const matching = documents.find(({ id }) => id === 'matching')!;
  const steps = dividedIntoSteps(matching.title, partsOfDocument(matching, designGraph.initial));
  // Whether the block that a step begins with has the title for its heading, and whether it is shown.
  const said = steps.flatMap(({ title, pieces }) => {
    const [piece] = pieces;
    const lent = matching.blocks.find(({ id }) => piece?.kind === 'block' && id === piece.block);
    const [content] = contentsOf(title, pieces);
    if (lent?.kind !== 'prose' || headingIn(lent.prose) !== title) return [];
    return content?.kind === 'block' && content.block.kind === 'prose'
      ? [headingIn(content.block.prose)]
      : [];
  });
  expect(said.length).toBeGreaterThan(3);
  expect(said.filter((heading) => heading !== undefined)).toEqual([]);
});

it('another heading stays, and so does one that is all there is', () => {
  expect(headingIn(proseOf('Why', '## Why\n\nSo.'))).toBeUndefined();
  expect(headingIn(proseOf('Why', '## How\n\nSo.'))).toBe('How');
  expect(headingIn(proseOf('Why', 'So.\n\n## Why'))).toBe('Why');
  expect(headingIn(proseOf('Why', '## Why'))).toBe('Why');
});
