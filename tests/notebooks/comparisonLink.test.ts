import { describe, expect, it } from 'vitest';
import { designs } from '../../data/designs/make.ts';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { comparisonBlocks } from '../../notebooks/comparisonBlocks.ts';
import type { ProseBlock } from '../../notebooks/document.ts';
import type { SetsLink } from '../../notebooks/prose.ts';
import { expectClose } from '../close.ts';

const said = comparisonBlocks.find(({ id }) => id === 'comparison-said') as ProseBlock;
const link = said.prose.slots.find((slot): slot is SetsLink => slot.slot === 'link')!;

describe('the link that sets the best pattern for the spot of today', () => {
  it.each(Object.values(designs).map(({ name, patch }) => [name, patch] as const))(
    '%s: the field then keeps the window, and is as fast as said',
    (_name, patch) => {
      const state = applyPatch(designGraph, initialState(designGraph), patch);
      const engine = createEngine(designGraph, state.inputs);
      const value = (id: string) => valueOrThrow(engine.evaluate([id])[id]!) as number;
      const from = Object.fromEntries(
        Object.entries(link.from).map(([key, { id }]) => [key, value(id)] as const),
      );
      const best = value('comparison.shaped') as unknown as { today: { rate: number } };
      const least = value('comparison.leastInside');
      engine.setInputs(applyPatch(designGraph, state, link.patch(from)).inputs);
      // Parts of a field are worked out to 1e-3.
      expect(value('ripples.areaInWindow')).toBeGreaterThan(least - 1e-3);
      // The rate counts lines as they come, the field whole ones: less than one line of some hundreds.
      expectClose(value('scan.areaRate'), best.today.rate, { relative: 5e-3, source: 'whole lines' });
    },
  );
});
