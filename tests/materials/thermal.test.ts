import { expect, it } from 'vitest';
import { material } from '../../lib/design/material.ts';
import { isKnownSource } from '../../lib/materials/bibliography.ts';
import { thermalMaterial, thermalMaterials } from '../../lib/materials/thermal.ts';
import { expectClose } from '../close.ts';

it('every material of the workpiece but the unnamed one has its thermal values, with a source', () => {
  const ids = thermalMaterials.map(({ id }) => id);
  expect([...ids, 'other'].sort()).toEqual(Object.keys(material.options).sort());
  for (const { source } of thermalMaterials) expect(isKnownSource(source)).toBe(true);
});

it('metals keep to Dulong and Petit and to Wiedemann and Franz', () => {
  // 3R a mole and L0·T/ρ: another route to handbook values; real solids differ by a tenth and a fifth at 20 °C.
  const [gas, lorenz, room] = [8.314, 2.44e-8, 293];
  const molar: [string, number, number][] = [
    ['copper', 63.546e-3, 1.68e-8],
    ['silver', 107.87e-3, 1.59e-8],
    ['gold', 196.97e-3, 2.21e-8],
    ['aluminium', 26.982e-3, 2.65e-8],
    ['nickel', 58.693e-3, 6.93e-8],
    ['tungsten', 183.84e-3, 5.28e-8],
    ['molybdenum', 95.95e-3, 5.34e-8],
    ['niobium', 92.906e-3, 15.2e-8],
    ['iron', 55.845e-3, 9.61e-8],
    ['titanium', 47.867e-3, 42e-8],
  ];
  for (const [id, mass, resistivity] of molar) {
    const { specificHeat, conductivity } = thermalMaterial(id);
    expectClose(specificHeat * mass, 3 * gas, { relative: 0.1, source: `${id}: Dulong and Petit` });
    expectClose(conductivity, (lorenz * room) / resistivity, {
      relative: 0.35,
      source: `${id}: Wiedemann and Franz, resistivity from memory`,
    });
  }
});

it('another material names the source to choose', () => {
  expect(() => thermalMaterial('other')).toThrow(
    /source of the thermal values to typed and enter conductivity, density and specific heat/,
  );
});
