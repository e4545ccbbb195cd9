import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { initialState } from '../../lib/graph/state.ts';
import { conditionHolds } from '../../notebooks/condition.ts';
import { documents } from '../../notebooks/contents.ts';
import type { Block, ProseBlock } from '../../notebooks/document.ts';
import { firstProblem, neededQuantities } from '../../notebooks/prose.ts';
import { proseText } from '../../notebooks/slotPieces.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';

const isCaution = (block: Block): block is ProseBlock => block.kind === 'caution';
const cautions = documents.flatMap((document) =>
  document.blocks.filter(isCaution).map((block) => ({ name: `${document.id}, ${block.id}`, block })),
);
const designs: Readonly<Record<string, Values>> = {
  'as at first': {},
  'the step outside the stop': { 'plate.apertureDiameter': 5e-3 },
  'the workpiece far from the focus': { 'workpiece.z': 50e-3 },
  'a measured beam without an image': { 'laser.beamSource': 'measured' },
  'thresholds of the handbook, without a spot': {
    'threshold.source': 'handbook',
    'plate.apertureDiameter': 5e-3,
  },
};

describe('cautions stand whatever the design', () => {
  for (const [name, design] of Object.entries(designs)) {
    const outcomeOf = outcomesOf(design);
    const inputs = { ...initialState(designGraph).inputs, ...design };
    const shown = cautions.filter(
      ({ block: { when } }) => when === undefined || conditionHolds(when, inputs),
    );
    for (const { name: place, block } of shown) {
      it(`${place}: ${name}`, () => {
        const { prose, needs = [] } = block;
        // About a measurement that is not there nothing is to be said.
        if (firstProblem(needs, ({ id }) => outcomeOf(id))) return;
        expect(firstProblem(neededQuantities(prose), ({ id }) => outcomeOf(id))).toBeUndefined();
        const text = proseText(prose, ({ id }) => outcomeOf(id));
        expect(text).not.toMatch(/—|NaN|undefined/);
        if (block.when === undefined && needs.length === 0) expect(text.trim().length).toBeGreaterThan(60);
      });
    }
  }

  it('are in every document, on X-rays too', () => {
    for (const { id } of documents) expect(cautions.map(({ name }) => name)).toContain(`${id}, x-rays`);
  });
});
