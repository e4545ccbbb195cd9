import data from '../../data/materials/opticalConstants.json' with { type: 'json' };
import { Problem } from '../problem.ts';

/** A measured sample of a material. */
export interface Sample {
  readonly id: string;
  /** Key of the material: samples of one material share it. */
  readonly material: string;
  readonly name: string;
  /** Key into the bibliography. */
  readonly source: string;
  /** How the numbers were come by; may be empty. */
  readonly note: string;
}

/** Complex refractive index n + ik. */
export interface OpticalConstants {
  readonly n: number;
  readonly k: number;
}

/** All samples, `data/materials/opticalConstants.json`. */
export const samples: readonly Sample[] = data.samples;

interface Row extends OpticalConstants {
  /** µm. */
  readonly wavelength: number;
}

const rowsOf: ReadonlyMap<string, readonly Row[]> = new Map(
  samples.map(({ id }) => [
    id,
    data.rows
      .filter(([sample]) => sample === id)
      .map(([, wavelength, n, k]) => ({ wavelength, n, k }) as Row)
      .sort((one, other) => one.wavelength - other.wavelength),
  ]),
);

/** The sample of that id; throws `absent` where there is none. */
export function sampleById(id: string): Sample {
  const sample = samples.find((one) => one.id === id);
  if (sample) return sample;
  const allowed = samples.map((one) => one.id).join(', ');
  throw new Problem('absent', `There are no optical constants of '${id}'; choose one of ${allowed}.`, {
    value: id,
    allowed,
  });
}

/** Samples of a material, in the order of the table: the first counts unless another is chosen. */
export function samplesOf(material: string): readonly Sample[] {
  return samples.filter((sample) => sample.material === material);
}

/** Shortest and longest wavelength of a sample, m. */
export function wavelengthsOf(id: string): readonly [number, number] {
  const rows = rowsOf.get(sampleById(id).id)!;
  return [rows[0]!.wavelength * 1e-6, rows.at(-1)!.wavelength * 1e-6];
}

/**
 * n and k of a sample at `wavelength` (m, vacuum), linear between the two rows beside it. Throws `absent` for an unknown
 * sample and `outside` beyond its wavelengths: nothing is extrapolated. Values read from figures are good to three digits.
 */
export function constantsAt(id: string, wavelength: number): OpticalConstants {
  const { name } = sampleById(id);
  const rows = rowsOf.get(id)!;
  const at = wavelength * 1e6;
  const [first, last] = [rows[0]!.wavelength, rows.at(-1)!.wavelength];
  // A wavelength of 1.24 µm is not always 1.24 times 1e6 to the last bit.
  const close = Math.min(last, Math.max(first, at));
  if (!(Math.abs(close - at) < 1e-9)) throw beyond(name, at, first, last);
  const above = Math.max(
    1,
    rows.findIndex((row) => row.wavelength >= close),
  );
  const [low, high] = [rows[above - 1]!, rows[above]!];
  const part = (close - low.wavelength) / (high.wavelength - low.wavelength);
  return { n: low.n + part * (high.n - low.n), k: low.k + part * (high.k - low.k) };
}

function beyond(name: string, at: number, first: number, last: number): Problem {
  const nm = (micrometres: number) => `${Math.round(1000 * micrometres)}\u202fnm`;
  return new Problem(
    'outside',
    `The optical constants of ${name} are known from ${nm(first)} to ${nm(last)}, not at ${nm(at)}. Choose another sample, or type n and k.`,
    { input: 'ripples.constantsSource', value: nm(at), allowed: `${nm(first)} to ${nm(last)}` },
  );
}
