import type { Progress } from '../numerics/progress.ts';
import { portion } from '../numerics/progress.ts';
import type { PulseTrain } from './chordRemoval.ts';
import type { CuttingLight } from './cuttingLight.ts';
import { cutGroove } from './groove.ts';
import { shapeOf, widthAt } from './grooveShape.ts';

/** A thin sheet cut along a line; lengths in m. */
export interface CutSheet {
  /** Passes after which it first opens on the far side. */
  readonly passes: number;
  /** Those and the ones after. */
  readonly allPasses: number;
  /** Places across the line, and the depth there when it opens and in the end; the thickness where it is through. */
  readonly y: Float64Array;
  readonly opening: Float64Array;
  readonly depth: Float64Array;
  /** Width of the cut in the near face and in the far face after all passes. */
  readonly entryKerf: number;
  readonly exitKerf: number;
  /** Depth that rings of the spot cut into the near face beside the kerf. */
  readonly besideDepth: number;
  /** Angle of the walls against the upright, rad: 0 for straight sides. */
  readonly taper: number;
}

/** What is left where a sheet never opens. */
export interface StuckSheet {
  readonly reached: number;
  readonly passes: number;
  /** Depth that the last pass cut. */
  readonly lastPass: number;
}

/** Passes that are tried. */
export const mostSheetPasses = 10_000;

/**
 * Cuts a sheet of `thickness` until it opens, and `after` passes more; the walls below the far face do not act on those
 * above, since slopes come down from the surface. A {@link StuckSheet} where it never opens within 10,000 passes.
 */
export function cutSheet(
  light: CuttingLight,
  train: PulseTrain,
  thickness: number,
  after: number,
  report?: Progress,
): CutSheet | StuckSheet {
  const first = cutGroove(
    light,
    { ...train, passes: mostSheetPasses, until: thickness },
    portion(report, 0, 0.5),
  );
  const passes = first.deepest.findIndex((deep) => deep >= thickness);
  if (passes < 0) {
    const lastPass = first.lastPass.reduce((most, one) => Math.max(most, one), 0);
    return { reached: first.deepest.at(-1)!, passes: first.passes, lastPass };
  }
  const allPasses = passes + Math.round(after);
  const cut = { ...train, passes: allPasses, keep: [passes] };
  const whole = cutGroove(light, cut, portion(report, 0.5, 1));
  const clipped = (depth: Float64Array) => depth.map((d) => Math.min(d, thickness));
  const section = { y: whole.y, depth: clipped(whole.depth) };
  const { topWidth: entryKerf, besideDepth } = shapeOf(section)!;
  const exitKerf = widthAt(whole, thickness);
  return {
    passes,
    allPasses,
    y: whole.y,
    opening: clipped(whole.kept.get(passes)!.depth),
    depth: section.depth,
    entryKerf,
    exitKerf,
    besideDepth,
    taper: Math.atan((entryKerf - exitKerf) / (2 * thickness)),
  };
}
