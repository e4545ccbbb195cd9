import data from '../../data/materials/glasses.json' with { type: 'json' };
import { Problem } from '../problem.ts';

/** Glasses with a Sellmeier formula in `data/materials/glasses.json`. */
export type GlassId = 'fusedSilica' | 'bk7' | 'sapphire' | 'calciumFluoride';

/** One glass: n² − 1 = Σ B λ²/(λ² − C) with λ in µm, n relative to air. */
export interface Glass {
  readonly id: string;
  readonly name: string;
  /** Dimensionless, one a term. */
  readonly B: readonly number[];
  /** In µm², one a term. */
  readonly C: readonly number[];
  /** Shortest and longest wavelength of the formula, µm. */
  readonly wavelengths: readonly number[];
  /** Key into the bibliography. */
  readonly source: string;
  /** n2 in m²/W, where one is kept. */
  readonly nonlinearIndex?: { readonly value: number; readonly source: string };
}

const glasses: readonly Glass[] = data.glasses;

/** The row of a glass, with its source. Throws `absent` for an id that is not in the table. */
export function glassById(id: string): Glass {
  const glass = glasses.find((row) => row.id === id);
  if (glass) return glass;
  const ids = glasses.map((row) => row.id).join(', ');
  throw new Problem('absent', `There is no glass '${id}'; choose one of ${ids} or type an index.`, {
    value: id,
    allowed: ids,
  });
}

/**
 * Refractive index relative to air at `wavelength` (m, in vacuum or air: they differ by 3e-4).
 * Throws `outside` beyond the formula's range. Formula and source: the glass's row.
 */
export function refractiveIndex(glass: GlassId, wavelength: number): number {
  return Math.sqrt(1 + sellmeierSums(glassById(glass), wavelength).square);
}

/**
 * Group index n − λ dn/dλ relative to air, from the derivative of the Sellmeier formula; `wavelength` in m.
 * Throws `outside` beyond the formula's range.
 */
export function groupIndex(glass: GlassId, wavelength: number): number {
  const { square, slope } = sellmeierSums(glassById(glass), wavelength);
  const index = Math.sqrt(1 + square);
  return index + slope / index;
}

/** Nonlinear index n2 in m²/W near 1 µm. Throws `absent` for a glass without a value in the table. */
export function nonlinearIndex(glass: GlassId): number {
  const { name, nonlinearIndex: kept } = glassById(glass);
  if (kept) return kept.value;
  throw new Problem(
    'absent',
    `No nonlinear index is kept for ${name}; choose fused silica or type a value.`,
    {
      input: 'plate.glass',
      value: name,
    },
  );
}

/** n² − 1 = Σ Bλ²/(λ²−C), and −λn dn/dλ = Σ BCλ²/(λ²−C)². */
function sellmeierSums(glass: Glass, wavelength: number): { square: number; slope: number } {
  const micrometres = wavelength * 1e6;
  const [shortest = 0, longest = 0] = glass.wavelengths;
  // A rounding of 1e-12 at the ends is not outside.
  if (!(micrometres >= shortest * (1 - 1e-12) && micrometres <= longest * (1 + 1e-12))) {
    throw outsideRange(glass, micrometres, `${shortest} to ${longest} µm`);
  }
  const x = micrometres * micrometres;
  let square = 0;
  let slope = 0;
  glass.B.forEach((strength, i) => {
    const pole = glass.C[i]!;
    square += (strength * x) / (x - pole);
    slope += (strength * pole * x) / (x - pole) ** 2;
  });
  return { square, slope };
}

function outsideRange(glass: Glass, micrometres: number, allowed: string): Problem {
  return new Problem(
    'outside',
    `The index of ${glass.name} is known from ${allowed}, not at ${Number(micrometres.toPrecision(4))} µm; choose another glass or type the index.`,
    { input: 'laser.wavelength', value: `${Number(micrometres.toPrecision(4))} µm`, allowed },
  );
}
