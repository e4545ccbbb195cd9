import { besselOrders } from '../numerics/besselOrders.ts';
import { type Complex, multiply } from '../numerics/complex.ts';
import type { Field } from './focalField.ts';
import { gaussianReach, type Zone } from './zones.ts';

/**
 * U(ϱ,ζ) as in {@link file://./focalField.ts}, from the edges of the zones alone: no nodes on the plate, so that its
 * cost does not grow with the radii. Zones in units of the 1/e² beam radius w, radii in w0·B/f. To 1e-13.
 */
export function fieldFromEdges(zones: readonly Zone[], radii: Float64Array, defocus: number): Field {
  const re = new Float64Array(radii.length);
  const im = new Float64Array(radii.length);
  radii.forEach((radius, i) => {
    let before: Complex = { re: 0, im: 0 };
    for (const { outer, phase } of zones) {
      const here = discField(outer, radius, defocus);
      const [x, y] = [here.re - before.re, here.im - before.im];
      re[i]! += Math.cos(phase) * x - Math.sin(phase) * y;
      im[i]! += Math.cos(phase) * y + Math.sin(phase) * x;
      before = here;
    }
  });
  return { re, im };
}

/**
 * 2∫₀^X e^{−gx²} J0(2ϱx) x dx, g = 1+iζ. Integrated by parts again and again, with t = gX/ϱ, it is
 * (e^{−gX²}/g) Σ_{n≥1} tⁿ J_n(2ϱX), the wave from the edge; or e^{−ϱ²/g}/g, the open beam, less
 * (e^{−gX²}/g) Σ_{n≥0} (−1/t)ⁿ J_n(2ϱX). Of the two the one with powers below 1 is summed, so that nothing cancels.
 * They are Lommel's functions U and V of a complex argument (Born & Wolf, §8.8 (memory)).
 */
function discField(edge: number, radius: number, defocus: number): Complex {
  const open = openField(radius, defocus);
  if (edge >= gaussianReach) return open;
  const inner = radius < Math.hypot(1, defocus) * edge;
  const size = 1 + defocus * defocus;
  // t or −1/t
  const power: Complex = inner
    ? { re: -radius / (size * edge), im: (radius * defocus) / (size * edge) }
    : { re: edge / radius, im: (edge * defocus) / radius };
  const sum = edgeSeries(2 * radius * edge, power, inner ? 0 : 1);
  const wave = multiply(turned(edge * edge, defocus), sum);
  return inner ? { re: open.re - wave.re, im: open.im - wave.im } : wave;
}

/** e^{−ϱ²/g}/g: the Gaussian without plate and stop. */
function openField(radius: number, defocus: number): Complex {
  const size = 1 + defocus * defocus;
  const s = (radius * radius) / size;
  return multiply(
    { re: Math.exp(-s) * Math.cos(s * defocus), im: Math.exp(-s) * Math.sin(s * defocus) },
    { re: 1 / size, im: -defocus / size },
  );
}

/** e^{−g·square}/g. */
function turned(square: number, defocus: number): Complex {
  const size = Math.exp(-square) / (1 + defocus * defocus);
  const [c, s] = [Math.cos(square * defocus), Math.sin(square * defocus)];
  return { re: size * (c - defocus * s), im: -size * (s + defocus * c) };
}

/** Σ_{n≥first} pⁿ J_n(v), |p| ≤ 1: until the powers, or the Bessel functions past n = v, are below 1e-17. */
function edgeSeries(v: number, power: Complex, first: number): Complex {
  const size = Math.hypot(power.re, power.im);
  const last = Math.ceil(Math.min(39 / -Math.log(Math.min(size, 1 - 1e-9)), v + 12 * Math.cbrt(v) + 20)) + 1;
  const bessel = besselOrders(v, last);
  // Horner's rule from the small terms up.
  let re = 0;
  let im = 0;
  for (let n = last; n >= first; n--) {
    const next = re * power.re - im * power.im + bessel[n]!;
    im = re * power.im + im * power.re;
    re = next;
  }
  return first === 0 ? { re, im } : multiply({ re, im }, power);
}
