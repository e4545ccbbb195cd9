/** ∫ max(0, a + bs + cs²) ds between `from` and `to`, from ≤ to; exact but for rounding. */
export function positivePart(a: number, b: number, c: number, from: number, to: number): number {
  const atFrom = a + from * (b + from * c);
  const atTo = a + to * (b + to * c);
  // A parabola open downwards that is positive at both ends, and one open upwards that is at neither.
  if (atFrom >= 0 && atTo >= 0 && c <= 0) return whole(a, b, c, to) - whole(a, b, c, from);
  if (atFrom <= 0 && atTo <= 0 && c >= 0) return 0;
  if (c === 0 && b === 0) return a > 0 ? a * (to - from) : 0;
  const discriminant = b * b - 4 * a * c;
  if (discriminant <= 0) return c > 0 ? whole(a, b, c, to) - whole(a, b, c, from) : 0;
  // Both roots without the difference of nearly equal numbers.
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant));
  const one = q === 0 ? 0 : a / q;
  const other = c === 0 ? one : q / c;
  const first = Math.min(to, Math.max(from, Math.min(one, other)));
  const second = Math.min(to, Math.max(from, Math.max(one, other)));
  return between(a, b, c, from, first) + between(a, b, c, first, second) + between(a, b, c, second, to);
}

function whole(a: number, b: number, c: number, s: number): number {
  return s * (a + s * (b / 2 + (s * c) / 3));
}

/** Without a root between the places: all or nothing. */
function between(a: number, b: number, c: number, from: number, to: number): number {
  if (to <= from) return 0;
  const at = (from + to) / 2;
  return a + at * (b + at * c) > 0 ? whole(a, b, c, to) - whole(a, b, c, from) : 0;
}
