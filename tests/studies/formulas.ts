import { parseFormula } from '../../lib/studies/formulaParser.ts';
import { powersOfFormula } from '../../lib/studies/formulaUnits.ts';
import { evaluateFormula } from '../../lib/studies/formulaValue.ts';
import { unitTextOf } from '../../lib/studies/unitPowers.ts';

/** A few quantities with unit and value in SI, as formulas name them. */
export const invented: Readonly<Record<string, readonly [unit: string, value: number]>> = {
  'groove.depth': ['m', 20e-6],
  'groove.topWidth': ['m', 40e-6],
  'spot.peakFluence': ['J/m^2', 2e4],
  'threshold.fluence': ['J/m^2', 5e3],
  'laser.energy': ['J', 50e-6],
  'plate.phase': ['rad', Math.PI / 2],
  'heat.none': ['1', 0],
  'heat.loss': ['1', -3],
};

/** Value in SI and SI unit of a formula over {@link invented}. */
export function worked(text: string): { readonly value: number; readonly unit: string | undefined } {
  const node = parseFormula(text);
  const powers = powersOfFormula(node, { text, unitOf: ({ id }) => invented[id]![0] });
  const value = evaluateFormula(node, { text, valueOf: (id) => invented[id]![1] });
  return { value, unit: unitTextOf(powers) };
}
