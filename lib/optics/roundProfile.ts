import type { QuadratureRule } from '../numerics/gaussLegendre.ts';
import { panelNodes } from '../numerics/panelledFunction.ts';
import { applyMatrix, blurRadius, blurReach, createBlurMatrix } from './coherence.ts';
import {
  createFieldKernel,
  type Field,
  type FieldKernel,
  type FieldLayout,
  fieldFromKernel,
  layOutField,
} from './focalField.ts';
import type { RadialProfile } from './radialProfile.ts';
import type { Zone } from './zones.ts';

/** What fixes the shape of a round profile, without units of length. */
export interface RoundFocus {
  /** Zones in units of the first zone's outer radius a (so the first `outer` is 1); the last ends at the stop. */
  readonly zones: readonly Zone[];
  /** κ = a/w. */
  readonly stepRatio: number;
  /** ζ, wavefront curvature at the plate included. */
  readonly defocus: number;
  /** M². */
  readonly beamPropagationRatio: number;
}

/** Where a profile is sampled: everything that the kernel depends on, and nothing else. */
export interface RoundPlan {
  readonly layout: FieldLayout;
  /** Panel width in v = 2κϱ. */
  readonly width: number;
  /** Panels of the result. */
  readonly panels: number;
  /** Panels of the coherent profile, more than `panels` where M² > 1. */
  readonly coherentPanels: number;
}

const nodesPerPanel = 16;

/** The next power of √2 at or above x: plans move in steps, so that what is kept serves many nearby designs. */
export function ladder(x: number): number {
  return 2 ** (Math.ceil(2 * Math.log2(x) - 1e-9) / 2);
}

/**
 * Panels of `width` that cover `length`. Both stand on the ladder, so their quotient is often a whole number but for the
 * last digit, in which powers differ between JavaScript engines: 1e-9 keeps the same plan everywhere.
 */
function countPanels(length: number, width: number): number {
  return Math.ceil(length / width - 1e-9);
}

/**
 * Radius in w0·B/f out to which a spot is sampled: the diffraction spot, blurred, and the cone of light that reaches
 * out to |ζ| times the part of the beam that matters (to 2.2 w: e^{−2·2.2²} = 6e-5). It holds the spot down to a few
 * per cent of its peak; the window of its second moment often reaches further ({@link file://./secondMoment.ts}).
 */
export function spotReach(focus: RoundFocus): number {
  const blur = blurRadius(focus.beamPropagationRatio);
  const last = focus.zones.at(-1)!.outer * focus.stepRatio;
  return 7 / Math.min(1, last) + 2.2 * blur + Math.abs(focus.defocus) * Math.min(last, 2.2);
}

/**
 * Plans the samples for a profile out to `reach` (in w0·B/f; the spot's own reach when left out).
 * Plans move in steps of √2, so that a kernel serves many nearby designs.
 */
export function planRoundProfile(focus: RoundFocus, reach = spotReach(focus)): RoundPlan {
  const { zones, stepRatio, defocus, beamPropagationRatio } = focus;
  const last = zones.at(-1)!.outer * stepRatio;
  // The irradiance holds frequencies up to 4·min(R/w, 3.2) in ϱ; 16 nodes resolve 13 rad a panel to 1e-10.
  const width = ladder((2 * stepRatio * 3.2) / Math.min(Math.max(last, 1e-3), 3.2) / Math.SQRT2) / Math.SQRT2;
  // One panel at least: the axis alone is a reach of 0.
  const panels = Math.max(1, countPanels(ladder(2 * stepRatio * reach), width));
  const blur = 2 * stepRatio * blurRadius(beamPropagationRatio);
  const coherentPanels = blur === 0 ? panels : countPanels(ladder(panels * width + blurReach * blur), width);
  const layout = layOutField(zones, 1 / stepRatio, coherentPanels * width, stepRatio * stepRatio * defocus);
  return { layout, width, panels, coherentPanels };
}

/** The plan as text: equal texts mean the same kernel. */
export function planText(plan: RoundPlan): string {
  return JSON.stringify(plan);
}

/** What a plan alone fixes: the Bessel matrix, and nodes and weights of the result in v. */
export type PlannedKernel = Omit<RoundKernel, 'blur'>;

/** Builds the kernel of a plan. */
export function kernelOfPlan(plan: RoundPlan): PlannedKernel {
  const { nodes } = panelNodes(plan.width, plan.coherentPanels, nodesPerPanel);
  return {
    plan,
    field: createFieldKernel(plan.layout, nodes),
    inner: panelNodes(plan.width, plan.panels, nodesPerPanel),
  };
}

/** The matrix that blurs the coherent profile of a plan for M² > 1; undefined for M² = 1, where nothing blurs. */
export function blurOfPlan(
  plan: RoundPlan,
  stepRatio: number,
  beamPropagationRatio: number,
): Float64Array | undefined {
  const blur = 2 * stepRatio * blurRadius(beamPropagationRatio);
  if (blur === 0) return undefined;
  const coherent = panelNodes(plan.width, plan.coherentPanels, nodesPerPanel);
  const targets = panelNodes(plan.width, plan.panels, nodesPerPanel).nodes;
  return createBlurMatrix({ width: plan.width, count: nodesPerPanel, nodes: coherent.nodes }, targets, blur);
}

/** Everything about a profile that does not change with phases and z: kept between profiles. */
export interface RoundKernel {
  readonly plan: RoundPlan;
  readonly field: FieldKernel;
  readonly inner: QuadratureRule;
  /** From {@link blurOfPlan} for the same step ratio and M². */
  readonly blur: Float64Array | undefined;
}

/** Kernel of a plan for a focus; its phases and, within the plan, its defocus may change afterwards. */
export function prepareRoundProfile(
  focus: RoundFocus,
  plan: RoundPlan = planRoundProfile(focus),
): RoundKernel {
  return {
    ...kernelOfPlan(plan),
    blur: blurOfPlan(plan, focus.stepRatio, focus.beamPropagationRatio),
  };
}

/**
 * Irradiance |U|² against radius in w0·B/f (1 = axis of the unshaped, unstopped, M² = 1 beam in its focus), with the
 * Schell-model blur where M² > 1. To 1e-9 of the unshaped peak. All of it times `strength`, its radii times `scale`.
 */
export function roundProfile(
  focus: RoundFocus,
  kernel: RoundKernel = prepareRoundProfile(focus),
  { strength = 1, scale = 1 } = {},
): RadialProfile {
  const { plan, blur, inner } = kernel;
  const phases = focus.zones.map((zone) => zone.phase);
  const field = fieldFromKernel(kernel.field, phases, focus.stepRatio, focus.defocus);
  const coherent = irradianceOf(field);
  const values = blur === undefined ? coherent : applyMatrix(blur, coherent);
  // Radii in v become radii in w0·B/f, and these those asked for.
  const inBeam = 1 / (2 * focus.stepRatio);
  return {
    width: plan.width * inBeam * scale,
    count: nodesPerPanel,
    nodes: multiplied(inner.nodes, inBeam, scale),
    weights: multiplied(inner.weights, inBeam, scale),
    values: multiplied(values, strength, 1),
  };
}

function irradianceOf({ re, im }: Field): Float64Array {
  const values = new Float64Array(re.length);
  for (let i = 0; i < values.length; i++) values[i] = re[i]! * re[i]! + im[i]! * im[i]!;
  return values;
}

/** All values times one factor and then the other; a loop, since `map` of a Float64Array takes ten times as long. */
function multiplied(values: Float64Array, one: number, other: number): Float64Array {
  const made = new Float64Array(values.length);
  for (let i = 0; i < made.length; i++) made[i] = values[i]! * one * other;
  return made;
}
