import type { CausticFit, CausticNote, Estimate } from './causticFit.ts';

/**
 * Where M² lies against 1 by twice its standard uncertainty: `above` it, `agrees` with it, or `impossible`, so far below
 * that scatter does not explain it. A billionth is rounding.
 */
export function compareWithOne({ value, uncertainty }: Estimate): 'above' | 'agrees' | 'impossible' {
  const allowed = 2 * uncertainty + 1e-9;
  if (value - allowed > 1) return 'above';
  return value + allowed >= 1 ? 'agrees' : 'impossible';
}

/** The notes on a fit: the spread of places that ISO 11146-1:2021 asks for, and results that cannot be. */
export function describeCaustic(z: readonly number[], fit: Omit<CausticFit, 'notes'>): CausticNote[] {
  const waist = fit.waistPosition.value;
  const rayleigh = fit.rayleighLength.value;
  const { points, near, far } = fit.spread;
  const notes: CausticNote[] = [];
  const add = (kind: CausticNote['kind'], text: string) => notes.push({ kind, text });
  if (points < 10)
    add(
      'few-points',
      `The fit rests on ${points} points; ISO 11146-1 asks for at least ten. Measure ${10 - points} more.`,
    );
  if (2 * near < points)
    add(
      'far-from-waist',
      `${near} of ${points} points lie within one Rayleigh length (${length(rayleigh)}) of the waist; about half should, to fix the waist diameter. Measure more places near ${length(waist)}.`,
    );
  if (3 * far < points)
    add(
      'no-far-field',
      `${far} of ${points} points lie beyond two Rayleigh lengths (${length(2 * rayleigh)}) from the waist; about half should, to fix the divergence. Measure farther out.`,
    );
  if (waist < Math.min(...z) || waist > Math.max(...z))
    add(
      'waist-outside',
      `The waist at ${length(waist)} lies outside the measured range: it is an extrapolation. Measure on both sides of it, with a lens that forms a waist if need be.`,
    );
  addRatioNote(fit, add);
  if (fit.scatter > 0.05)
    add(
      'scatter-large',
      `The diameters scatter by ${Number((100 * fit.scatter).toPrecision(2))}\u202f% about the fit, where a camera gives 1\u202f% to 2\u202f%. Look for a wrong point, or a beam that is not the same in both axes.`,
    );
  return notes;
}

function addRatioNote(
  fit: Omit<CausticFit, 'notes'>,
  add: (kind: 'ratio-below-one', text: string) => void,
): void {
  const { value, uncertainty } = fit.beamPropagationRatio;
  if (value >= 1) return;
  const reading = `M² = ${value.toFixed(3)} ± ${uncertainty.toPrecision(2)} is below 1, which no beam can be`;
  add(
    'ratio-below-one',
    compareWithOne(fit.beamPropagationRatio) === 'agrees'
      ? `${reading}; it agrees with 1 within its uncertainty. Use 1, or measure more points.`
      : `${reading}. Check the wavelength, the units of both columns, and whether radii were given as diameters.`,
  );
}

/** Three digits, in metres from one metre on. */
function length(metres: number): string {
  const [value, unit] = Math.abs(metres) >= 1 ? [metres, 'm'] : [1e3 * metres, 'mm'];
  return `${Number(value.toPrecision(3))} ${unit}`.replace('-', '−');
}
