import { type Complex, multiply } from '../numerics/complex.ts';
import { gaussianBeyond } from '../numerics/gaussianBeyond.ts';
import { blurRadius } from './coherence.ts';
import type { PlateAxis } from './separableIrradiance.ts';
import { blurFactor } from './spotSpectrum.ts';

/** Overlaps along one axis of opening O and strip S, the first moved by +s/2, the second, conjugate, by −s/2. */
interface AxisOverlaps {
  readonly open: Complex;
  readonly strip: Complex;
  readonly stripOpen: Complex;
  readonly openStrip: Complex;
}

/** ∫ a(x − s/2) b(x + s/2) e^{−2x² − s²/2 + 2iζsx} dx of two slits of half-widths a and b (∞: none), in w. */
function overlapOfSlits(a: number, b: number, shift: number, defocus: number): Complex {
  const from = Math.max(shift / 2 - a, -shift / 2 - b);
  const to = Math.min(shift / 2 + a, b - shift / 2);
  if (to <= from) return { re: 0, im: 0 };
  const size = Math.exp((-shift * shift) / 2);
  const start = gaussianBeyond(from, 2, 0, 2 * defocus * shift);
  const end = gaussianBeyond(to, 2, 0, 2 * defocus * shift);
  return { re: size * (start.re - end.re), im: size * (start.im - end.im) };
}

function overlapsAlong(axis: PlateAxis, q: number): AxisOverlaps {
  const stop = axis.stop ?? Number.POSITIVE_INFINITY;
  const strip = Math.min(axis.halfWidth, stop);
  const of = (a: number, b: number) => overlapOfSlits(a, b, q / 2, axis.defocus);
  return {
    open: of(stop, stop),
    strip: of(strip, strip),
    stripOpen: of(strip, stop),
    openStrip: of(stop, strip),
  };
}

/**
 * The spectrum ∫I e^{−iq·r}/∫I of a plate of straight steps, as {@link file://./separableIrradiance.ts} has its
 * irradiance: q along x and y in units of f/(w0·B) of that direction. With c = e^{iφ} − 1 the plate is O + cS along each
 * axis (crossed) or OO + cSS (island); closed form, error 1e-14.
 */
export function straightSpectrum(kind: 'crossed' | 'island', x: PlateAxis, y: PlateAxis) {
  const step = { re: Math.cos(x.phase) - 1, im: Math.sin(x.phase) };
  const whole = overlapOfPlate(kind, overlapsAlong(x, 0), overlapsAlong(y, 0), step).re;
  const blur = blurRadius(x.beamPropagationRatio);
  const [alongX, alongY] = [remembered((q) => overlapsAlong(x, q)), remembered((q) => overlapsAlong(y, q))];
  return (qx: number, qy: number): Complex => {
    if (qx === 0 && qy === 0) return { re: 1, im: 0 };
    const { re, im } = overlapOfPlate(kind, alongX(qx), alongY(qy), step);
    const size = (blurFactor(qx, blur) * blurFactor(qy, blur)) / whole;
    return { re: re * size, im: im * size };
  };
}

/** Keeps what was computed: on a grid of frequencies each comes up in a whole row. */
function remembered(compute: (q: number) => AxisOverlaps): (q: number) => AxisOverlaps {
  const kept = new Map<number, AxisOverlaps>();
  return (q) => {
    const known = kept.get(q);
    if (known) return known;
    if (kept.size >= 8192) kept.clear();
    const made = compute(q);
    kept.set(q, made);
    return made;
  };
}

function overlapOfPlate(
  kind: 'crossed' | 'island',
  x: AxisOverlaps,
  y: AxisOverlaps,
  step: Complex,
): Complex {
  if (kind === 'crossed') return multiply(withStep(x, none, step), withStep(y, none, step));
  return withStep(x, y, step);
}

/** Stands for an axis along which nothing happens. */
const one: Complex = { re: 1, im: 0 };
const none: AxisOverlaps = { open: one, strip: one, stripOpen: one, openStrip: one };

/** OO* + |c|² SS* + c SO* + c* OS*, each a product of both axes. */
function withStep(x: AxisOverlaps, y: AxisOverlaps, step: Complex): Complex {
  const open = multiply(x.open, y.open);
  const strip = multiply(x.strip, y.strip);
  const ahead = multiply(step, multiply(x.stripOpen, y.stripOpen));
  const behind = multiply({ re: step.re, im: -step.im }, multiply(x.openStrip, y.openStrip));
  const square = step.re * step.re + step.im * step.im;
  return {
    re: open.re + square * strip.re + ahead.re + behind.re,
    im: open.im + square * strip.im + ahead.im + behind.im,
  };
}
