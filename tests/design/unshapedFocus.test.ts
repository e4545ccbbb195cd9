import { describe, it } from 'vitest';
import { expectClose } from '../close.ts';
import { read } from '../notebooks/designOutcomes.ts';

describe('the focus without the step, a disc above half the peak', () => {
  // A Gaussian of 1/e² radius w falls to a half at w √(ln 2/2); a Schell-model beam focuses M² times as wide.
  it.each([1, 1.15, 1.6])('M² = %s without a stop: the closed form', (ratio) => {
    const value = read({ 'plate.stop': 'open', 'laser.beamPropagationRatio': ratio }, {});
    const closed = 2 * ratio * (value('focus.radius') as number) * Math.sqrt(Math.LN2 / 2);
    expectClose(value('unshaped.focus.width') as number, closed, {
      relative: 1e-6,
      source: 'closed form; an open plate ends where 1e-9 of the light is left',
    });
  });

  it('is the spot without the step where the workpiece stands in the focus', () => {
    const value = read({ 'workpiece.z': 0, 'laser.beamPropagationRatio': 1.15 }, {});
    expectClose(value('unshaped.focus.width') as number, value('unshaped.spot.width') as number, {
      relative: 1e-12,
      source: 'the same profile by another way',
    });
  });
});
