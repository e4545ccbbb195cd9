import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { initialState } from '../../../lib/graph/state.ts';
import { askedNext } from '../../../notebooks/lectures/askedNext.ts';
import { beginGiving, designsOf, goTo } from '../../../notebooks/lectures/giving.ts';
import { halfWaveLecture } from '../../../notebooks/lectures/halfWave.ts';
import { read } from '../designOutcomes.ts';

const design = initialState(designGraph);

describe('what the next step asks', () => {
  it('is told with the numbers of its own design, and is empty where nothing is asked', () => {
    const { steps } = halfWaveLecture;
    for (const [place, step] of steps.entries()) {
      const asked = askedNext(designGraph, design, beginGiving(halfWaveLecture, place, 0));
      const coming = steps[place + 1]?.ask;
      if (!coming) expect(asked, step.id).toBe('');
      else expect(asked, step.id).not.toMatch(/^$|—|\{/);
    }
  });

  it('gives the Rayleigh length that the step before does not have', () => {
    const place = halfWaveLecture.steps.findIndex(({ ask }) => /rayleighLength/.test(ask?.question ?? ''));
    const before = beginGiving(halfWaveLecture, place - 1, 0);
    const there = designsOf(designGraph, design, goTo(before, place)).present.inputs;
    const length = read(there)('focus.rayleighLength') * 1e6;
    expect(askedNext(designGraph, design, before)).toContain(`${length.toPrecision(4)}\u202fµm`);
  });
});
