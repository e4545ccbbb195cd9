/** The few length units that the tables of these tests use. */
export function toMetres(value: number, unit: string): number {
  const factor = { km: 1e3, m: 1, cm: 1e-2, mm: 1e-3, µm: 1e-6, um: 1e-6 }[unit];
  if (factor === undefined) throw new RangeError(`Unit ${unit} is unknown.`);
  return value * factor;
}
