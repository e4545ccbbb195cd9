import type { Light } from '../../lib/optics/light.ts';
import { reference } from '../reference.ts';
import { lightBehind } from './lightBehind.ts';

/** One design of family.json; zones in units of w, lengths in w0, ζ as there. */
export interface FamilyDesign {
  readonly name: string;
  readonly zones: readonly (readonly [number, number])[];
  readonly M2: number;
  readonly intervals: readonly FileInterval[];
}

/** A stretch of one kind; numbers stand at `at`. */
export interface FileInterval {
  readonly kind: string;
  readonly from: number;
  readonly to: number;
  readonly at: number;
  readonly dip: number;
  readonly ratio90to50: number;
  readonly peak: number;
  readonly fullWidthHalfMaximum: number;
}

export const familyDesigns: readonly FamilyDesign[] = reference('family').cases;

/** The light behind zones in units of w. */
export function lightOf(
  { zones, M2 }: Pick<FamilyDesign, 'zones' | 'M2'>,
  changes: Partial<Light> = {},
): Light {
  return lightBehind(
    zones.map(([outer, phase]) => ({ outer, phase })),
    { beamPropagationRatio: M2, ...changes },
  );
}
