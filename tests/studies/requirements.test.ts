import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { mostRequirements } from '../../lib/design/savedStudies.ts';
import { derived } from '../../lib/graph/define.ts';
import type { Outcome } from '../../lib/graph/outcome.ts';
import { initialState, sameDesign } from '../../lib/graph/state.ts';
import type { Requirement } from '../../lib/graph/studies.ts';
import {
  canBeAsked,
  distanceBeyond,
  inUnitOf,
  judge,
  numberOf,
  requirementOf,
  requirementsOf,
  withoutRequirement,
  withRequirement,
} from '../../lib/studies/requirements.ts';

const start = initialState(designGraph);
const quantity = (id: string) => designGraph.quantities.get(id)!;
const width = quantity('spot.width');
const asked = (bounds: Partial<Requirement>): Requirement => ({
  id: 'spot.width',
  unit: 'm',
  reason: '',
  ...bounds,
});
const problem = (kind: 'waiting' | 'stopped' | 'outside'): Outcome => ({
  problem: { kind, message: 'It is missing.', parts: {}, at: 'spot.width' },
});

describe('a requirement', () => {
  it('is met on its bounds and between them', () => {
    const both = asked({ atLeast: 1, atMost: 3 });
    const verdicts = [0.999, 1, 2, 3, 3.001].map((value) => judge(both, { value }));
    expect(verdicts).toEqual(['not met', 'met', 'met', 'met', 'not met']);
    expect(judge(asked({ atLeast: -2 }), { value: -3 })).toBe('not met');
    expect(judge(asked({ atMost: -2 }), { value: -3 })).toBe('met');
    expect(judge(asked({ atLeast: 0 }), { value: 0 })).toBe('met');
    expect(judge(asked({ atLeast: 0 }), { value: -1e-12 })).toBe('not met');
  });

  it('is met where only the dust of binary sums lies between value and bound', () => {
    expect(0.1 + 0.2 > 0.3).toBe(true);
    expect(judge(asked({ atMost: 0.3 }), { value: 0.1 + 0.2 })).toBe('met');
    expect(judge(asked({ atMost: 0.3 }), { value: 0.3 * (1 + 2e-9) })).toBe('not met');
  });

  it('is not known without a number, and judged where the model is strained', () => {
    const one = asked({ atMost: 3 });
    const without = [
      undefined,
      problem('waiting'),
      problem('stopped'),
      problem('outside'),
      { value: [1] },
      { value: '2' },
    ];
    expect(without.map((outcome) => judge(one, outcome))).toEqual(without.map(() => 'not known'));
    expect(judge(one, { value: 2, note: 'The model is strained.' })).toBe('met');
    expect(numberOf({ value: 2 })).toBe(2);
  });

  it('tells how far a value lies beyond its nearest bound', () => {
    const both = asked({ atLeast: 1, atMost: 3 });
    expect([0.5, 1, 1.25, 2.5, 3, 4].map((value) => distanceBeyond(both, value))).toEqual([
      0.5, 0, -0.25, -0.5, 0, 1,
    ]);
    expect(distanceBeyond(asked({ atLeast: 1 }), 10)).toBe(-9);
  });

  it('is asked of numbers only', () => {
    const ids = [
      'spot.width',
      'laser.wavelength',
      'plate.stop',
      'laser.beamImage',
      'spot.profile',
      'spot.peak',
    ];
    expect(ids.map((id) => canBeAsked(quantity(id)))).toEqual([true, true, false, false, false, false]);
    expect(canBeAsked(undefined)).toBe(false);
    expect(() => withRequirement(start, quantity('plate.stop'), { atMost: 1, reason: '' })).toThrow(
      /it is no number/,
    );
  });

  it('read before its quantity was known counts in the unit of that', () => {
    const own = derived({
      id: 'own.depth',
      name: 'depth',
      symbol: 'd',
      unit: 'm',
      about: 'of a test',
      from: {},
      compute: () => 2e-6,
      formula: 'd',
      source: 'definition',
    });
    const inMicrometres = { id: 'own.depth', unit: 'um', atLeast: 1, atMost: 3, reason: 'r' };
    const read = inUnitOf(inMicrometres, own)!;
    expect(read).toEqual({ id: 'own.depth', unit: 'm', atLeast: 1e-6, atMost: 3e-6, reason: 'r' });
    expect(judge(read, { value: 2e-6 })).toBe('met');
    expect(inUnitOf({ ...inMicrometres, unit: 'J' }, own)).toBeUndefined();
    expect(inUnitOf({ ...inMicrometres, unit: 'furlongs per rain' }, own)).toBeUndefined();
    expect(inUnitOf(inMicrometres, undefined)).toBeUndefined();
    expect(inUnitOf({ ...inMicrometres, unit: 'm' }, own)).toMatchObject({ atLeast: 1 });
  });
});

describe('requirements of a design', () => {
  const one = withRequirement(start, width, { atMost: 2e-5, reason: '  the tool\npath ' });
  const two = withRequirement(one, quantity('spot.dip'), { atLeast: 0.05, reason: '' });

  it('are set, changed in place and taken out, and the first design stays as it was', () => {
    expect(requirementsOf(start)).toEqual([]);
    expect(requirementOf(one, 'spot.width')).toEqual(asked({ atMost: 2e-5, reason: 'the tool path' }));
    const changed = withRequirement(two, width, { atLeast: 1e-5, reason: '' });
    expect(requirementsOf(changed).map(({ id, atLeast, atMost }) => [id, atLeast, atMost])).toEqual([
      ['spot.width', 1e-5, undefined],
      ['spot.dip', 0.05, undefined],
    ]);
    expect(requirementsOf(withoutRequirement(two, 'spot.width')).map(({ id }) => id)).toEqual(['spot.dip']);
    expect(requirementOf(withoutRequirement(one, 'spot.width'), 'spot.width')).toBeUndefined();
    expect(sameDesign(one, two)).toBe(false);
    expect(sameDesign(withoutRequirement(one, 'spot.width'), start)).toBe(true);
    expect(requirementsOf(two)).toHaveLength(2);
  });

  it('of which a file has two for one number become one', () => {
    const file = {
      ...one,
      studies: { ...one.studies!, requirements: [asked({ atMost: 1 }), asked({ atMost: 2 })] },
    };
    const changed = withRequirement(file, width, { atMost: 3, reason: '' });
    expect(requirementsOf(changed)).toEqual([asked({ atMost: 3 })]);
  });

  it.each([
    [{ reason: '' }, /^Give a least or a greatest value for spot width, or both\.$/],
    [{ atMost: Number.NaN, reason: '' }, /needs a number/],
    [{ atLeast: Infinity, reason: '' }, /needs a number/],
    [{ atLeast: 3e-6, atMost: 2e-6, reason: '' }, /at least 3\sµm and at most 2\sµm at once/],
    [{ atMost: 1, reason: 'x'.repeat(201) }, /The reason has 201 signs; up to 200/],
  ])('refuse %j', (given, message) => {
    expect(() => withRequirement(start, width, given)).toThrow(message);
  });

  it('are no more than a page can show', () => {
    const requirements = Array.from({ length: mostRequirements }, (_, i) =>
      asked({ id: `own.x${i}`, atMost: 1 }),
    );
    const full = { ...one, studies: { ...one.studies!, requirements } };
    expect(() => withRequirement(full, width, { atMost: 1, reason: '' })).toThrow(
      /no more fit\. Take one out first/,
    );
    const last = {
      ...full,
      studies: { ...full.studies, requirements: [...requirements.slice(1), asked({ atMost: 1 })] },
    };
    expect(requirementsOf(withRequirement(last, width, { atMost: 2, reason: '' }))).toHaveLength(
      mostRequirements,
    );
  });
});
