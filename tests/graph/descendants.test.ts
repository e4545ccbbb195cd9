import { expect, it } from 'vitest';
import { choice, derived, number, picked } from '../../lib/graph/define.ts';
import { descendantsOf } from '../../lib/graph/descendants.ts';
import { createGraph } from '../../lib/graph/graph.ts';

const input = (id: string) =>
  number({ id, name: id, symbol: 'x', unit: '1', about: '', initial: 1, range: { min: 0, max: 9 } });
const [typed, measured] = [input('test.typed'), input('test.measured')];
const by = choice({
  id: 'test.by',
  name: 'by',
  symbol: 'b',
  about: '',
  initial: 'typed',
  options: { typed: 'typed', measured: 'measured' },
});
const used = picked({
  id: 'test.used',
  name: 'used',
  symbol: 'u',
  unit: '1',
  about: '',
  by,
  cases: { typed, measured },
  formula: 'x',
});
const twice = derived({
  id: 'test.twice',
  name: 'twice',
  symbol: 't',
  unit: '1',
  about: '',
  from: { used },
  compute: ({ used }) => 2 * (used as number),
  formula: '2u',
  source: 'definition',
});
const graph = createGraph([twice]);

it.each([
  ['test.typed', 'typed', true],
  ['test.measured', 'typed', false],
  ['test.measured', 'measured', true],
  ['test.by', 'typed', true],
])('%s with the choice %s touches what is picked: %s', (changed, chosen, expected) => {
  const touched = descendantsOf(graph, [changed], { 'test.by': chosen });
  expect(touched.has('test.twice')).toBe(expected);
});

it('without inputs every case counts', () => {
  expect(descendantsOf(graph, ['test.measured']).has('test.twice')).toBe(true);
});
