import { describe, expect, test } from 'vitest';
import { isKnownSource } from '../../lib/materials/bibliography.ts';
import {
  type GlassId,
  glassById,
  groupIndex,
  nonlinearIndex,
  refractiveIndex,
} from '../../lib/materials/glasses.ts';
import { expectClose } from '../close.ts';

const glasses: GlassId[] = ['fusedSilica', 'bk7', 'sapphire', 'calciumFluoride'];

describe.each(glasses)('%s', (glass) => {
  test('group index is n − λ dn/dλ', () => {
    for (const wavelength of [0.35e-6, 0.515e-6, 1.03e-6, 2e-6]) {
      const h = 1e-3 * wavelength;
      const n = (shift: number) => refractiveIndex(glass, wavelength + shift * h);
      const slope = (8 * (n(1) - n(-1)) - (n(2) - n(-2))) / (12 * h);
      // Fourth-order differences: truncation 1e-12, rounding 1e-16/1e-3 = 1e-13.
      expectClose(groupIndex(glass, wavelength), n(0) - wavelength * slope, {
        relative: 1e-11,
        source: 'differences',
      });
    }
  });

  test('the ends of the range belong to it, beyond is a problem', () => {
    const [shortest = 0, longest = 0] = glassById(glass).wavelengths;
    for (const end of [shortest, longest]) expect(refractiveIndex(glass, end * 1e-6)).toBeGreaterThan(1);
    for (const beyond of [0.99 * shortest, 1.01 * longest, Number.NaN]) {
      expect(() => refractiveIndex(glass, beyond * 1e-6)).toThrow(/is known from .* µm/);
      expect(() => groupIndex(glass, beyond * 1e-6)).toThrow(expect.objectContaining({ kind: 'outside' }));
    }
  });

  test('its sources are in the bibliography', () => {
    const { source, nonlinearIndex: kept } = glassById(glass);
    expect(isKnownSource(source)).toBe(true);
    if (kept) expect(isKnownSource(kept.source)).toBe(true);
  });
});

test('nonlinear index and unknown glasses', () => {
  expect(nonlinearIndex('fusedSilica')).toBe(2.7e-20);
  expect(() => nonlinearIndex('sapphire')).toThrow(expect.objectContaining({ kind: 'absent' }));
  expect(() => glassById('amber')).toThrow(/no glass 'amber'/);
});
