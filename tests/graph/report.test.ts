import { describe, expect, it } from 'vitest';
import { derived } from '../../lib/graph/define.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import type { Derived, Heaviness } from '../../lib/graph/quantity.ts';
import { portion } from '../../lib/numerics/progress.ts';
import { plainNumber } from './plainQuantities.ts';

const x = plainNumber('test.x');
const counting = (id: string, from: { x: Derived<number> | typeof x }, heavy?: Heaviness) =>
  derived({
    id,
    name: id,
    symbol: 's',
    unit: '1',
    about: '',
    from,
    compute: ({ x }, report) => {
      for (const part of [0.5, 1]) report?.(part);
      return (x as number) + 1;
    },
    formula: 'x+1',
    source: 'definition',
    ...(heavy && { heavy }),
  });
const before = counting('test.before', { x }, 'search');
const asked = counting('test.asked', { x: before }, 'search');
const light = counting('test.light', { x });
const graph = createGraph([asked, light]);

describe('progress of a quantity', () => {
  it('is heard of the heavy ones that are asked for, and changes no value', () => {
    const heard: number[] = [];
    const report = (part: number) => heard.push(part);
    const engine = createEngine(graph);
    expect(engine.evaluate([asked.id], { report })).toEqual(createEngine(graph).evaluate([asked.id]));
    expect(heard, 'what it rests on says nothing').toEqual([0.5, 1]);
    engine.evaluate([asked.id], { report });
    expect(heard, 'what is kept is not worked out again').toHaveLength(2);
    engine.evaluate([light.id], { report });
    expect(heard).toHaveLength(2);
  });

  it('of a part of the work is a part of the whole', () => {
    const heard: number[] = [];
    const second = portion((part) => heard.push(part), 0.5, 0.75);
    for (const part of [0, 0.5, 1]) second?.(part);
    expect(heard).toEqual([0.5, 0.625, 0.75]);
    expect(portion(undefined, 0, 1)).toBeUndefined();
  });
});
