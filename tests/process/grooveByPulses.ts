import type { Spot } from '../../lib/optics/askedSpot.ts';
import { type CuttingLaw, countingLevel, depthOfPulse } from '../../lib/process/cuttingLaw.ts';

/** A groove cut pulse by pulse, for comparison: nothing of the way it is done in the library but the law of one pulse. */
export interface ByPulses {
  readonly spotAtDepth: (depth: number) => Spot;
  /** m between depths at which the light is taken; straight between them. */
  readonly planes: number;
  readonly unit: number;
  readonly law: CuttingLaw;
  readonly pulseSpacing: number;
  /** Of a broken number the last one counts by its part. */
  readonly passes: number;
  /** Half width of the section and half length of the pulse train, m; rows from −half to half. */
  readonly half: number;
  readonly rows: number;
  readonly direction: number;
  /** Positions of the place against the pulses, and steps into which a pass is cut for the slopes. */
  readonly shifts: number;
  readonly parts: number;
}

/** Depth after each pass at evenly spaced places. */
export function grooveByPulses(ask: ByPulses): { readonly y: Float64Array; readonly passes: Float64Array[] } {
  const step = (2 * ask.half) / (ask.rows - 1);
  const y = Float64Array.from({ length: ask.rows }, (_, i) => -ask.half + i * step);
  const depth = new Float64Array(ask.rows);
  const counted = Array.from(y, () => new Float64Array(ask.shifts));
  const planes = new Map<number, Spot>();
  const spot = (index: number) => {
    const known = planes.get(index) ?? ask.spotAtDepth(index * ask.planes);
    planes.set(index, known);
    return known;
  };
  const [cosine, sine] = [Math.cos(ask.direction), Math.sin(ask.direction)];
  const fluenceAt = (x: number, across: number, deep: number) => {
    const [u, v] = [x * cosine - across * sine, x * sine + across * cosine];
    const at = deep / ask.planes;
    const low = Math.floor(at);
    const [a, b] = [spot(low).irradianceAt(u, v), spot(low + 1).irradianceAt(u, v)];
    return ask.unit * (a + (at - low) * (b - a));
  };
  const places = (shift: number) => {
    const first = -ask.half + ((shift + 0.5) / ask.shifts) * ask.pulseSpacing;
    const count = Math.floor((ask.half - first) / ask.pulseSpacing) + 1;
    return Array.from({ length: count }, (_, i) => first + i * ask.pulseSpacing);
  };
  const level = countingLevel(ask.law);
  const passes: Float64Array[] = [];
  for (let pass = 0; pass < ask.passes; pass++) {
    const light = Array.from(y, (across, row) =>
      Array.from({ length: ask.shifts }, (_, shift) =>
        places(shift).map((x) => fluenceAt(x, across, depth[row]!)),
      ),
    );
    // The first pass meets a level surface.
    const parts = pass === 0 ? 1 : ask.parts;
    for (let part = 0; part < parts; part++) {
      const slopes = pass === 0 ? new Float64Array(ask.rows) : slopesOf(depth, step);
      for (let row = 0; row < ask.rows; row++) {
        let sum = 0;
        for (let shift = 0; shift < ask.shifts; shift++) {
          let pulses = counted[row]![shift]!;
          for (const fluence of light[row]![shift]!) {
            const onSlope = fluence / Math.hypot(1, slopes[row]!);
            if (onSlope <= level) continue;
            pulses += 1;
            sum += depthOfPulse(ask.law, onSlope, pulses);
          }
          if (part === parts - 1) counted[row]![shift] = pulses;
        }
        depth[row]! += (Math.min(1, ask.passes - pass) * sum) / ask.shifts / parts;
      }
    }
    passes.push(depth.slice());
  }
  return { y, passes };
}

/** One-sided differences of first order from the side from which the walls grow. */
function slopesOf(depth: Float64Array, step: number): Float64Array {
  return depth.map((here, i) => {
    const left = here - (depth[i - 1] ?? here);
    const right = (depth[i + 1] ?? here) - here;
    return Math.max(left, -right, 0) / step;
  });
}
