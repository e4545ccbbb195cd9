import { expect, it } from 'vitest';
import { constantsAt } from '../../lib/materials/opticalConstants.ts';
import { normalAbsorptance } from '../../lib/process/absorptance.ts';
import { expectClose } from '../close.ts';

it('is one less what Fresnel’s amplitude squared reflects', () => {
  for (const [n, k, ambient] of [
    [3.5, 4.9, 1],
    [0.26, 6.96, 1],
    [1.5, 0, 1.33],
  ] as const) {
    const top = (n - ambient) ** 2 + k * k;
    const bottom = (n + ambient) ** 2 + k * k;
    expectClose(normalAbsorptance({ n, k }, ambient), 1 - top / bottom, { relative: 1e-14 });
  }
  expect(normalAbsorptance({ n: 1, k: 0 }, 1)).toBe(1);
});

it('copper reflects, steel takes a third near 1 µm', () => {
  // Handbook reflectivities near 1 µm: copper 97 to 98.5 %, stainless steel 60 to 70 % (memory).
  const copper = normalAbsorptance(constantsAt('copper', 1.03e-6), 1);
  expect(copper).toBeGreaterThan(0.01);
  expect(copper).toBeLessThan(0.04);
  const steel = normalAbsorptance(constantsAt('stainlessAustenitic', 1.03e-6), 1);
  expect(steel).toBeGreaterThan(0.25);
  expect(steel).toBeLessThan(0.42);
});
