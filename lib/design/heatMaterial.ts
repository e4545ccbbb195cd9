import { constant, derived, picked } from '../graph/define.ts';
import { type ThermalMaterial, thermalMaterial } from '../materials/thermal.ts';
import { normalAbsorptance } from '../process/absorptance.ts';
import {
  absorptanceSource,
  thermalSource,
  typedAbsorptance,
  typedConductivity,
  typedDensity,
  typedSpecificHeat,
} from './heatInputs.ts';
import { material } from './material.ts';
import { ambientIndex } from './rippleInputs.ts';
import { constantsOfSurface } from './ripples.ts';

export const computedAbsorptance = derived({
  id: 'heat.computedAbsorptance',
  name: 'absorptance from the optical constants',
  symbol: 'A_{n,k}',
  unit: '1',
  display: '%',
  digits: 3,
  about:
    'Part of the incident light that a cold, flat, bare surface absorbs at normal incidence, from its optical constants. A rough, rippled or hot surface takes more.',
  from: { constants: constantsOfSurface, ambient: ambientIndex },
  compute: ({ constants, ambient }) => normalAbsorptance(constants, ambient),
  formula: '1-\\left|\\frac{n+ik-n_\\text{a}}{n+ik+n_\\text{a}}\\right|^2',
  source: 'scaling',
});

export const absorptance = picked({
  id: 'heat.absorptance',
  name: 'absorptance in use',
  symbol: 'A',
  unit: '1',
  display: '%',
  digits: 3,
  about: 'Part of the incident energy of a pulse that the workpiece absorbs.',
  by: absorptanceSource,
  cases: { constants: computedAbsorptance, typed: typedAbsorptance },
  formula: '\\begin{cases} A_{n,k} \\\\ A_\\text{typed} \\end{cases}',
});

/** Units of the table of thermal values: it holds numbers in SI, which scale with the design as quantities do. */
const unitOf = (key: string, name: string, unit: string, symbol: string) =>
  constant({
    id: `heat.${key}Unit`,
    name: `unit of the ${name} kept`,
    symbol,
    unit,
    about: `Unit that the table of thermal values counts the ${name} in.`,
    value: 1,
    source: 'definition',
  });

export const conductivityUnit = unitOf('conductivity', 'conductivity', 'W/(m*K)', '\\mathrm{W/(m\\,K)}');
export const densityUnit = unitOf('density', 'density', 'kg/m^3', '\\mathrm{kg/m^3}');
export const specificHeatUnit = unitOf('specificHeat', 'specific heat', 'J/(kg*K)', '\\mathrm{J/(kg\\,K)}');

type ValueKey = 'conductivity' | 'density' | 'specificHeat';

/** A thermal value of the material as it is kept, with its source. */
function kept(key: ValueKey, name: string, symbol: string, unit: string, unitQuantity: typeof densityUnit) {
  return derived({
    id: `heat.${key}OfMaterial`,
    name: `${name} kept for the material`,
    symbol: `${symbol}_\\text{kept}`,
    unit,
    about: `The ${name} near 20 °C that is kept for the material: a handbook value.`,
    from: { material, unit: unitQuantity },
    compute: ({ material, unit }) => thermalMaterial(material)[key] * unit,
    enteredFor: () => ({ keys: ['material'] }),
    formula: '\\text{table}(\\text{material})',
    source: 'memory',
    sourceFor: ({ material }) => rowOf(material)?.source ?? 'memory',
  });
}

/** The row of a material where there is one. */
function rowOf(material: string): ThermalMaterial | undefined {
  return material === 'other' ? undefined : thermalMaterial(material);
}

export const keptConductivity = kept(
  'conductivity',
  'thermal conductivity',
  'k',
  'W/(m*K)',
  conductivityUnit,
);
export const keptDensity = kept('density', 'density', '\\rho', 'kg/m^3', densityUnit);
export const keptSpecificHeat = kept('specificHeat', 'specific heat', 'c', 'J/(kg*K)', specificHeatUnit);

const pick = { by: thermalSource };

export const conductivity = picked({
  ...pick,
  id: 'heat.conductivity',
  name: 'thermal conductivity in use',
  symbol: 'k',
  unit: 'W/(m*K)',
  about: 'Thermal conductivity of the workpiece, near 20 °C where it comes from the table.',
  cases: { material: keptConductivity, typed: typedConductivity },
  formula: '\\begin{cases} k_\\text{kept} \\\\ k_\\text{typed} \\end{cases}',
});

export const density = picked({
  ...pick,
  id: 'heat.density',
  name: 'density in use',
  symbol: '\\rho',
  unit: 'kg/m^3',
  about: 'Density of the workpiece.',
  cases: { material: keptDensity, typed: typedDensity },
  formula: '\\begin{cases} \\rho_\\text{kept} \\\\ \\rho_\\text{typed} \\end{cases}',
});

export const specificHeat = picked({
  ...pick,
  id: 'heat.specificHeat',
  name: 'specific heat in use',
  symbol: 'c',
  unit: 'J/(kg*K)',
  about: 'Specific heat capacity of the workpiece, near 20 °C where it comes from the table.',
  cases: { material: keptSpecificHeat, typed: typedSpecificHeat },
  formula: '\\begin{cases} c_\\text{kept} \\\\ c_\\text{typed} \\end{cases}',
});

export const diffusivity = derived({
  id: 'heat.diffusivity',
  name: 'thermal diffusivity',
  symbol: '\\chi',
  unit: 'm^2/s',
  display: 'mm^2/s',
  digits: 3,
  about: 'Conductivity over density and specific heat: how fast heat spreads, over √(8χt) in the time t.',
  from: { k: conductivity, rho: density, c: specificHeat },
  compute: ({ k, rho, c }) => k / (rho * c),
  formula: '\\frac{k}{\\rho c}',
  source: 'definition',
});
