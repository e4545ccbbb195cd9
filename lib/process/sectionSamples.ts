import type { GrooveSection } from './groove.ts';
import { depthAt } from './grooveShape.ts';

/** A measured groove to fit: samples in order, m. */
export interface FittedSamples {
  readonly position: Float64Array;
  /** Below the surface on both sides. */
  readonly depth: Float64Array;
  /** Standard deviation of the surface beside the groove. */
  readonly noise: number;
}

/** Lengths that centre, level and tilt are counted in, m. */
export interface Scale {
  /** Width of the measured groove at half its depth. */
  readonly width: number;
  /** Its greatest depth. */
  readonly depth: number;
}

/** ln δ, ln F_th; centre in widths, level in depths, tilt in depths a width. δ in m, F_th in J/m². */
export type Parameters = Float64Array;

/** The groove for δ in m and F_th in J/m²; undefined where the model cannot cut it. */
export type Cut = (depthPerPulse: number, threshold: number) => GrooveSection | undefined;

/** Above the surface by more noise than this nothing can have been removed: rim, recast melt, dust. */
const aboveNoise = 3;
/**
 * Step of a derivative in ln δ and ln F_th, to one side, since a groove takes long: wrong by half of it times the second
 * derivative, about 1 %, which the uncertainties get and the best values do not.
 */
const step = 0.01;
/** Half the step of the centre, in widths; it needs no other groove. */
const centreStep = 0.005;

/** The samples without those that lie above the surface. */
export function samplesBelow({ position, depth, noise }: FittedSamples): FittedSamples {
  const kept = [...depth.keys()].filter((i) => depth[i]! >= -aboveNoise * noise);
  return {
    position: Float64Array.from(kept, (i) => position[i]!),
    depth: Float64Array.from(kept, (i) => depth[i]!),
    noise,
  };
}

export function scaleOf({ position, depth }: FittedSamples): Scale {
  const deepest = depth.reduce((most, value) => Math.max(most, value), 0);
  const deep = position.filter((_, i) => depth[i]! > deepest / 2);
  return { width: deep.at(-1)! - deep[0]! || position.at(-1)! - position[0]!, depth: deepest };
}

export function sectionAt(cut: Cut, p: Parameters): GrooveSection | undefined {
  return cut(Math.exp(p[0]!), Math.exp(p[1]!));
}

/** Writes the depths of the model at the samples; NaN where it cuts nothing, which rejects a step. */
export function writeModel(
  used: FittedSamples,
  cut: Cut,
  p: Parameters,
  scale: Scale,
  into: Float64Array,
): void {
  const section = sectionAt(cut, p);
  const centre = p[2]! * scale.width;
  used.position.forEach((x, i) => {
    const line = scale.depth * (p[3]! + (p[4]! * x) / scale.width);
    into[i] = section ? depthAt(section, x - centre) + line : Number.NaN;
  });
}

/** Writes the derivatives of {@link writeModel}, a row of five for each sample. */
export function writeDerivatives(
  used: FittedSamples,
  cut: Cut,
  p: Parameters,
  scale: Scale,
  into: Float64Array,
): void {
  const count = used.depth.length;
  const [more, less] = [new Float64Array(count), new Float64Array(count)];
  const steps = [
    [step, 0],
    [step, 0],
    [centreStep, -centreStep],
  ] as const;
  steps.forEach(([to, from], j) => {
    writeModel(used, cut, moved(p, j, to), scale, more);
    writeModel(used, cut, moved(p, j, from), scale, less);
    for (let i = 0; i < count; i++) into[5 * i + j] = (more[i]! - less[i]!) / (to - from);
  });
  for (let i = 0; i < count; i++) {
    into[5 * i + 3] = scale.depth;
    into[5 * i + 4] = (scale.depth * used.position[i]!) / scale.width;
  }
}

function moved(p: Parameters, index: number, by: number): Parameters {
  return p.map((value, j) => (j === index ? value + by : value));
}

/** Measured depth less that of the model, m. */
export function deviationsOf(used: FittedSamples, cut: Cut, p: Parameters, scale: Scale): Float64Array {
  const into = new Float64Array(used.depth.length);
  writeModel(used, cut, p, scale, into);
  return used.depth.map((value, i) => value - into[i]!);
}
