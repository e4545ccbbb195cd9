import { gaussLegendre } from '../numerics/gaussLegendre.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { crossingsAlong, type Ray, raysOf } from './spotRays.ts';

/** Nodes a panel of half a w0, within which a spot neither turns nor crosses the level: 1e-9 of a Gaussian's sum. */
const nodesPerPanel = 12;

/**
 * ∫ g(relative irradiance) dA over all places above `level` (above 0), in m² times the unit of g, which is smooth there.
 * Along lines from the centre, cut where the spot turns: as exact as the irradiance for round spots and for what closes
 * around the centre of others; to 1e-2 of the area where separate parts lie beside it.
 */
export function sumAbove(spot: Spot, level: number, g: (irradiance: number) => number): number {
  const rays = raysOf(spot);
  const whole = rays.reduce((sum, ray) => sum + alongRay(spot, ray, level, g), 0);
  return (whole * 2 * Math.PI) / rays.length;
}

/** ∫ g r dr along one line. */
function alongRay(spot: Spot, ray: Ray, level: number, g: (irradiance: number) => number): number {
  const [cosine, sine] = [Math.cos(ray.angle), Math.sin(ray.angle)];
  const edges = [...ray.radii, ...crossingsAlong(spot, ray, level)].sort((a, b) => a - b);
  let sum = 0;
  for (let i = 1; i < edges.length; i++) {
    const [from, to] = [edges[i - 1]!, edges[i]!];
    const middle = (from + to) / 2;
    if (spot.irradianceAt(middle * cosine, middle * sine) <= level) continue;
    sum += overPanels(from, to, ray.panel, (r) => r * g(spot.irradianceAt(r * cosine, r * sine)));
  }
  return sum;
}

function overPanels(from: number, to: number, panel: number, f: (r: number) => number): number {
  const { nodes, weights } = gaussLegendre(nodesPerPanel);
  const count = Math.max(1, Math.ceil((to - from) / panel));
  const half = (to - from) / count / 2;
  let sum = 0;
  for (let p = 0; p < count; p++) {
    const centre = from + (2 * p + 1) * half;
    for (let i = 0; i < nodesPerPanel; i++) sum += weights[i]! * half * f(centre + half * nodes[i]!);
  }
  return sum;
}
