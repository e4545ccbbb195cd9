import type { Complex } from './complex.ts';
import { faddeeva } from './complexErrorFunction.ts';

/**
 * ∫ e^{−rate·(t−centre)² + i·frequency·t} dt from `from` to ∞; `rate` above 0, ±∞ allowed in `from`. Written with
 * w(z), so that nothing overflows. Error 3e-15 of ∫|…|.
 */
export function gaussianBeyond(from: number, rate: number, centre: number, frequency: number): Complex {
  if (from === Number.POSITIVE_INFINITY) return { re: 0, im: 0 };
  const x = from - centre;
  if (x >= 0) return tail(x, from, rate, frequency);
  const size = Math.sqrt(Math.PI / rate) * Math.exp((-frequency * frequency) / (4 * rate));
  const re = size * Math.cos(frequency * centre);
  const im = size * Math.sin(frequency * centre);
  if (from === Number.NEGATIVE_INFINITY) return { re, im };
  // What lies before `from` is the mirrored tail.
  const before = tail(-x, -from, rate, frequency);
  return { re: re - before.re, im: im + before.im };
}

/** (√π/2√A) e^{−Ax² + ikt} w(k/(2√A) + i√A·x), x ≥ 0. */
function tail(x: number, t: number, rate: number, frequency: number): Complex {
  const root = Math.sqrt(rate);
  const size = (Math.sqrt(Math.PI) / (2 * root)) * Math.exp(-rate * x * x);
  if (size === 0) return { re: 0, im: 0 };
  const w = faddeeva(frequency / (2 * root), root * x);
  const cos = size * Math.cos(frequency * t);
  const sin = size * Math.sin(frequency * t);
  return { re: cos * w.re - sin * w.im, im: cos * w.im + sin * w.re };
}
