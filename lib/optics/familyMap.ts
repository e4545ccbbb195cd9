import { panelNodes } from '../numerics/panelledFunction.ts';
import { interpolationRows } from '../numerics/panelledRows.ts';
import { Problem } from '../problem.ts';
import { applyMatrix, blurRadius, blurReach, createBlurMatrix } from './coherence.ts';
import { spaced } from './focusMaps.ts';
import { collinsB, defocusAt, type Light } from './light.ts';
import { createAxisIrradiance } from './onAxis.ts';
import { ladder } from './roundProfile.ts';
import { radiusScale, roundFocusAt, roundPlateOf, roundShapeOf } from './roundSpot.ts';
import { throughFocusMap } from './throughFocusMap.ts';
import { gaussianReach } from './zones.ts';

/** Radii ϱ, in w0·B/f, at which the coherent light of a map is computed, and to which it is blurred. */
export interface MapPlan {
  /** 1/e² radius of the blur, √(M⁴−1); 0 for coherent light. */
  readonly blur: number;
  /** Width of a panel of 16 Gauss nodes in ϱ. */
  readonly width: number;
  /** Panels of the result. */
  readonly panels: number;
  /** Panels of the coherent light, more than `panels` where it is blurred. */
  readonly coherentPanels: number;
}

const nodesPerPanel = 16;
/** |U|² holds frequencies up to 4·R/w in ϱ, of a Gaussian's edge to 3.2: 16 nodes resolve 13 rad a panel to 1e-10. */
const phasePerPanel = 12.8;
const widestCounted = 3.2;

/** Phase over the plate, in rad, that sums through the focus carry to 1e-7 ({@link throughFocusMap}). */
const largestPhase = 1600;

/**
 * Plans the radii of a map out to ρ = `reach` in metres in every plane from `low` to `high`, metres from the focus. Throws
 * a Problem where the radii lie too far out for the sums, or a plane where the focal formulas end.
 */
export function planMap(light: Light, [low, high]: readonly [number, number], reach: number): MapPlan {
  // Behind the image of the plate radii have no scale: this throws there.
  for (const end of [low, high]) defocusAt(light, end);
  const last = roundPlateOf(light).zones.at(-1)!.outer / light.beamRadius;
  const width = phasePerPanel / 4 / ladder(Math.min(Math.max(last, 1e-3), widestCounted));
  const furthest = reach / Math.min(radiusScale(light, low), radiusScale(light, high));
  const blur = blurRadius(light.beamPropagationRatio);
  if (!(2 * (furthest + blurReach * blur) * Math.min(last, gaussianReach) < largestPhase)) throw tooFar();
  // One panel at least: the axis alone is a reach of 0.
  const panels = Math.max(1, Math.ceil(ladder(furthest) / width - 1e-9));
  const coherentPanels = blur === 0 ? panels : Math.ceil((panels * width + blurReach * blur) / width - 1e-9);
  return { blur, width, panels, coherentPanels };
}

function tooFar(): Problem {
  return new Problem(
    'outside',
    'The light spreads so far over these planes that a map of them cannot be computed; take planes nearer to the focus, or a beam with a lower M².',
    { input: 'lens.focalLength' },
  );
}

/** The matrix that blurs the coherent light of a plan; undefined for M² = 1. Depends on the plan alone: keep it. */
export function blurOfMap({ blur, width, panels, coherentPanels }: MapPlan): Float64Array | undefined {
  if (blur === 0) return undefined;
  const { nodes } = panelNodes(width, coherentPanels, nodesPerPanel);
  const targets = panelNodes(width, panels, nodesPerPanel).nodes;
  return createBlurMatrix({ width, count: nodesPerPanel, nodes }, targets, blur);
}

/**
 * Irradiance through the focus behind a round plate, relative to the axis of the unshaped, unclipped, M² = 1 beam in its
 * focus, (f/B)²|U|², blurred for M² > 1 (Schell model, {@link file://./coherence.ts}). `planes` z and `radii` ρ in
 * metres, signs of radii not counting; the result has a row a plane and a column a radius. Throws a Problem for planes
 * too far from the focus. `plan` covers them ({@link planMap}) and `blur` is its
 * matrix. To 1e-6 of the unshaped peak.
 */
export function familyMap(
  light: Light,
  planes: Float64Array,
  radii: Float64Array,
  plan: MapPlan = planMap(
    light,
    endsOf(planes),
    endsOf(radii)
      .map(Math.abs)
      .reduce((a, b) => Math.max(a, b)),
  ),
  blur: Float64Array | undefined = blurOfMap(plan),
): Float64Array {
  // Both ends are within reach of the model, or this throws.
  for (const end of endsOf(planes)) roundFocusAt(light, end);
  const { zones, stepRatio } = roundShapeOf(light);
  const coherent = panelNodes(plan.width, plan.coherentPanels, nodesPerPanel).nodes;
  const scaled = coherent.map((radius) => 2 * stepRatio * radius);
  const rows = throughFocusMap(
    zones,
    stepRatio,
    scaled,
    planes.map((z) => defocusAt(light, z)),
  );
  const values = new Float64Array(planes.length * radii.length);
  const own = (row: number) => rows.subarray(row * coherent.length, (row + 1) * coherent.length);
  const twin = (row: number) => planes.length - 1 - row;
  const half = Math.ceil(planes.length / 2);
  const mirrored = planes.every(
    (z, row) => row < half || (isTwin(light, z, planes[twin(row)]!) && areEqual(own(row), own(twin(row)))),
  );
  const fresh = mirrored ? half : planes.length;
  const use = rows.subarray(0, fresh * coherent.length);
  readerOf(light, radii, plan)(
    planes.subarray(0, fresh),
    blur === undefined ? use : blurredRows(blur, use, coherent.length),
    values.subarray(0, fresh * radii.length),
  );
  for (let row = fresh; row < planes.length; row++)
    values.copyWithin(row * radii.length, twin(row) * radii.length, (twin(row) + 1) * radii.length);
  return values;
}

/** Each row of `rows`, `length` long, blurred. */
function blurredRows(blur: Float64Array, rows: Float64Array, length: number): Float64Array {
  const count = rows.length / length;
  const shorter = blur.length / length;
  const blurred = new Float64Array(count * shorter);
  for (let row = 0; row < count; row++)
    blurred.set(applyMatrix(blur, rows.subarray(row * length, (row + 1) * length)), row * shorter);
  return blurred;
}

/**
 * Irradiance on the axis in `planes` (z in metres), relative as in {@link familyMap}: closed form for M² = 1, else the
 * integral of the coherent light over the blur. To 1e-6 of the unshaped peak.
 */
export function axisThroughFocus(light: Light, planes: Float64Array): Float64Array {
  const strength = (z: number) => (light.focalLength / collinsB(light, z)) ** 2;
  const defocus = planes.map((z) => defocusAt(light, z));
  const blur = blurRadius(light.beamPropagationRatio);
  if (blur === 0) {
    const zones = roundPlateOf(light).zones.map(({ outer, phase }) => ({
      outer: outer / light.beamRadius,
      phase,
    }));
    const axis = createAxisIrradiance(zones);
    return planes.map((z, row) => axis(defocus[row]!).value * strength(z));
  }
  const { width, coherentPanels } = planMap(light, [0, 0], 0);
  const nodes = panelNodes(width, coherentPanels, nodesPerPanel).nodes;
  const weights = createBlurMatrix({ width, count: nodesPerPanel, nodes }, new Float64Array(1), blur);
  const { zones, stepRatio } = roundShapeOf(light);
  const rows = throughFocusMap(
    zones,
    stepRatio,
    nodes.map((radius) => 2 * stepRatio * radius),
    defocus,
  );
  return planes.map((z, row) => {
    const start = row * nodes.length;
    return applyMatrix(weights, rows.subarray(start, start + nodes.length))[0]! * strength(z);
  });
}

function endsOf(values: Float64Array): [number, number] {
  return [values.reduce((a, b) => Math.min(a, b)), values.reduce((a, b) => Math.max(a, b))];
}

function areEqual(a: Float64Array, b: Float64Array): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/** Whether equal fields in two planes are equal spots: B is the same. */
function isTwin(light: Light, a: number, b: number): boolean {
  return collinsB(light, a) === collinsB(light, b);
}

/** Writes the values of planes at the radii in metres, a row a plane, from those at the nodes. */
type Reader = (planes: Float64Array, samples: Float64Array, into: Float64Array) => void;

/** Where B is the same in all planes the weights are kept; else a fine grid stands between, as B/f stretches it. */
function readerOf(light: Light, radii: Float64Array, plan: MapPlan): Reader {
  const { width, panels } = plan;
  if (light.plateDistance !== light.focalLength) return readerByGrid(light, radii, plan);
  const scale = radiusScale(light, 0);
  const places = radii.map((radius) => Math.abs(radius) / scale);
  const interpolate = interpolationRows(width, panels, nodesPerPanel, places);
  return (_planes, samples, into) => interpolate(samples, 1, into);
}

/** A panel of 12.8 rad in 256 steps: cubics between them err by 3/128·(12.8/256)⁴ = 1.5e-7. */
const stepsPerPanel = 256;

function readerByGrid(light: Light, radii: Float64Array, { width, panels }: MapPlan): Reader {
  const step = width / stepsPerPanel;
  const places = spaced(0, panels * width, panels * stepsPerPanel + 1);
  const interpolate = interpolationRows(width, panels, nodesPerPanel, places);
  const fine = new Float64Array(places.length);
  const length = panels * nodesPerPanel;
  return (planes, samples, into) => {
    planes.forEach((z, row) => {
      const factor = (light.focalLength / collinsB(light, z)) ** 2;
      interpolate(samples.subarray(row * length, (row + 1) * length), factor, fine);
      const scale = 1 / (radiusScale(light, z) * step);
      for (let i = 0; i < radii.length; i++)
        into[row * radii.length + i] = evenCubic(fine, Math.abs(radii[i]!) * scale);
    });
  };
}

/** Cubic through the four samples about place x ≥ 0, for an even function sampled at 0, 1, 2, …; 0 beyond. */
function evenCubic(samples: Float64Array, x: number): number {
  if (x > samples.length - 1) return 0;
  // The last two places have no sample on their far side: the cubic of their neighbour serves them.
  const at = Math.min(Math.floor(x), samples.length - 3);
  const t = x - at;
  const [a, b, c, d] = [samples[Math.abs(at - 1)]!, samples[at]!, samples[at + 1]!, samples[at + 2]!];
  const [u, v, w] = [t + 1, t - 1, t - 2];
  return (-a * t * v * w) / 6 + (b * u * v * w) / 2 - (c * u * t * w) / 2 + (d * u * t * v) / 6;
}
