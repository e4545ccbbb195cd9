import { expect, it } from 'vitest';
import { derived } from '../../lib/graph/define.ts';
import { descendantsOf } from '../../lib/graph/descendants.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import { plainNumber, plainPick } from './plainQuantities.ts';

const { used } = plainPick(plainNumber('test.typed'), plainNumber('test.measured'));
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
