import data from '../../data/materials/thermal.json' with { type: 'json' };
import { Problem } from '../problem.ts';

/** How a workpiece takes up and conducts heat near 20 °C, SI. */
export interface ThermalValues {
  /** W/(m K). */
  readonly conductivity: number;
  /** kg/m³. */
  readonly density: number;
  /** J/(kg K). */
  readonly specificHeat: number;
}

/** A row of `data/materials/thermal.json`. */
export interface ThermalMaterial extends ThermalValues {
  /** Key of the material of the workpiece. */
  readonly id: string;
  /** Key into the bibliography, or 'memory'. */
  readonly source: string;
  /** What the values hold for; may be empty. */
  readonly note: string;
}

/** All materials whose thermal values are kept. */
export const thermalMaterials: readonly ThermalMaterial[] = data.materials;

/** The row of a material. Throws `absent` where no values are kept for it. */
export function thermalMaterial(id: string): ThermalMaterial {
  const row = thermalMaterials.find((one) => one.id === id);
  if (row) return row;
  throw new Problem(
    'absent',
    'No thermal values are kept for this material. Set the source of the thermal values to typed and enter conductivity, density and specific heat; where no optical constants are kept either, set the source of the absorptance to typed as well and enter it.',
    { input: 'heat.thermalSource', value: id, allowed: thermalMaterials.map((one) => one.id).join(', ') },
  );
}
