import { createRandom } from '../../lib/numerics/random.ts';
import type { SpotMark } from '../../lib/process/spotMark.ts';

/** What marks are made from. Lengths in m, energies in J. */
export interface MarkRecipe {
  readonly seed: number;
  readonly thresholdEnergy: number;
  /** Area and diameters of the mark at E/E_th above 1, without scatter. */
  readonly markAt: (ratio: number) => {
    readonly area: number;
    readonly diameters?: readonly [number, number];
  };
  readonly energies?: number;
  readonly repeats?: number;
  /** Lowest and highest energy over the threshold. */
  readonly from?: number;
  readonly to?: number;
  /** Relative scatter of the diameter, error of reading it, relative scatter of the energy. */
  readonly relative?: number;
  readonly reading?: number;
  readonly energyScatter?: number;
  readonly pulses?: number;
  readonly z?: number;
}

export interface SyntheticTable {
  readonly marks: readonly SpotMark[];
  /** Scatter that went in. */
  readonly scatter: { readonly relative: number; readonly reading: number; readonly energy: number };
}

/**
 * A table of single spots as measured under a microscope: 8 to 12 energies in a geometric row from below the threshold
 * to ten times it, three repeats; 2 to 4 % scatter of the diameter, a reading error of 0.1 to 0.4 µm, pulses that
 * scatter by 0.5 to 1.5 %. No mark below threshold, nor below a diameter that a microscope shows, 0.5 µm.
 */
export function syntheticMarks(recipe: MarkRecipe): SyntheticTable {
  const random = createRandom(recipe.seed);
  const count = recipe.energies ?? 8 + Math.floor(5 * random.uniform());
  const scatter = {
    relative: recipe.relative ?? random.between(0.02, 0.04),
    reading: recipe.reading ?? random.between(0.1e-6, 0.4e-6),
    energy: recipe.energyScatter ?? random.between(0.005, 0.015),
  };
  const from = recipe.from ?? random.between(0.8, 1.1);
  const to = recipe.to ?? 10;
  const marks: SpotMark[] = [];
  for (let i = 0; i < count; i++) {
    const energy = recipe.thresholdEnergy * from * (to / from) ** (i / (count - 1));
    for (let k = 0; k < (recipe.repeats ?? 3); k++) {
      const ratio = (energy / recipe.thresholdEnergy) * (1 + scatter.energy * random.normal());
      const mark = ratio > 1 ? recipe.markAt(ratio) : { area: 0 };
      const read = (diameter: number) =>
        diameter * (1 + scatter.relative * random.normal()) + scatter.reading * random.normal();
      const plain = { row: marks.length + 2, energy, pulses: recipe.pulses ?? 1, z: recipe.z ?? 0 };
      marks.push({ ...plain, ...measure(mark, read) });
    }
  }
  return { marks, scatter };
}

/** One reading of the equivalent diameter, or one of each axis whose ellipse is the area. */
function measure(
  { area, diameters }: ReturnType<MarkRecipe['markAt']>,
  read: (diameter: number) => number,
): Pick<SpotMark, 'area' | 'diameters'> {
  if (area <= 0) return { area: 0 };
  if (diameters) {
    const [x, y] = diameters.map(read) as [number, number];
    if (Math.min(x, y) < 0.5e-6) return { area: 0 };
    return { area: area * ((x * y) / (diameters[0] * diameters[1])), diameters: [x, y] };
  }
  const diameter = read(Math.sqrt((4 * area) / Math.PI));
  return { area: diameter < 0.5e-6 ? 0 : (Math.PI * diameter ** 2) / 4 };
}

/** Marks of a Gaussian of 1/e² radii x and y: ellipses of these radii times √(½ ln(E/E_th)). */
export function gaussianMark(radiusX: number, radiusY = radiusX, withAxes = false): MarkRecipe['markAt'] {
  return (ratio) => {
    const reach = Math.sqrt(0.5 * Math.log(ratio));
    const area = Math.PI * radiusX * radiusY * reach ** 2;
    return withAxes ? { area, diameters: [2 * radiusX * reach, 2 * radiusY * reach] } : { area };
  };
}

/** What a ladder is made from: rungs at the readings, each with every energy. */
export interface LadderRecipe {
  readonly seed: number;
  readonly readings: readonly number[];
  readonly energies: readonly number[];
  /** Area marked at this reading with this energy, m²; 0 for none. */
  readonly areaAt: (reading: number, energy: number) => number;
}

/** A ladder as measured: 2 to 4 % scatter of the diameter, a reading error of 0.1 to 0.4 µm, pulses that scatter by 1 %. */
export function syntheticLadder({ seed, readings, energies, areaAt }: LadderRecipe): SpotMark[] {
  const random = createRandom(seed);
  const relative = random.between(0.02, 0.04);
  const reading = random.between(0.1e-6, 0.4e-6);
  const read = (diameter: number) => diameter * (1 + relative * random.normal()) + reading * random.normal();
  return readings.flatMap((z, i) =>
    energies.map((energy, k) => {
      const area = areaAt(z, energy * (1 + 0.01 * random.normal()));
      return { row: i * energies.length + k + 2, energy, pulses: 1, z, ...measure({ area }, read) };
    }),
  );
}
