import { expect, test } from 'vitest';
import { designGraph as graph } from '../../../lib/design/design.ts';
import { isMovable } from '../../../notebooks/studyNames.ts';
import {
  emptyAxis,
  emptyVaryForm,
  overMap,
  overOf,
  readVaryForm,
  usualAxis,
  type VaryForm,
} from '../../../notebooks/varyForm.ts';

const form = (...axes: object[]): VaryForm => ({
  results: [{ search: 'step ratio' }, { search: '' }],
  axes: axes.map((axis) => ({ ...emptyAxis(), ...axis })),
});
const planOf = (of: VaryForm) => {
  const { plan, faults } = readVaryForm(graph, of) as {
    plan: NonNullable<Extract<ReturnType<typeof readVaryForm>, { plan: unknown }>['plan']>;
    faults?: unknown;
  };
  expect(faults).toBeUndefined();
  return plan;
};
const wrong = (of: VaryForm) =>
  readVaryForm(graph, of).faults?.map(({ place, message }) => `${place}: ${message}`);
const magnification = { search: 'magnification', from: '1', to: '4', count: '3' };
const lens = { search: 'focal length', from: '50 mm', to: '0.2 m', count: '2' };

test('one input in equal steps or factors, both ends exact', () => {
  expect(overOf(planOf(form(magnification)))).toEqual([
    { id: 'expander.magnification', values: [1, 2.5, 4] },
  ]);
  expect(overOf(planOf(form({ ...magnification, by: 'factors' })))).toEqual([
    { id: 'expander.magnification', values: [1, 2, 4] },
  ]);
});

test('of two inputs the first moves fastest, and a map goes in equal steps whatever was chosen before', () => {
  const both = form({ ...magnification, by: 'factors' }, lens);
  expect(overMap(graph, both)).toBe(true);
  expect(overOf(planOf(both))).toEqual([
    { id: 'lens.focalLength', values: [0.05, 0.2] },
    { id: 'expander.magnification', values: [1, 2.5, 4] },
  ]);
});

test('a choice is gone through by its ways, and gives the curves beside a number', () => {
  const stop = { search: 'plate.stop', options: ['round', 'open'] };
  const plan = planOf(form(stop, magnification));
  expect(plan.axes.map(({ input }) => input.id)).toEqual(['expander.magnification', 'plate.stop']);
  expect(overMap(graph, form(stop, magnification))).toBe(false);
  expect(wrong(form({ ...stop, options: ['round'] }))?.[0]).toMatch(/^axes: Tick at least two ways of /);
});

test('whole numbers are not taken between, nor twice', () => {
  const whole = [...graph.quantities.values()].find((one) => one.kind === 'number' && one.whole)!;
  const values = (from: number, to: number, count: string) =>
    planOf(form({ search: whole.id, from: String(from), to: String(to), count })).axes[0].values;
  expect(values(2, 6, '41')).toEqual([2, 3, 4, 5, 6]);
  expect(values(1, 41, '11')).toEqual([1, 5, 9, 13, 17, 21, 25, 29, 33, 37, 41]);
});

test('what does not go is said at its row', () => {
  expect(wrong(emptyVaryForm())).toEqual(['form: Choose a result to look at first.']);
  expect(wrong(form())).toEqual(['form: Choose an input to vary.']);
  expect(wrong(form({ ...magnification, from: '4', to: '1' }))).toEqual([
    'axes: The first end has to be below the second one.',
  ]);
  expect(wrong(form({ ...magnification, count: '1' }))?.[0]).toContain('type a whole number from 2 to 500');
  expect(wrong(form({ ...magnification, count: '2.5' }))?.[0]).toContain('‘2.5’ values do not go');
  expect(wrong(form({ ...magnification, count: '61' }, lens))?.[0]).toContain('from 2 to 60');
  expect(wrong(form({ ...magnification, to: '900' }))?.[0]).toContain('Magnification of 900 is not possible');
  expect(wrong(form(magnification, magnification))).toEqual([
    'form: The magnification stands in both rows; choose another input.',
  ]);
  expect(wrong(form({ ...magnification, search: 'spot width' }))?.[0]).toContain('did you mean');
  expect(wrong({ ...form(magnification), results: [{ search: 'magnif' }] })?.[0]).toMatch(/^results: /);
});

test('the span offered for every input can be read back', () => {
  for (const { id } of [...graph.quantities.values()].filter(isMovable)) {
    const plan = planOf(form({ search: id, ...usualAxis(graph, id) }));
    expect(plan.axes[0].values.length, id).toBeGreaterThan(1);
  }
});
