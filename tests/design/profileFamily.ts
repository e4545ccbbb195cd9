import type { MeasuredProfile } from '../../lib/design/profileFile.ts';
import { valueAt } from '../../lib/numerics/panelledFunction.ts';
import type { Light } from '../../lib/optics/light.ts';
import { roundProfileAt } from '../../lib/optics/roundSpot.ts';
import { outcomesOf } from '../notebooks/designOutcomes.ts';

const initial = (id: string) => (outcomesOf()(id) as { value: unknown }).value;
const light = initial('focus.light') as Light;
const unshapedPeak = initial('focus.unshapedPeakFluence') as number;
const radii = Array.from({ length: 161 }, (_, i) => i * 0.25e-6);

/** What the initial design gives at `z` (metres): fluences in J/m² at radii up to 40 µm. */
export function predictedFluences(z: number): number[] {
  const profile = roundProfileAt(light, z);
  return radii.map((radius) => unshapedPeak * valueAt(profile, radius));
}

/** The prediction at `z` as a measured profile with its unit. */
export function predictedAsMeasured(z: number, name = `z = ${z * 1e6} µm`): MeasuredProfile {
  const fluence = predictedFluences(z);
  return { name, axis: 'radius', position: radii, fluence, counts: [], image: null };
}

/** The prediction at `z` as the text of a table. */
export function predictedTable(z: number): string {
  const fluence = predictedFluences(z);
  return `r (um);fluence (J/m^2)\n${radii.map((r, i) => `${r * 1e6};${fluence[i]}`).join('\n')}\n`;
}

/** Planes before and behind the focus whose profiles differ. */
export const planes = [-1.2e-4, 5.5e-5, 2e-4] as const;
