import { expect, it } from 'vitest';
import { derived } from '../../lib/graph/define.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import { plainNumber, plainWords } from './plainQuantities.ts';

it('what follows from a text alone is kept for the last four texts', () => {
  const x = plainNumber('in.x');
  const worked: string[] = [];
  const plan = derived({
    ...plainWords,
    unit: 'none',
    id: 'out.plan',
    name: 'plan',
    from: { x },
    compute: ({ x }) => `plan ${Math.floor(x / 10)}`,
  });
  const matrix = derived({
    ...plainWords,
    unit: 'none',
    id: 'out.matrix',
    name: 'matrix',
    from: { plan },
    compute: ({ plan }) => {
      worked.push(plan);
      return { plan };
    },
  });
  const engine = createEngine(createGraph([matrix]));
  const at = (value: number) => {
    engine.changeInputs({ 'in.x': value });
    return engine.evaluate(['out.matrix'])['out.matrix'];
  };
  const [first] = [at(1), at(11), at(21), at(31)];
  expect(at(2)).toBe(first);
  expect(at(12)).toEqual({ value: { plan: 'plan 1' } });
  expect(worked).toEqual(['plan 0', 'plan 1', 'plan 2', 'plan 3']);
  // A fifth text takes the place of the oldest.
  at(41);
  expect(at(3)).toEqual(first);
  expect(worked.slice(4)).toEqual(['plan 4', 'plan 0']);
});
