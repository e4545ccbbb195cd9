import metals from '../../data/thresholds/metals.json' with { type: 'json' };
import semiconductors from '../../data/thresholds/semiconductors.json' with { type: 'json' };
import { Problem } from '../problem.ts';

/** One published threshold, SI; incident fluence. */
export interface PublishedThreshold {
  /** J/m². */
  readonly fluence: number;
  /** m, in vacuum. */
  readonly wavelength: number;
  /** Shortest and longest pulse, FWHM in s. */
  readonly duration: readonly number[];
  /** Hz; left out where the abstract does not say. */
  readonly repetitionRate?: number;
  /** Pulses on one place: one, many, or unknown where the abstract does not say. */
  readonly pulses: string;
  /** What was taken as the threshold. */
  readonly criterion: string;
  /** Key into the bibliography. */
  readonly source: string;
}

/** A material with its published thresholds; never empty. */
export interface HandbookMaterial {
  readonly id: string;
  readonly name: string;
  readonly rows: readonly PublishedThreshold[];
}

/** All materials of the handbook, `data/thresholds/*.json`. */
export const handbookMaterials: readonly HandbookMaterial[] = [
  ...metals.materials,
  ...semiconductors.materials,
];

/** Factor by which a range reaches beyond the published values to either side (common practice). */
export const handbookSpread: number = metals.spread;

/** The material of that id; throws `absent` where the handbook has none. */
export function handbookMaterial(id: string): HandbookMaterial {
  const material = handbookMaterials.find((row) => row.id === id);
  if (material) return material;
  throw new Problem(
    'absent',
    'The handbook holds no threshold for this material. Type one, or measure it with single spots.',
    { input: 'threshold.source', value: id, allowed: handbookMaterials.map((row) => row.id).join(', ') },
  );
}

/** A threshold as a range, J/m². */
export interface ThresholdRange {
  readonly low: number;
  readonly high: number;
  /** √(low·high): where to start; nothing in the range is more likely. */
  readonly start: number;
  /** Standard uncertainty of `start`: a range in which all is alike, on a logarithmic scale (JCGM 100, 4.3.7). */
  readonly uncertainty: number;
}

/** From the lowest published value less the spread to the highest and the spread. */
export function thresholdRange({ rows }: HandbookMaterial): ThresholdRange {
  const fluences = rows.map(({ fluence }) => fluence);
  const low = Math.min(...fluences) / handbookSpread;
  const high = Math.max(...fluences) * handbookSpread;
  const start = Math.sqrt(low * high);
  return { low, high, start, uncertainty: (start * Math.log(high / low)) / Math.sqrt(12) };
}

/** What the pulses of a design are like, SI. */
export interface PulseConditions {
  readonly wavelength: number;
  readonly pulseDuration: number;
  readonly repetitionRate: number;
}

/** One way in which the published conditions differ from a design's; SI, ascending, each value once. */
export type HandbookDifference =
  | {
      readonly kind: 'wavelength' | 'pulseDuration' | 'repetitionRate';
      readonly published: readonly number[];
    }
  | { readonly kind: 'manyPulses' | 'unknownPulses' };

/**
 * Where no published threshold of a material was measured under the design's conditions: wavelength within 5 %, pulse
 * duration within a third, repetition rate within a factor of ten (heat left by the pulse before), one pulse a place.
 */
export function differencesFrom(
  material: HandbookMaterial,
  conditions: PulseConditions,
): HandbookDifference[] {
  const { rows } = material;
  const { wavelength, pulseDuration, repetitionRate } = conditions;
  const rates = rows.flatMap((row) => (row.repetitionRate === undefined ? [] : [row.repetitionRate]));
  const found: HandbookDifference[] = [];
  const differs = (kind: 'wavelength' | 'pulseDuration' | 'repetitionRate', published: readonly number[]) =>
    found.push({ kind, published: [...new Set(published)].sort((a, b) => a - b) });
  if (!rows.some((row) => within(wavelength, [row.wavelength], 1.05)))
    differs(
      'wavelength',
      rows.map((row) => row.wavelength),
    );
  if (!rows.some((row) => within(pulseDuration, row.duration, 4 / 3)))
    differs(
      'pulseDuration',
      rows.flatMap(({ duration }) => [...duration]),
    );
  if (rates.length > 0 && !rates.some((rate) => within(repetitionRate, [rate], 10)))
    differs('repetitionRate', rates);
  if (rows.every(({ pulses }) => pulses === 'many')) found.push({ kind: 'manyPulses' });
  else if (rows.every(({ pulses }) => pulses !== 'one')) found.push({ kind: 'unknownPulses' });
  return found;
}

/** True where x lies between the least and greatest of `values`, or within a factor of them; 1e-12 for rounding. */
function within(x: number, values: readonly number[], factor: number): boolean {
  const slack = factor * (1 + 1e-12);
  return x >= Math.min(...values) / slack && x <= Math.max(...values) * slack;
}
