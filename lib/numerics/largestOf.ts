/** Largest absolute value; 0 of none. */
export function largestOf(values: Float64Array): number {
  return values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}
