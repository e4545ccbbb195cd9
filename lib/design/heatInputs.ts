import { choice, number } from '../graph/define.ts';

export const residualFraction = number({
  id: 'heat.residualFraction',
  name: 'part of the absorbed energy that stays as heat',
  symbol: '\\eta_\\text{heat}',
  unit: '1',
  display: '%',
  about:
    'Part of the energy absorbed from a pulse that remains in the workpiece as heat; 20 to 40\u202f% for metals under ultrashort pulses (common practice).',
  initial: 0.3,
  range: { min: 0, max: 1 },
  typical: [0.2, 0.4],
});

export const absorptanceSource = choice({
  id: 'heat.absorptanceSource',
  name: 'source of the absorptance',
  symbol: '\\text{absorptance source}',
  about:
    'Whether the absorbed part of the light follows from the optical constants of the cold surface, or is typed.',
  initial: 'constants',
  options: { constants: 'optical constants of the material', typed: 'typed' },
});

export const typedAbsorptance = number({
  id: 'heat.typedAbsorptance',
  name: 'absorptance as typed',
  symbol: 'A_\\text{typed}',
  unit: '1',
  display: '%',
  about:
    'Part of the incident energy of a pulse that the workpiece absorbs; a rippled surface takes more than a polished one.',
  initial: 0.4,
  range: { min: 0, max: 1 },
  typical: [0.1, 0.7],
});

export const thermalSource = choice({
  id: 'heat.thermalSource',
  name: 'source of the thermal values',
  symbol: '\\text{thermal source}',
  about: 'Whether conductivity, density and specific heat are those kept for the material, or typed.',
  initial: 'material',
  options: { material: 'kept for the material', typed: 'typed' },
});

export const typedConductivity = number({
  id: 'heat.typedConductivity',
  name: 'thermal conductivity as typed',
  symbol: 'k_\\text{typed}',
  unit: 'W/(m*K)',
  about: 'Thermal conductivity of the workpiece.',
  initial: 15,
  range: { min: 0.01, max: 3000 },
  typical: [1, 400],
});

export const typedDensity = number({
  id: 'heat.typedDensity',
  name: 'density as typed',
  symbol: '\\rho_\\text{typed}',
  unit: 'kg/m^3',
  about: 'Density of the workpiece.',
  initial: 8000,
  range: { min: 10, max: 25000 },
  typical: [2000, 20000],
});

export const typedSpecificHeat = number({
  id: 'heat.typedSpecificHeat',
  name: 'specific heat as typed',
  symbol: 'c_\\text{typed}',
  unit: 'J/(kg*K)',
  about: 'Specific heat capacity of the workpiece.',
  initial: 500,
  range: { min: 50, max: 5000 },
  typical: [100, 1000],
});

export const thickness = number({
  id: 'workpiece.thickness',
  name: 'thickness of the workpiece',
  symbol: 'd',
  unit: 'm',
  display: 'mm',
  about: 'Thickness of the workpiece where it is worked.',
  initial: 1e-3,
  range: { min: 1e-6, max: 1 },
  typical: [0.1e-3, 10e-3],
});

export const riseLimit = number({
  id: 'heat.riseLimit',
  name: 'most temperature rise allowed',
  symbol: '\\Delta T_\\text{max}',
  unit: 'K',
  about:
    'Temperature rise of the surface just before the next pulse that must not be passed: what colours, softens or warps the part is to be found by trial.',
  initial: 200,
  range: { min: 1, max: 10e3 },
  typical: [50, 1000],
});
