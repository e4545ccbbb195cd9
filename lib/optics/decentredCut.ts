import { type Complex, multiply } from '../numerics/complex.ts';
import { type RadialHarmonics, radialHarmonicsOffAxis } from './azimuthalHarmonics.ts';
import { collinsB, defocusAt, type Light } from './light.ts';
import { radiusScale, roundPlateOf } from './roundSpot.ts';

/** A cut through the spot along the direction in which the beam is off: x in m, irradiance relative to the unshaped peak. */
export interface Cut {
  readonly x: Float64Array;
  readonly irradiance: Float64Array;
}

/** Half of the cut in units of λB/(πw), which holds both rims, and places along it, the middle once. */
const reach = 2.2;
const places = 45;

/**
 * The cut in the plane z of a beam that meets the plate `decentre` to the right of its middle; M² = 1, a step without a
 * stop. U = e^{iφ₁} U_all + (e^{iφ₀} − e^{iφ₁}) U_step: the whole beam in closed form, and what passes the step.
 */
export function decentredCut(light: Light, z: number, decentre: number): Cut {
  const [step, ring] = roundPlateOf(light).zones;
  const place = { zeta: defocusAt(light, z), x0: decentre / light.beamRadius };
  const radii = Float64Array.from({ length: places }, (_, i) => (reach * i) / (places - 1));
  const disc = [{ outer: step!.outer / light.beamRadius, phase: 0 }];
  const harmonics = radialHarmonicsOffAxis(disc, { x0: place.x0 }, place.zeta, radii);
  const turn = unit(step!.phase - ring!.phase);
  const strength = (light.focalLength / collinsB(light, z)) ** 2;
  const scale = radiusScale(light, z);
  const irradiance = (side: number) =>
    radii.map((xi, i) => {
      const through = multiply({ re: turn.re - 1, im: turn.im }, fieldAt(harmonics, i, side));
      const all = wholeBeam(side * xi, place);
      return strength * ((all.re + through.re) ** 2 + (all.im + through.im) ** 2);
    });
  return {
    x: joined(
      radii.map((at) => -at * scale),
      radii.map((at) => at * scale),
    ),
    irradiance: joined(irradiance(-1), irradiance(1)),
  };
}

const unit = (phase: number): Complex => ({ re: Math.cos(phase), im: Math.sin(phase) });

/** The beam without a plate at (ξ, 0): (1/g) e^{(x0 − iξ)²/g − x0²}, g = 1 + iζ. */
function wholeBeam(xi: number, { zeta, x0 }: { readonly zeta: number; readonly x0: number }): Complex {
  const over: Complex = { re: 1 / (1 + zeta * zeta), im: -zeta / (1 + zeta * zeta) };
  const exponent = multiply({ re: x0 * x0 - xi * xi, im: -2 * x0 * xi }, over);
  const size = Math.exp(exponent.re - x0 * x0);
  return multiply(over, multiply({ re: size, im: 0 }, unit(exponent.im)));
}

/** U at a radius to the right (side 1) or to the left (−1): e^{imφ} is 1 or (−1)^m. */
function fieldAt({ re, im, highest }: RadialHarmonics, row: number, side: number): Complex {
  const width = 2 * highest + 1;
  let [sumRe, sumIm] = [0, 0];
  for (let m = -highest; m <= highest; m++) {
    const sign = m % 2 === 0 ? 1 : side;
    sumRe += sign * re[row * width + m + highest]!;
    sumIm += sign * im[row * width + m + highest]!;
  }
  return { re: sumRe, im: sumIm };
}

/** The left half turned round and the right half behind it, the middle once. */
function joined(left: Float64Array, right: Float64Array): Float64Array {
  return Float64Array.from([...left.subarray(1).toReversed(), ...right]);
}

/** A highest place: where, m, and how high. */
export interface Rim {
  readonly x: number;
  readonly irradiance: number;
}

/** The highest places left and right of the middle. */
export function rimsOf({ x, irradiance }: Cut): { readonly left: Rim; readonly right: Rim } {
  const highest = (side: number): Rim => {
    let best: Rim = { x: 0, irradiance: 0 };
    x.forEach((at, i) => {
      if (side * at > 0 && irradiance[i]! > best.irradiance) best = { x: at, irradiance: irradiance[i]! };
    });
    return best;
  };
  return { left: highest(-1), right: highest(1) };
}

/** Difference of the rims over their mean, above 0 where the right one is brighter. */
export function riseOverMean(cut: Cut): number {
  const { left, right } = rimsOf(cut);
  return (right.irradiance - left.irradiance) / ((right.irradiance + left.irradiance) / 2);
}
