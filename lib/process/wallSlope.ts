/** The smaller of two numbers of the same sign; 0 for opposite ones. */
function lesser(a: number, b: number): number {
  if (a * b <= 0) return 0;
  return Math.abs(a) < Math.abs(b) ? a : b;
}

/**
 * Slope |dd/dy| of a groove at each place, from the side from which its walls grow: steep walls stop and everything
 * below them follows, so the slope comes from the shallower side. One-sided differences of second order (ENO) and the
 * rule of Godunov for d_t = f(|d_y|) with f falling (S. Osher & C.-W. Shu, SIAM J. Numer. Anal. 28, 907 (1991),
 * memory). `depth` at equal steps `step`; beyond its ends the surface is level, or the mirror image where `mirrored`
 * starts in the middle.
 */
export function wallSlopes(depth: Float64Array, step: number, mirrored: boolean, into: Float64Array): void {
  const last = depth.length - 1;
  const at = (i: number) => (i < 0 ? (mirrored ? depth[-i]! : depth[0]!) : depth[Math.min(i, last)]!);
  const bend = (i: number) => at(i + 1) - 2 * at(i) + at(i - 1);
  for (let i = 0; i <= last; i++) {
    const here = bend(i);
    const left = at(i) - at(i - 1) + lesser(bend(i - 1), here) / 2;
    const right = at(i + 1) - at(i) - lesser(here, bend(i + 1)) / 2;
    into[i] = Math.max(left, -right, 0) / step;
  }
}
