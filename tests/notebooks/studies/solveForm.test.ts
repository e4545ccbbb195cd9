import { expect, test } from 'vitest';
import { designGraph as graph } from '../../../lib/design/design.ts';
import { createPart } from '../../../lib/design/ownParts.ts';
import { createSpace } from '../../../lib/studies/solveSpace.ts';
import {
  emptyMove,
  emptySolveForm,
  emptyWant,
  patchesOf,
  readSolveForm,
  type SolveForm,
  usualLimits,
} from '../../../notebooks/solveForm.ts';
import { isMovable } from '../../../notebooks/studyNames.ts';

const lenses = [80, 125].map((mm) => createPart('lens', `f${mm}`, { 'lens.focalLength': mm * 1e-3 }));
const expander = createPart('expander', 'twice', {
  'expander.kind': 'magnification',
  'expander.magnification': 2,
});
const form = (change: Partial<SolveForm>): SolveForm => ({
  wants: [{ ...emptyWant('step ratio'), value: '1,05' }],
  moves: [{ ...emptyMove('magnification'), from: '1', to: '3' }],
  parts: [],
  ...change,
});
const faultsOf = (change: Partial<SolveForm>) =>
  readSolveForm(graph, form(change), lenses).faults?.map(({ place, index, message }) => [
    place,
    index,
    message,
  ]);

test('what is typed becomes a request in SI', () => {
  const wants = [
    { ...emptyWant('STEP ratio'), value: '1,05' },
    { ...emptyWant('spot.width'), kind: 'between' as const, value: '50', upper: '0.07 mm', weight: '10' },
    emptyWant(),
  ];
  const moves = [
    { ...emptyMove('focal length'), way: 'list' as const, list: '80 mm; 100; 0.125 m;' },
    { ...emptyMove('magnification'), from: '1', to: '3' },
    { ...emptyMove('plate.stop'), options: ['round'] },
    emptyMove(),
  ];
  expect(readSolveForm(graph, { wants, moves, parts: [] }, [])).toEqual({
    request: {
      wants: [
        { id: 'match.stepRatio', kind: 'value', value: 1.05 },
        { id: 'spot.width', kind: 'between', low: 5e-5, high: 7e-5, weight: 10 },
      ],
      moves: [
        { id: 'lens.focalLength', values: [0.08, 0.1, 0.125] },
        { id: 'expander.magnification', from: 1, to: 3 },
        { id: 'plate.stop', values: ['round'] },
      ],
    },
  });
});

test('own parts are taken one of each kind at a time', () => {
  const { request } = readSolveForm(graph, form({ moves: [], parts: ['lens'] }), lenses) as never as {
    request: { patches: unknown };
  };
  expect(request.patches).toEqual([
    { name: 'f80', patch: { 'lens.focalLength': 0.08 } },
    { name: 'f125', patch: { 'lens.focalLength': 0.125 } },
  ]);
  const both = patchesOf(['expander', 'lens'], [...lenses, expander]);
  expect(both.map(({ name }) => name)).toEqual(['f80, twice', 'f125, twice']);
  expect(both[1]!.patch).toEqual({ 'lens.focalLength': 0.125, ...expander.values });
  expect(patchesOf(['plate'], lenses)).toEqual([]);
});

test('what cannot be taken is said at its row', () => {
  expect(faultsOf({ wants: [emptyWant()] })).toEqual([
    ['form', 0, 'Nothing is wanted yet: choose a result and type the value it should have.'],
  ]);
  expect(faultsOf({ moves: [] })).toEqual([['form', 0, 'Nothing may change yet: choose an input that may.']]);
  const want = (change: object) => faultsOf({ wants: [{ ...emptyWant('step ratio'), ...change }] })?.[0]?.[2];
  expect(want({})).toBe('A value of step ratio is missing; type one.');
  expect(want({ value: '1.05 mm' })).toContain('1.05 mm');
  expect(want({ value: '2', kind: 'between', upper: '1' })).toContain('exchange them');
  expect(want({ value: '1', weight: '0' })).toContain('is no number above 0');
  expect(want({ search: 'step rati', value: '1' })).toContain('did you mean ‘step ratio’');
  expect(want({ search: 'colour of the wall', value: '1' })).toContain(
    'There is no result ‘colour of the wall’',
  );
  const move = (change: object) => faultsOf({ moves: [{ ...emptyMove('magnification'), ...change }] });
  expect(move({ from: '3', to: '1' })).toEqual([
    ['moves', 0, 'The lower limit is above the upper one; exchange them.'],
  ]);
  expect(move({ from: '3', to: '1000' })?.[0]?.[2]).toContain('Magnification of 1000 is not possible');
  expect(move({ way: 'list', list: ' ; ' })?.[0]?.[2]).toContain(
    'The list of values for magnification is empty',
  );
  expect(move({ search: 'plate.stop' })?.[0]?.[2]).toMatch(/^Tick at least one way of /);
  expect(move({ search: 'spot width' })?.[0]?.[2]).toContain('did you mean ‘spot width wanted’');
});

test('limits offered for every input can be read back and tried', () => {
  const inputs = [...graph.quantities.values()].filter(isMovable);
  expect(inputs.length).toBeGreaterThan(150);
  for (const { id } of inputs) {
    const moves = [{ ...emptyMove(id), ...usualLimits(graph, id) }];
    const { request, faults } = readSolveForm(graph, form({ moves }), []) as {
      request: Parameters<typeof createSpace>[2];
      faults?: unknown;
    };
    expect(faults, id).toBeUndefined();
    expect(() => createSpace(graph, graph.initial, request), id).not.toThrow();
  }
  expect(emptySolveForm().wants).toHaveLength(1);
});
