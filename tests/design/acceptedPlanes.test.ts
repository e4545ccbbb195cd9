import { describe, expect, it } from 'vitest';
import { hasValue } from '../../lib/graph/outcome.ts';
import { outcomesOf, read } from '../notebooks/designOutcomes.ts';

interface Ends {
  readonly from: number;
  readonly to: number;
}

describe('planes accepted for the workpiece', () => {
  it('are of the kind at their ends and of another a little beyond, where the kind ends first', () => {
    const { from, to } = endsOf('spot.acceptedEnds', {});
    const kindAt = (z: number) => outcomesOf({ 'workpiece.z': z })('spot.kind');
    const here = kindAt(0);
    expect(from).toBeLessThan(0);
    for (const end of [from, to]) {
      expect(kindAt(0.98 * end)).toEqual(here);
      expect(kindAt(1.02 * end)).not.toEqual(here);
    }
  });

  it('are those of the depth of focus, where the kind goes on beyond', () => {
    const beam = { 'laser.beamDiameter': 4.7e-3 };
    expect(endsOf('spot.acceptedEnds', beam)).toEqual(endsOf('spot.depthEnds', beam));
  });

  it('are those of the depth of focus outside the range searched', () => {
    const far = { 'focus.family': [] };
    expect(endsOf('spot.acceptedEnds', {}, far)).toEqual(endsOf('spot.depthEnds', {}));
  });

  it('are none where there is no depth of focus', () => {
    expect(hasValue(outcomesOf({ 'plate.stop': 'open' })('spot.acceptedEnds'))).toBe(false);
  });
});

describe('width of the focus without the step', () => {
  it('is √(2 ln 2) focus radii times M² without a stop', () => {
    for (const ratio of [1, 1.15, 1.5]) {
      const value = read({ 'plate.stop': 'open', 'laser.beamPropagationRatio': ratio });
      const expected = ratio * Math.sqrt(2 * Math.LN2) * value('focus.radius');
      expect(value('unshaped.focus.width') / expected).toBeCloseTo(1, 3);
    }
  });

  it('is that of the workpiece in the focus, wherever that stands', () => {
    const value = read({ 'laser.beamPropagationRatio': 1.15 });
    expect(value('unshaped.focus.width')).toBeCloseTo(value('unshaped.spot.width'), 9);
    const off = read({ 'laser.beamPropagationRatio': 1.15, 'workpiece.z': 2e-4 });
    expect(off('unshaped.focus.width')).toBe(value('unshaped.focus.width'));
    expect(off('unshaped.spot.width')).toBeGreaterThan(1.1 * off('unshaped.focus.width'));
  });
});

function endsOf(id: string, design: object, pins: object = {}): Ends {
  const outcome = outcomesOf({ ...design }, { ...pins })(id);
  if (!hasValue(outcome)) throw new Error(`no ${id}`);
  return outcome.value as Ends;
}
