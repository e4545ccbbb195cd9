import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import type { OwnLine } from '../../lib/graph/studies.ts';
import { goneOutcome, ownGraph, renewedBetween } from '../../lib/studies/ownGraph.ts';
import { line } from './ownOnes.ts';

const lines = [
  line('focal', '2 * lens.focalLength'),
  line('power', 'laser.pulseEnergy * 1 kHz'),
  line('both', 'own.focal * own.power'),
];
const first = ownGraph(designGraph, lines);
const withLine = (i: number, more: Partial<OwnLine>) => lines.with(i, { ...lines[i]!, ...more });
const renewed = (next: readonly OwnLine[]) => renewedBetween(first, ownGraph(designGraph, next, first));

describe('the graph with own quantities', () => {
  it('is the design’s own while there are none', () => {
    expect(ownGraph(designGraph, []).graph).toBe(designGraph);
  });

  it('stays the same object while the lines say the same', () => {
    expect(ownGraph(designGraph, structuredClone(lines), first)).toBe(first);
  });

  it('keeps what means the same, and renews what changed with all that rests on it', () => {
    expect(renewed(withLine(1, { formula: 'laser.pulseEnergy * 2 kHz' }))).toEqual(['own.power', 'own.both']);
    expect(renewed(withLine(2, { display: 'mm W' }))).toEqual(['own.both']);
    expect(renewed([...lines, line('more', 'own.both')])).toEqual(['own.more']);
    expect(renewed(lines.toReversed())).toEqual([]);
    expect(renewed(lines.slice(0, 2))).toEqual(['own.both']);
  });

  it('a line that is taken out takes the value from what rests on it, and back in gives it again', () => {
    const without = ownGraph(designGraph, lines.slice(1), first);
    expect(renewedBetween(first, without)).toEqual(['own.focal', 'own.both']);
    const problem = createEngine(without.graph).evaluate(['own.both'])['own.both']!;
    expect(() => valueOrThrow(problem)).toThrow(/own\.focal/);
    const back = ownGraph(designGraph, lines, without);
    const { 'own.both': value } = createEngine(back.graph).evaluate(['own.both']);
    const { 'own.both': before } = createEngine(first.graph).evaluate(['own.both']);
    expect(value).toEqual(before);
  });

  it('a line with a mistake has a problem in words where its value would be, the same object while it stays', () => {
    const bad = withLine(0, { formula: 'lens.focalLength + 1 J' });
    const one = ownGraph(designGraph, bad, first);
    const outcome = createEngine(one.graph).evaluate(['own.focal'])['own.focal']!;
    expect(() => valueOrThrow(outcome)).toThrow(/At character/);
    expect(one.problems.map(({ id }) => id)).toEqual(['own.focal', 'own.both']);
    const next = ownGraph(designGraph, [...bad, line('more', '1')], one);
    expect(renewedBetween(one, next)).toEqual(['own.more']);
  });

  it('an id that can stand in no graph is left out, and one given twice counts once', () => {
    const odd = [{ ...lines[0]!, id: 'lens.focalLength' }, ...lines, { ...lines[1]!, formula: '1' }];
    const { own, problems } = ownGraph(designGraph, odd);
    expect([...own.keys()]).toEqual(lines.map(({ id }) => id));
    expect(problems.map((one) => one.line)).toEqual([0, 4]);
    const outcome = createEngine(ownGraph(designGraph, odd).graph).evaluate(['own.power'])['own.power']!;
    expect(valueOrThrow(outcome)).toBe((designGraph.initial['laser.pulseEnergy'] as number) * 1e3);
  });

  it('what is gone says so', () => {
    expect(goneOutcome('own.x').problem.message).toMatch(/‘own\.x’ has been taken out/);
  });
});
