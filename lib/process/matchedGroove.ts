import type { Progress } from '../numerics/progress.ts';
import type { PulseTrain } from './chordRemoval.ts';
import type { CuttingLight } from './cuttingLight.ts';
import { cutGroove } from './groove.ts';
import { type GrooveShape, shapeOf } from './grooveShape.ts';

/** Width at the top and mean depth that a groove shall have, m. */
export interface GrooveTarget {
  readonly topWidth: number;
  readonly meanDepth: number;
}

/** A beam with one setting that widens its groove: the logarithm of the size of its focus, or of its energy. */
export type WidenedBeam = (setting: number) => { readonly light: CuttingLight; readonly unit: number };

/** The groove of the wanted width and mean depth. */
export interface MatchedGroove {
  readonly setting: number;
  /** Passes, the last one by its part. */
  readonly passes: number;
  readonly shape: GrooveShape;
}

/** Passes that are tried at most. */
const mostPasses = 2000;
/** Width and mean depth are met to this part. */
const near = 3e-4;
const tries = 24;

/**
 * Finds setting and passes at which the groove has the width and the mean depth wanted; undefined where the mean depth is
 * never reached or no setting between a fiftieth and fifty times gives the width. Both to 3e-4.
 */
export function matchGroove(
  beam: WidenedBeam,
  train: Omit<PulseTrain, 'unit'>,
  target: GrooveTarget,
  report?: Progress,
): MatchedGroove | undefined {
  let [low, high] = [-Math.log(50), Math.log(50)];
  let setting = 0;
  let before: { readonly setting: number; readonly error: number } | undefined;
  for (let i = 0; i < tries; i++) {
    report?.(i / tries);
    const found = deepEnough(beam(setting), train, target.meanDepth);
    // Too faint to cut, or to reach the depth: more of the setting makes it wider, and the depth easier or not.
    if (found === undefined) {
      if (before === undefined && i < 6) {
        setting += setting >= 0 ? -(i + 1) * 0.3 : (i + 1) * 0.3;
        continue;
      }
      return undefined;
    }
    const error = Math.log(found.shape.topWidth / target.topWidth);
    if (Math.abs(error) < near) return { setting, ...found };
    if (error > 0) high = Math.min(high, setting);
    else low = Math.max(low, setting);
    const slope =
      before && before.setting !== setting ? (error - before.error) / (setting - before.setting) : 1;
    before = { setting, error };
    const next = setting - error / (slope > 0.02 ? slope : 1);
    setting = next > low && next < high ? next : (low + high) / 2;
    if (high - low < 1e-9) return undefined;
  }
  return undefined;
}

/** Passes, whole and a part, that give the mean depth; undefined where they never do. */
function deepEnough(
  { light, unit }: ReturnType<WidenedBeam>,
  train: Omit<PulseTrain, 'unit'>,
  meanDepth: number,
): Omit<MatchedGroove, 'setting'> | undefined {
  const cut = (passes: number) => {
    const shape = shapeOf(cutGroove(light, { ...train, unit, passes }));
    return shape && { passes, shape };
  };
  let [low, high] = [0, 1];
  let [shallow, deep] = [0, cut(1)?.shape.meanDepth ?? 0];
  // A whole number of passes that meets the depth is taken as it is, whichever side rounding puts it on.
  const met = () => Math.abs(deep / meanDepth - 1) < 1e-9;
  while (deep < meanDepth && !met()) {
    if (high >= mostPasses || deep <= shallow * (1 + 1e-6)) return undefined;
    [low, shallow] = [high, deep];
    const guess = Math.ceil((1.1 * high * meanDepth) / Math.max(deep, meanDepth / 4));
    high = Math.min(mostPasses, Math.max(high + 1, guess));
    deep = cut(high)?.shape.meanDepth ?? 0;
  }
  if (met()) return cut(high);
  for (let i = 0; i < tries; i++) {
    const part = (meanDepth - shallow) / (deep - shallow);
    const passes = low + (high - low) * Math.min(0.98, Math.max(0.02, part));
    const found = cut(passes);
    const reached = found?.shape.meanDepth ?? 0;
    if (found && Math.abs(reached / meanDepth - 1) < near) return found;
    if (reached < meanDepth) [low, shallow] = [passes, reached];
    else [high, deep] = [passes, reached];
  }
  return cut(high);
}
