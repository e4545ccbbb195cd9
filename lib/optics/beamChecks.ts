import { Problem } from '../problem.ts';

/** Throws `impossible` unless `value` is a finite number above 0. */
export function requireAbove(name: string, value: number, unit: string): void {
  if (value > 0 && Number.isFinite(value)) return;
  throw new Problem('impossible', `The ${name} ${value} ${unit} must be above 0.`, {
    value: `${value} ${unit}`,
    allowed: 'above 0',
  });
}

/** Throws `impossible` unless M² is at least 1, which no real beam is below. */
export function requireBeamPropagationRatio(ratio: number): void {
  if (ratio >= 1 && Number.isFinite(ratio)) return;
  throw new Problem('impossible', `M² = ${ratio} must be at least 1; 1 is the ideal Gaussian beam.`, {
    input: 'laser.beamPropagationRatio',
    value: String(ratio),
    allowed: 'at least 1',
  });
}
