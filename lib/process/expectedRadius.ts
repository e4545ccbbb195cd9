import { studentTails } from '../numerics/distributions.ts';
import type { Spot } from '../optics/askedSpot.ts';
import type { Fitted } from './markFit.ts';

/** 1/e² radius that a beam should have in a plane, and its standard uncertainty, m. */
export interface ExpectedRadius {
  readonly value: number;
  readonly uncertainty: number;
}

/** Levels of the peak between which marks of up to ten times the threshold grow. */
const [smallest, largest] = [0.3, Math.log(10)] as const;

/**
 * 1/e² radius that D² against ln E gives for marks of `spot`, m, from its areas between 0.74 and 0.1 of the peak: exactly
 * that of a Gaussian; of a beam that a stop cuts, that of the straight line through its marks.
 */
export function radiusFromAreas(spot: Spot): number {
  const areaAt = (u: number) => spot.areaAbove(spot.peak * Math.exp(-u));
  return Math.sqrt((2 / Math.PI) * ((areaAt(largest) - areaAt(smallest)) / (largest - smallest)));
}

/** How probable a fitted radius this far from the expected one is, and a sentence that says how far. */
export function compareRadius(
  { value, uncertainty }: Pick<Fitted, 'value' | 'uncertainty'>,
  freedom: number,
  expected: ExpectedRadius,
): { readonly probability: number; readonly text: string } {
  const t = (value - expected.value) / Math.hypot(uncertainty, expected.uncertainty);
  const shown = (metres: number) => `${(1e6 * metres).toPrecision(3)}\u202fµm`;
  const text = `The marks give a beam radius of ${shown(value)} ± ${shown(uncertainty)} where ${shown(expected.value)} was expected: the waist may lie elsewhere.`;
  return { probability: studentTails(Math.abs(t), freedom), text };
}
