import { expect, test } from 'vitest';
import { designGraph as graph } from '../../../lib/design/design.ts';
import { createEngine } from '../../../lib/graph/engine.ts';
import type { Derived } from '../../../lib/graph/quantity.ts';
import { type VariedResult, vary } from '../../../lib/studies/vary.ts';
import { chartUnit, type Varied } from '../../../notebooks/varied.ts';
import { domainOf, variedFigures } from '../../../notebooks/varyFigures.ts';
import { emptyAxis, overOf, readVaryForm, type VaryPlan } from '../../../notebooks/varyForm.ts';
import { variedRows } from '../../../notebooks/varyTable.ts';
import { influenceSaid, lineSaid, mapSaid, todaySaid } from '../../../notebooks/varyWords.ts';
import { checkFigure } from '../figureCheck.ts';
import { asTyped } from './plainSpaces.ts';

/** What the page would hold for results over inputs. */
function varied(results: readonly string[], axes: readonly object[], change: object = {}): Varied {
  const form = {
    results: results.map((search) => ({ search })),
    axes: axes.map((axis) => ({ ...emptyAxis(), ...axis })),
  };
  const { plan } = readVaryForm(graph, form) as { plan: VaryPlan };
  const inputs = { ...graph.initial, ...change };
  const ids = plan.results.map(({ id }) => id);
  const today = createEngine(graph, inputs).evaluate(ids);
  return { plan, columns: vary(graph, inputs, overOf(plan), ids), inputs, today };
}
const magnification = { search: 'magnification', from: '1', to: '4', count: '4' };
const lens = { search: 'focal length', from: '50 mm', to: '200 mm', count: '3' };
const ratio = graph.quantities.get('match.stepRatio') as Derived<number>;
const width = graph.quantities.get('spot.width') as Derived<number>;

test('a line over a number: closed form of the step ratio, units, today, and what it says', () => {
  const [figure] = variedFigures(varied(['step ratio'], [magnification]));
  expect(figure!.title).toBe('Step ratio over magnification');
  // The step over the beam: 10 mm over 5 mm times the magnification.
  expect([...figure!.series[0]!.y]).toEqual([2, 1, 2 / 3, 0.5].map((value) => expect.closeTo(value, 12)));
  expect([...figure!.series[0]!.x]).toEqual([1, 2, 3, 4]);
  expect(figure!.marks).toEqual([{ kind: 'vertical', x: 2, label: 'today, 2', role: 'today' }]);
  expect(figure!.summary).toBe(
    'Step ratio falls from 2 at 1 to 0.5 at 4. Today magnification is 2, with step ratio 1.',
  );
  checkFigure(figure!);
});

test('results in one unit share a chart, others have their own; lengths in the unit they are shown in', () => {
  const figures = variedFigures(
    varied(['spot width', 'step ratio', 'second-moment diameter'], [{ ...lens, count: '5', by: 'factors' }]),
  );
  expect(figures.map(({ series }) => series.map(({ label }) => label))).toEqual([
    ['spot width', 'second-moment diameter'],
    ['step ratio'],
  ]);
  const [lengths, ratios] = figures as [(typeof figures)[0], (typeof figures)[0]];
  expect(lengths.y.unit).toBe('µm');
  expect(lengths.x).toEqual({ label: 'focal length', unit: 'mm', domain: [50, 200], logarithmic: true });
  expect(lengths.marks![0]).toMatchObject({ x: 100 });
  // The focus scales with the focal length, so the width at 200 mm is four times that at 50 mm.
  expect(lengths.series[0]!.y[4]! / lengths.series[0]!.y[0]!).toBeCloseTo(4, 6);
  expect(ratios.summary).toMatch(/^Step ratio stays at 1\. /);
  for (const figure of figures) checkFigure(figure);
});

test('two numbers: a map with the first input along it', () => {
  const of = varied(['spot width'], [magnification, lens]);
  const [figure] = variedFigures(of);
  expect(figure!.map).toMatchObject({ columns: 4, rows: 3, label: 'spot width', unit: 'µm' });
  const at = (inputs: object) => {
    const outcome = createEngine(graph, { ...graph.initial, ...inputs }).evaluate([width.id])[width.id]!;
    return ('value' in outcome ? (outcome.value as number) : Number.NaN) * 1e6;
  };
  expect(figure!.map!.values[1]).toBeCloseTo(
    at({ 'expander.magnification': 2, 'lens.focalLength': 0.05 }),
    9,
  );
  expect(figure!.map!.values[4]).toBeCloseTo(
    at({ 'expander.magnification': 1, 'lens.focalLength': 0.125 }),
    9,
  );
  expect(figure!.marks![0]).toMatchObject({ kind: 'point', x: 2, y: 100, role: 'today' });
  expect(figure!.map!.range[0]).toBe(Math.min(...figure!.map!.values));
  expect(variedRows(of).rows[4]!.map(asTyped).slice(0, 2)).toEqual(['1', '125 mm']);
  checkFigure(figure!);
});

test('a number and a choice: a curve for each way; choices alone: a table', () => {
  const stop = { search: 'plate.stop', options: ['round', 'open'] };
  const of = varied(['spot width'], [stop, magnification]);
  const [figure] = variedFigures(of);
  expect(figure!.series).toHaveLength(2);
  expect(figure!.series.map(({ role }) => role)).toEqual(['main', 'second']);
  checkFigure(figure!);
  const alone = varied(['spot width'], [stop]);
  expect(variedFigures(alone)).toEqual([]);
  expect(variedRows(alone).rows).toHaveLength(2);
  expect(variedRows(alone).columns.at(-1)).toBe('spot width');
});

test('places without a value are gaps, counted and explained', () => {
  // A step wider than the stop does not go.
  const of = varied(['spot width'], [{ search: 'step diameter', from: '2 mm', to: '20 mm', count: '10' }]);
  const [figure] = variedFigures(of);
  const without = of.columns[0]!.values.filter((value) => value === undefined).length;
  expect(without).toBeGreaterThan(0);
  expect([...figure!.series[0]!.y].filter(Number.isNaN)).toHaveLength(without);
  expect(figure!.summary).toContain(
    `At ${without} of the 10 places it has no value, at the first of them because: ${of.columns[0]!.problem}`,
  );
});

test('every way a line can be told', () => {
  const { plan } = varied(['step ratio'], [magnification]);
  const [axis] = plan.axes;
  const say = (values: (number | undefined)[], problem?: string) =>
    lineSaid(ratio, axis, { id: ratio.id, values, ...(problem ? { problem } : {}) } as VariedResult);
  expect(say([1, 2, 3, 4])).toBe('Step ratio rises from 1 at 1 to 4 at 4.');
  expect(say([4, 3, 3, 1])).toBe('Step ratio falls from 4 at 1 to 1 at 4.');
  expect(say([2, 2, 2.0000001, 2])).toBe('Step ratio stays at 2.');
  expect(say([1, 5, 2, 3])).toBe(
    'Of the 4 values worked out, step ratio is lowest with 1 at 1 and highest with 5 at 2.',
  );
  expect(say([3, 1, 1.0000001, 2])).toBe(
    'Of the 4 values worked out, step ratio is lowest with 1 at 2 and 3 and highest with 3 at 1.',
  );
  const longer = { ...axis, values: [1, 2, 3, 4, 5] };
  const level = { id: ratio.id, values: [3, 1, 1.0000001, 1, 2] } as VariedResult;
  expect(lineSaid(ratio, longer, level)).toBe(
    'Of the 5 values worked out, step ratio is lowest with 1 from 2 to 4 and highest with 3 at 1.',
  );
  expect(say([1, 3, 2, 1])).toBe(
    'Of the 4 values worked out, step ratio is lowest with 1 at 1 and 4 and highest with 3 at 2.',
  );
  expect(say([1, 1, 3, 1.0000001])).toBe(
    'Of the 4 values worked out, step ratio is lowest with 1 in several places (first at 1, last at 4) and highest with 3 at 3.',
  );
  expect(say([1, 2.0000001, 2, 3])).toBe('Step ratio rises from 1 at 1 to 3 at 4.');
  expect(say([undefined, 1, 2, undefined], 'Too wide.')).toBe(
    'Step ratio rises from 1 at 2 to 2 at 3. At 2 of the 4 places it has no value, at the first of them because: Too wide.',
  );
  expect(say([undefined, undefined, undefined, undefined], 'Too wide.')).toBe(
    'Step ratio has no value anywhere here: Too wide.',
  );
});

test('every way a map and today can be told', () => {
  const of = varied(
    ['step ratio'],
    [
      { ...magnification, count: '2' },
      { ...lens, count: '2' },
    ],
  );
  const axes = of.plan.axes as Parameters<typeof mapSaid>[1];
  const say = (values: (number | undefined)[], problem?: string) =>
    asTyped(mapSaid(ratio, axes, { id: ratio.id, values, ...(problem ? { problem } : {}) } as VariedResult));
  expect(say([1, 2, 3, undefined], 'No.')).toBe(
    'Of the 3 places worked out, step ratio is lowest with 1 at magnification 1 and focal length 50 mm, and highest with 3 at magnification 1 and focal length 200 mm. The colours run between the 2 by 2 places worked out. At 1 of the 4 places it has no value, at the first of them because: No.',
  );
  expect(say([1, 1, 1, 1])).toBe('Step ratio stays at 1.');
  expect(say([undefined, undefined, undefined, undefined], 'No.')).toBe(
    'Step ratio has no value anywhere here: No.',
  );
  expect(asTyped(todaySaid(of, [ratio]))).toBe(
    'Today magnification is 2 and focal length is 100 mm, with step ratio 1.',
  );
  const outside = { ...of, inputs: { ...of.inputs, 'expander.magnification': 9 }, today: {} };
  expect(asTyped(todaySaid(outside, [ratio]))).toBe(
    'Today magnification is 9 and focal length is 100 mm, outside what is shown, with no value of step ratio.',
  );
  expect(variedFigures(outside)[0]!.marks).toEqual([]);
});

test('what an input does, in words', () => {
  expect(asTyped(influenceSaid(2, 5))).toBe('1 % more → 2 % more');
  expect(asTyped(influenceSaid(-0.463, 5))).toBe('1 % more → 0.46 % less');
  expect(asTyped(influenceSaid(0.00002, 0))).toBe('1 % of its usual span more → less than 0.001 % more');
});

test('room for values', () => {
  expect(domainOf([])).toEqual({ domain: [0, 1] });
  expect(domainOf([Number.NaN, 1, 9])).toEqual({ domain: [0, 10] });
  expect(domainOf([1, 1000]).logarithmic).toBe(true);
  expect(domainOf([90, 100]).domain).toEqual([expect.closeTo(89.4), expect.closeTo(100.6)]);
  expect(domainOf([5, 5]).domain).toEqual([4.75, 5.25]);
  expect(domainOf([0, 0]).domain).toEqual([-1, 1]);
  expect(chartUnit(width, [undefined, 2e-5]).of(undefined)).toBeNaN();
});
