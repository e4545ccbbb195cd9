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
  const [first] = steps.map(({ title, pieces }) => contentsOf(title, pieces)[0]!);
  if (first?.kind !== 'block' || first.block.kind !== 'prose') throw new Error('no text');
  expect(steps[0]!.title).toBe('Today’s beam on today’s plate');
  expect(headingIn(first.block.prose)).toBeUndefined();
  expect(first.block.prose.nodes.length).toBeGreaterThan(0);
});

it('another heading stays, and so does one that is all there is', () => {
  expect(headingIn(proseOf('Why', '## Why\n\nSo.'))).toBeUndefined();
  expect(headingIn(proseOf('Why', '## How\n\nSo.'))).toBe('How');
  expect(headingIn(proseOf('Why', 'So.\n\n## Why'))).toBe('Why');
  expect(headingIn(proseOf('Why', '## Why'))).toBe('Why');
});
