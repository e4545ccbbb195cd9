import { describe, expect, it } from 'vitest';
import { focusRadius } from '../../lib/optics/light.ts';
import { Problem } from '../../lib/problem.ts';
import { checkField, countingDiameter } from '../../lib/process/fieldChecks.ts';
import { expectClose } from '../close.ts';
import { crossedStep, gaussianLight, roundStep, spotAtDefocus } from './spots.ts';

describe('a field against the spot', () => {
  it('a Gaussian counts with its 1/e² diameter', () => {
    expectClose(countingDiameter(spotAtDefocus(gaussianLight, 0)), 2 * focusRadius(gaussianLight), {
      relative: 1e-7,
      source: 'A_eff = πw²/2',
    });
  });

  it.each([
    ['round', roundStep(1, 1.4)],
    ['crossed', crossedStep(0.8)],
  ] as const)('%s: smaller than the spot is impossible, as large passes', (_, light) => {
    const spot = spotAtDefocus(light, 0);
    const diameter = countingDiameter(spot);
    expect(() => checkField({ width: diameter, height: diameter }, spot)).not.toThrow();
    const [small, large] = [0.99 * diameter, 1e-2];
    for (const [field, input] of [
      [{ width: small, height: large }, 'scan.fieldWidth'],
      [{ width: large, height: small }, 'scan.fieldHeight'],
    ] as const) {
      try {
        checkField(field, spot);
        expect.fail('let pass');
      } catch (error) {
        if (!(error instanceof Problem)) throw error;
        expect(error.kind).toBe('impossible');
        expect(error.parts.input).toBe(input);
        expect(error.message).toMatch(
          /^The (width|height) of the field, [\d.]+\sµm, is smaller than the spot of [\d.]+\sµm:/,
        );
      }
    }
  });
});
