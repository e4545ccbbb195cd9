import type { Complex } from '../numerics/complex.ts';
import { gaussianBeyond } from '../numerics/gaussianBeyond.ts';
import { panelledRule } from '../numerics/gaussLegendre.ts';
import type { OffAxisBeam } from './azimuthalHarmonics.ts';
import { breaksAcross, type Rings, ringsOf, visitSteps, zoneAt } from './roundRings.ts';
import { gaussianReach, type Zone } from './zones.ts';

/** Centre and 1/e² radii of a beam on the plate in units of w. */
export type PlateBeam = Required<Pick<OffAxisBeam, 'x0' | 'y0' | 'ax' | 'ay'>>;

/** A round beam on the centre. */
const centredBeam: PlateBeam = { x0: 0, y0: 0, ax: 1, ay: 1 };

const nodesPerPanel = 24;
/** 24 nodes a panel keep 1e-13 while the phase along it stays below this, rad. */
const phasePerPanel = 12;

/** Overlap of the field behind the plate with itself, shifted by (sx, sy) in w. */
export type Overlap = (sx: number, sy: number) => Complex;

/**
 * ∫ P(r − s/2) P*(r + s/2) d²r, P = t·e^{−(x−x0)²/ax² − (y−y0)²/ay² − iζr²}/√(ax·ay), t of round zones in units of w.
 * It is the spectrum ∫|U|² e^{−iq·ϱ} d²ϱ of the focal irradiance at q = 2s (Wiener–Khinchin), π/2 at 0 without a stop.
 * Along the shift every piece between two edges is a complex error function; across it Gauss's rule between the places
 * where edges begin or cross, their square roots smoothed by v = r sin θ. Error 1e-13 for |ζ| ≤ 12.
 */
export function overlapOfRound(
  zones: readonly Zone[],
  defocus: number,
  beam: PlateBeam = centredBeam,
): Overlap {
  const { x0, y0, ax, ay } = beam;
  const centred = x0 === 0 && y0 === 0 && ax === 1 && ay === 1;
  const rings = ringsOf(zones, gaussianReach * Math.max(ax, ay) + Math.hypot(x0, y0));
  const outside = rings.re.at(-1)! ** 2 + rings.im.at(-1)! ** 2;
  return (sx, sy) => {
    // Without a shift there is no direction; one of 1e-13 w changes nothing.
    const shift = Math.max(Math.hypot(sx, sy), 1e-13);
    const last = rings.radii.at(-1) ?? 0;
    if (outside === 0 && shift >= 2 * last) return { re: 0, im: 0 };
    const [cos, sin] = shift > 1e-13 ? [sx / shift, sy / shift] : [1, 0];
    const line = lineOf(beam, cos, sin, 2 * defocus * shift);
    const sum = centred ? centredSum(rings, line, shift, outside) : generalSum(rings, line, shift);
    const whole = wholePlane(line);
    const size = Math.exp(-((sx / ax) ** 2 + (sy / ay) ** 2) / 2) / (ax * ay);
    return { re: size * (sum.re + outside * whole.re), im: size * (sum.im + outside * whole.im) };
  };
}

/** The squared beam and the turning phase in the frame of the shift: e^{−across·(v−v0)² − along·(u−m)² + i·frequency·u}. */
interface Line {
  readonly along: number;
  readonly across: number;
  readonly u0: number;
  readonly v0: number;
  /** m = u0 + lean·(v − v0). */
  readonly lean: number;
  readonly frequency: number;
}

function lineOf({ x0, y0, ax, ay }: PlateBeam, cos: number, sin: number, frequency: number): Line {
  const [a, b] = [2 / (ax * ax), 2 / (ay * ay)];
  const along = a * cos * cos + b * sin * sin;
  const [u0, v0] = [x0 * cos + y0 * sin, y0 * cos - x0 * sin];
  return { along, across: (a * b) / along, u0, v0, lean: ((a - b) * cos * sin) / along, frequency };
}

/** ∫∫ of the squared beam with its phase over the whole plane. */
function wholePlane({ along, across, u0, lean, frequency }: Line): Complex {
  const spread = frequency * frequency * (1 / along + (lean * lean) / across);
  const size = (Math.PI / Math.sqrt(along * across)) * Math.exp(-spread / 4);
  return { re: size * Math.cos(frequency * u0), im: size * Math.sin(frequency * u0) };
}

/** Nodes v ≥ 0 across the shift with their weights. */
function ruleAcross(rings: Rings, shift: number, { along, across, lean, frequency }: Line) {
  const breaks = breaksAcross(rings, shift);
  const nodes: number[] = [];
  const weights: number[] = [];
  const finest = Math.sqrt(Math.max(along, across) / 2) * (1 + Math.abs(lean));
  for (let i = 1; i < breaks.length; i++) {
    const [from, to] = [breaks[i - 1]!, breaks[i]!];
    const radius = rings.radii.find((r) => r >= to)!;
    const [start, end] = [Math.asin(from / radius), Math.asin(to / radius)];
    if (!(end > start)) continue;
    const turning = Math.abs(frequency) * radius * (end - start) * (1 + Math.abs(lean));
    const panels = Math.ceil(Math.max(turning / phasePerPanel, 1.2 * finest * (to - from)));
    const rule = panelledRule(splitTowardsEnd(rings, radius, start, end, panels), nodesPerPanel);
    rule.nodes.forEach((angle, k) => {
      nodes.push(radius * Math.sin(angle));
      weights.push(rule.weights[k]! * radius * Math.cos(angle));
    });
  }
  return { nodes, weights };
}

/** Equal panels from `start` to `end`; where the next ring ends just beyond this one, finer towards that end. */
function splitTowardsEnd(rings: Rings, radius: number, start: number, end: number, panels: number): number[] {
  const edges = Array.from({ length: panels + 1 }, (_, p) => start + ((end - start) * p) / panels);
  const next = rings.radii.find((r) => r > radius);
  const near = next === undefined ? 1 : Math.acosh(next / radius);
  for (let distance = near; distance < 0.6; distance *= 2) {
    const at = Math.PI / 2 - distance;
    if (at > start && at < end) edges.push(at);
  }
  return edges.sort((a, b) => a - b);
}

/** A beam on the centre: only u > 0 and v > 0 are needed, and the sum is real. */
function centredSum(rings: Rings, line: Line, shift: number, outside: number): Complex {
  const whole = Math.sqrt(Math.PI / 2) * Math.exp((-line.frequency * line.frequency) / 8);
  const { nodes, weights } = ruleAcross(rings, shift, line);
  let sum = 0;
  nodes.forEach((v, i) => {
    const middle = zoneAt(rings, (shift * shift) / 4 + v * v);
    let part = (rings.re[middle]! ** 2 + rings.im[middle]! ** 2 - outside) * whole;
    visitSteps(rings, shift, v, true, (u, re, im) => {
      const beyond = gaussianBeyond(u, 2, 0, line.frequency);
      part += 2 * (re * beyond.re - im * beyond.im);
    });
    sum += 2 * weights[i]! * Math.exp(-2 * v * v) * part;
  });
  return { re: sum, im: 0 };
}

function generalSum(rings: Rings, line: Line, shift: number): Complex {
  const { along, across, u0, v0, lean, frequency } = line;
  const { nodes, weights } = ruleAcross(rings, shift, line);
  let [sumRe, sumIm] = [0, 0];
  const addLine = (v: number, weight: number): void => {
    const size = weight * Math.exp(-across * (v - v0) ** 2);
    visitSteps(rings, shift, v, false, (u, re, im) => {
      const beyond = gaussianBeyond(u, along, u0 + lean * (v - v0), frequency);
      sumRe += size * (re * beyond.re - im * beyond.im);
      sumIm += size * (re * beyond.im + im * beyond.re);
    });
  };
  nodes.forEach((v, i) => {
    addLine(v, weights[i]!);
    addLine(-v, weights[i]!);
  });
  return { re: sumRe, im: sumIm };
}
