/** What moves the surface against the focus over the field; SI. */
export interface DepthCauses {
  /** Angle of the surface, rad, either way. */
  readonly tilt: number;
  /** Width of the field, edge to edge. */
  readonly field: number;
  /** Height error, ±. */
  readonly height: number;
  /** How much further the focus lies at the field's edge than in its middle. */
  readonly sag: number;
  /** How much further the focus lies when the optics are warm. */
  readonly shift: number;
}

/** A stretch of z. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * Planes against the focus that a surface set at z takes over the field, all causes at their worst together: tilt about
 * the middle of the field and height error either way, focus shifts one way (a focus further off leaves the surface
 * nearer to the lens than it).
 */
export function reachedPlanes(z: number, { tilt, field, height, sag, shift }: DepthCauses): Stretch {
  const eitherWay = (field / 2) * Math.tan(tilt) + height;
  return {
    from: z - eitherWay - Math.max(0, sag) - Math.max(0, shift),
    to: z + eitherWay - Math.min(0, sag) - Math.min(0, shift),
  };
}

/** How a plane fares over the field. */
export interface Survival {
  readonly verdict: 'survives' | 'survives when moved' | 'does not survive' | 'no depth';
  /** Depth less spread: what is left over, below 0 what lacks. */
  readonly room: number;
  /** By how much to move the workpiece so that the middle of what is reached lies in the middle of the depth. */
  readonly move: number;
}

/** Compares the planes reached with the depth of focus around the plane. */
export function survivalOf(
  depth: Stretch & { readonly deviation: number },
  tolerance: number,
  reached: Stretch,
): Survival {
  const room = depth.to - depth.from - (reached.to - reached.from);
  const move = (depth.from + depth.to) / 2 - (reached.from + reached.to) / 2;
  if (depth.deviation > tolerance) return { verdict: 'no depth', room, move: 0 };
  if (room < 0) return { verdict: 'does not survive', room, move };
  // An unmoved surface lies on an end where the depth does; rounding must not decide that.
  const slack = 1e-9 * (depth.to - depth.from);
  const inside = reached.from >= depth.from - slack && reached.to <= depth.to + slack;
  return { verdict: inside ? 'survives' : 'survives when moved', room, move };
}
