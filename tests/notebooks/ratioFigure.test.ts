import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { drawFigureStatic } from '../../notebooks/figurePicture.ts';
import { ratioFigure } from '../../notebooks/matchingFigures.ts';
import { layOut } from '../../notebooks/page/figures/layout.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';

function specFor(design: Values) {
  const outcomeOf = outcomesOf(design);
  const entries = Object.entries(ratioFigure.from).map(([key, { id }]) => [
    key,
    (outcomeOf(id) as { value: unknown }).value,
  ]);
  return ratioFigure.view(Object.fromEntries(entries));
}
const open = { 'plate.stop': 'open' };
const dark = { ...open, 'expander.magnification': 2 / Math.sqrt(Math.LN2) };
const newDocument = () =>
  parseHTML('<!doctype html><html><body></body></html>').document as unknown as Document;
const svgOf = (design: Values) => drawFigureStatic(specFor(design), newDocument(), 358, { shape: 'tall' });

describe('colours of the map of step ratios', () => {
  it.each([
    ['no stop', open],
    ['dark centre without a stop', dark],
    ['full wave, no stop', { ...open, 'plate.designPhase': 2 * Math.PI }],
    ['a ratio outside the picture', { ...open, 'expander.magnification': 0.8 }],
  ])('%s: one corner does not set the scale, and the bar says so', (_name, design) => {
    const { map, summary } = specFor(design);
    const { values, range } = map!;
    const above = values.filter((value) => value > range[1]).length / values.length;
    expect(above).toBeGreaterThan(0);
    expect(above).toBeLessThanOrEqual(0.011);
    expect(map!.openEnd).toBe(true);
    expect(svgOf(design)).toContain(' and more<');
    expect(summary).toMatch(/Colours end at [\d.]+\sJ\/cm²; the map reaches [\d.]+\sJ\/cm²\./);
  });

  it('never ends below today’s own profile', () => {
    for (const magnification of [1.3, 1.6, 2, 3, 3.9]) {
      const { map, y, marks } = specFor({ ...open, 'expander.magnification': magnification });
      const today = marks!.find(({ role }) => role === 'today')!.y!;
      const { columns, rows, values, range } = map!;
      const row = Math.round(((today - y.domain[0]) / (y.domain[1] - y.domain[0])) * (rows - 1));
      const profile = values.slice(row * columns, (row + 1) * columns);
      expect(Math.max(...profile)).toBeLessThan(range[1] * 1.001);
    }
  });

  it('goes to the top where the top is near, and then says nothing of more', () => {
    const { map, summary } = specFor({});
    expect(map!.range[1]).toBe(Math.max(...map!.values));
    expect(map!.openEnd).toBe(false);
    expect(svgOf({})).not.toContain('and more');
    expect(summary).not.toMatch(/Colours end/);
  });

  it('leaves room for the words at the end of the bar at 390 px', () => {
    const { colourBar } = layOut(specFor(open), 358, 'tall');
    // Strip of 120 px, a number of up to four figures on each side and "and more".
    expect(colourBar!.x + 32 + 120 + 90).toBeLessThanOrEqual(358);
  });
});
