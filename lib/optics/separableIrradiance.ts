import { panelledRule } from '../numerics/gaussLegendre.ts';
import { type PanelledFunction, panelNodes, valueAt } from '../numerics/panelledFunction.ts';
import { blurRadius, blurReach } from './coherence.ts';
import { addStep, factorsAlong } from './crossedStep.ts';
import type { Field } from './focalField.ts';

/** One direction of a plate of straight steps, in units of the beam's 1/e² radius along it. */
export interface PlateAxis {
  readonly halfWidth: number;
  /** Half-width of the stop; null where open. */
  readonly stop: number | null;
  /** ζ of this direction. */
  readonly defocus: number;
  readonly phase: number;
  /** M². */
  readonly beamPropagationRatio: number;
}

/** A {@link PlateAxis} with where it is sampled, in w0·B/f of this direction: panels of `width`, used up to `reach`. */
export interface SampledAxis extends PlateAxis {
  readonly width: number;
  readonly reach: number;
  readonly blur: number;
}

const nodesPerPanel = 16;

/** Reach as of round spots; panels in which the highest frequency, 4·min(X, 3.2), turns by 9 rad. */
export function layOutAxis(axis: PlateAxis): SampledAxis {
  const stop = axis.stop ?? Number.POSITIVE_INFINITY;
  const blur = blurRadius(axis.beamPropagationRatio);
  const reach = 7 / Math.min(1, stop) + 2.2 * blur + Math.abs(axis.defocus) * Math.min(stop, 2.2);
  const width = 2.25 / Math.min(stop, 3.2);
  return { ...axis, width, blur, reach: Math.ceil(reach / width) * width };
}

/** A product of two axis fields a·b*, real and imaginary part, blurred. */
interface AxisProduct {
  readonly re: PanelledFunction;
  readonly im: PanelledFunction;
}

/** Products of an axis' fields: of one with itself for crossed strips, of two for the island (00, 11, 01). */
export function axisFunctions(kind: 'crossed' | 'island', axis: SampledAxis): AxisProduct[] {
  const panels = Math.ceil((axis.reach + blurReach * axis.blur) / axis.width - 1e-9);
  const grid = panelNodes(axis.width, panels, nodesPerPanel);
  const { all, strip } = factorsAlong(axis.stop, axis.halfWidth, axis.defocus, grid.nodes);
  const make = (values: Float64Array): PanelledFunction =>
    blurAlong({ ...grid, width: axis.width, count: nodesPerPanel, values }, axis);
  const product = (a: Field, b: Field): AxisProduct => ({
    re: make(a.re.map((re, i) => re * b.re[i]! + a.im[i]! * b.im[i]!)),
    im: make(a.im.map((im, i) => im * b.re[i]! - a.re[i]! * b.im[i]!)),
  });
  if (kind === 'island') return [product(all, all), product(strip, strip), product(all, strip)];
  const stepped = addStep(all, strip, axis.phase);
  return [product(stepped, stepped)];
}

/** One product of functions along x and y, with its factor in the irradiance. */
export interface IrradianceTerm {
  readonly factor: number;
  readonly x: PanelledFunction;
  readonly y: PanelledFunction;
}

/**
 * |U|² as a sum of products. Crossed: |Ux|²|Uy|². Island, U = a·a + c·s·s with c = e^{iφ} − 1 and (a, s) the fields
 * of opening and strip: |a|²|a|² + |c|²|s|²|s|² + 2 Re(c* P Q), P and Q the products a·s* along x and y.
 */
export function irradianceTerms(
  phase: number,
  x: readonly AxisProduct[],
  y: readonly AxisProduct[],
): IrradianceTerm[] {
  const [openX, stripX, mixedX] = x;
  const [openY, stripY, mixedY] = y;
  const open = { factor: 1, x: openX!.re, y: openY!.re };
  if (!stripX || !stripY || !mixedX || !mixedY) return [open];
  const re = Math.cos(phase) - 1;
  const im = Math.sin(phase);
  return [
    open,
    { factor: re * re + im * im, x: stripX.re, y: stripY.re },
    { factor: 2 * re, x: mixedX.re, y: mixedY.re },
    { factor: -2 * re, x: mixedX.im, y: mixedY.im },
    { factor: 2 * im, x: mixedX.re, y: mixedY.im },
    { factor: 2 * im, x: mixedX.im, y: mixedY.re },
  ];
}

/**
 * The even function f convolved with √(2/π)/b·e^{−2ξ²/b²}, b the blur's 1/e² radius, out to the axis' reach.
 * 16 nodes over 1.2 b or one panel: 1e-10, as for round spots.
 */
function blurAlong(f: PanelledFunction, axis: SampledAxis): PanelledFunction {
  const { blur, width, reach } = axis;
  if (blur === 0) return f;
  const count = 2 * Math.ceil((blurReach * blur) / Math.min(1.2 * blur, width));
  const edges = Array.from({ length: count + 1 }, (_, i) => blurReach * blur * ((2 * i) / count - 1));
  const rule = panelledRule(edges, 16);
  const norm = Math.sqrt(2 / Math.PI) / blur;
  const weights = rule.weights.map(
    (weight, i) => norm * weight * Math.exp(-2 * (rule.nodes[i]! / blur) ** 2),
  );
  const grid = panelNodes(width, Math.round(reach / width), nodesPerPanel);
  const values = grid.nodes.map((at) => {
    let sum = 0;
    for (let i = 0; i < weights.length; i++) sum += weights[i]! * valueAt(f, Math.abs(at - rule.nodes[i]!));
    return sum;
  });
  return { ...grid, width, count: nodesPerPanel, values };
}
