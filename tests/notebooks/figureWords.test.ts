import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import type { FigureBlock } from '../../notebooks/document.ts';
import { amplitudeFigure, profileFigure } from '../../notebooks/matchingFigures.ts';
import { readValues } from '../../notebooks/prose.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';

/** A figure as it is for a design, and the text of any quantity beside it. */
function drawn(block: FigureBlock, design: Values) {
  const outcomeOf = outcomesOf(design);
  const read = readValues(block.from, ({ id }) => outcomeOf(id));
  if (!('values' in read)) throw new Error(read.problem.message);
  const text = (id: string) => shownValue(designGraph.quantities.get(id)!, outcomeOf(id));
  return { figure: block.view(read.values), text };
}

describe('words below figures', () => {
  const between = { 'plate.source': 'made', 'plate.madeHeight': 1.1437e-6, 'laser.wavelength': 515e-9 };

  it('amplitudes: the numbers of the text, not of the nearest point drawn; whole waves dropped', () => {
    const { figure, text } = drawn(amplitudeFigure, between);
    expect(figure.x.label).toContain('whole waves dropped');
    expect(figure.summary).toContain(`is ${text('explain.axisIrradianceInFocus')} of`);
    expect(figure.summary).toMatch(/At today’s 1\.0\d+\swaves, 0\.0\d+\swaves without its whole waves, the/);
    expect(figure.marks![0]!.x).toBeLessThan(0.1);
  });

  it('amplitudes: today’s place and phase alike below one wave', () => {
    const { figure, text } = drawn(amplitudeFigure, {});
    expect(figure.summary).toContain(`At today’s ${text('plate.stepPhase')} the centre gives −0.632`);
    expect(figure.marks![0]!.x).toBeCloseTo(0.5, 12);
  });

  it('amplitudes: what cancels to the last bits is 0', () => {
    const dark = { 'plate.stop': 'open', 'expander.magnification': 2 / Math.sqrt(Math.LN2) };
    const { figure, text } = drawn(amplitudeFigure, dark);
    expect(text('explain.axisIrradianceInFocus')).toMatch(/^0\s%$/);
    expect(figure.summary).toMatch(/the irradiance on the axis is 0\s% of/);
  });

  it('profile: a peaked spot is called so, without a dip', () => {
    const { figure } = drawn(profileFigure, { 'plate.designPhase': 2 * Math.PI });
    expect(figure.summary).toMatch(/the spot is peaked, [\d.]+\sµm wide, without a dip and with a peak of/);
  });

  it('profile: a ring with its dip', () => {
    const { figure, text } = drawn(profileFigure, { 'plate.stop': 'open' });
    expect(figure.summary).toMatch(/the spot is a ring, /);
    expect(figure.summary).toContain(`with a dip of ${text('spot.dip')} and`);
  });
});
