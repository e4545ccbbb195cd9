/** Angle between two lines without a direction, 0 to π/2. */
function between(one: number, other: number): number {
  const turned = Math.abs(one - other) % Math.PI;
  return Math.min(turned, Math.PI - turned);
}

const nearly = 2e-2;

/** How ridges at `ridges` run against a field at `field`, both against the scan, rad. */
export function ridgesRun(ridges: number, field: number): 'along' | 'across' | 'scan' | 'any' {
  if (between(ridges, field) < nearly) return 'along';
  if (between(ridges, field) > Math.PI / 2 - nearly) return 'across';
  return between(ridges, 0) < nearly ? 'scan' : 'any';
}

/** Where a period lies against the wavelength and the modelled one. */
export function measuredPlace(
  period: number,
  model: number,
  wavelength: number,
): 'longer' | 'model' | 'shorter' | 'half' {
  if (Math.abs(period / model - 1) < nearly) return 'model';
  if (period > wavelength) return 'longer';
  return period < wavelength / 2 ? 'half' : 'shorter';
}

/** What a factor between two periods is called. */
export function periodChange(factor: number): 'much-shorter' | 'same' | 'longer' | 'twice-as-long' {
  if (factor < 0.8) return 'much-shorter';
  if (factor > 1.6) return 'twice-as-long';
  return factor > 1 + nearly ? 'longer' : 'same';
}
