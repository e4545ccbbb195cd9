/** One ring of a stepped plate: `outer` edge as a radius, `phase` delay in rad (the field is multiplied by e^{+iφ}). */
export interface Zone {
  readonly outer: number;
  readonly phase: number;
}

/**
 * Radius, in 1/e² beam radii, beyond which a Gaussian amplitude no longer counts:
 * e^{−5.6²} = 2.4e-14 of the axis. Open plates end here.
 */
export const gaussianReach = 5.6;

/**
 * Where the radial integral may stop, in the unit of the zones, for a beam of 1/e² radius `beamRadius` in that
 * unit: at the last zone's edge, or earlier where the Gaussian has died away. The early end moves in steps of √2,
 * so that a changing beam leaves the integration nodes alone most of the time.
 */
export function integrationEnd(zones: readonly Zone[], beamRadius: number): number {
  const edge = zones.at(-1)!.outer;
  const reach = 2 ** (Math.ceil(2 * Math.log2(gaussianReach * beamRadius)) / 2);
  return Math.min(edge, reach);
}

/** The zones up to `end`, the last one cut there; zones beyond it fall away. */
export function cutZones(zones: readonly Zone[], end: number): Zone[] {
  const inside: Zone[] = [];
  for (const zone of zones) {
    inside.push({ outer: Math.min(zone.outer, end), phase: zone.phase });
    if (zone.outer >= end) break;
  }
  return inside;
}
