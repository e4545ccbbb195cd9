import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { growthFigure, markFigure } from '../../notebooks/markFigures.ts';
import { readValues } from '../../notebooks/prose.ts';
import { thresholdProfileFigure } from '../../notebooks/thresholdFigures.ts';

/** A mark that goes on beyond the computed light, 60 µm of it. */
const cut = { area: 2.827e-9, outerDiameter: 60e-6, innerDiameter: 0, cut: true };
const pins = { 'spot.mark': cut, 'unshaped.spot.mark': cut };

function summaries(figure: typeof markFigure | typeof growthFigure, held: Readonly<Record<string, unknown>>) {
  const ids = Object.values(figure.from).map(({ id }) => id);
  const outcomes = createEngine(designGraph).evaluate(ids, { pins: held });
  const read = readValues(figure.from, ({ id }) => outcomes[id]!);
  if (!('values' in read)) throw new Error('a value is missing');
  return [figure.view(read.values)].flat().map(({ summary }) => summary);
}

describe.each([
  ['marks to scale', markFigure],
  ['growth of the mark', growthFigure],
  ['where the fluence is above the threshold', thresholdProfileFigure],
] as const)('the chart of %s', (_, figure) => {
  it('gives a mark that is cut off as a least width, and only such a one', () => {
    for (const summary of summaries(figure, pins)) expect(summary).toContain('at least');
    for (const summary of summaries(figure, {})) expect(summary).not.toContain('at least');
  });
});
