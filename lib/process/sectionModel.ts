import { Problem } from '../problem.ts';
import type { GrooveSection } from './groove.ts';

/** The groove that the model cuts with a depth per pulse (m) and a threshold of one pulse (J/m²). */
export type SectionModel = (depthPerPulse: number, threshold: number) => GrooveSection;

/** Sections kept: those of a derivative and the steps before it. */
const mostKept = 12;

/**
 * The model with its last answers kept, since a fit asks for the same ones again; undefined where it cannot cut, which
 * a fit steps back from. `cutting` is called before each groove that is computed.
 */
export function cachedSections(
  model: SectionModel,
  cutting: () => void,
): (depthPerPulse: number, threshold: number) => GrooveSection | undefined {
  const kept = new Map<string, GrooveSection | undefined>();
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

function cutOrNone(model: SectionModel, depthPerPulse: number, threshold: number): GrooveSection | undefined {
  try {
    return model(depthPerPulse, threshold);
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
}
