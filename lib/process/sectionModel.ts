import { Problem } from '../problem.ts';

/** A computed groove across its line, from one side to the other: places ascending and depths there, m. */
export interface CutSection {
  readonly y: Float64Array;
  readonly depth: Float64Array;
}

/** The groove that the model cuts with a depth per pulse (m) and a threshold of one pulse (J/m²). */
export type SectionModel = (depthPerPulse: number, threshold: number) => CutSection;

/** Sections kept: those of a derivative and the steps before it. */
const mostKept = 12;

/**
 * The model with its last answers kept, since a fit asks for the same ones again; undefined where it cannot cut, which
 * a fit steps back from. `cutting` is called before each groove that is computed.
 */
export function cachedSections(
  model: SectionModel,
  cutting: () => void,
): (depthPerPulse: number, threshold: number) => CutSection | undefined {
  const kept = new Map<string, CutSection | undefined>();
  return (depthPerPulse, threshold) => {
    const key = `${depthPerPulse} ${threshold}`;
    if (kept.has(key)) return kept.get(key);
    cutting();
    const section = cutOrNone(model, depthPerPulse, threshold);
    const [oldest] = kept.keys();
    if (kept.size >= mostKept) kept.delete(oldest!);
    kept.set(key, section);
    return section;
  };
}

function cutOrNone(model: SectionModel, depthPerPulse: number, threshold: number): CutSection | undefined {
  try {
    return model(depthPerPulse, threshold);
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
}

/** Depth at a place, linear between those computed, 0 beyond them. */
export function depthIn({ y, depth }: CutSection, place: number): number {
  const last = y.length - 1;
  if (!(place >= y[0]! && place <= y[last]!)) return 0;
  let [low, high] = [0, last];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (y[middle]! <= place) low = middle;
    else high = middle;
  }
  const part = (place - y[low]!) / (y[high]! - y[low]!);
  return depth[low]! + part * (depth[high]! - depth[low]!);
}
