/** Background plane in counts: level at (x, y) and slopes a pixel. */
export interface Plane {
  readonly level: number;
  readonly slopeX: number;
  readonly slopeY: number;
  readonly x: number;
  readonly y: number;
}

/** Centroid in pixels from the image's upper left corner and central second moments in pixels². */
export interface Moments {
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

/** Principal axes of second moments: angle of the axis nearer to x (−π/4 to π/4) and the moments along both. */
export interface PrincipalAxes {
  readonly angle: number;
  readonly first: number;
  readonly second: number;
}

/** Value of a plane at (x, y). */
export function planeAt(plane: Plane, x: number, y: number): number {
  return plane.level + plane.slopeX * (x - plane.x) + plane.slopeY * (y - plane.y);
}

/** Principal axes as in ISO 11146-1:2021: angle = ½ atan(2⟨xy⟩/(⟨xx⟩ − ⟨yy⟩)), the first axis within 45° of x. */
export function principalAxes({ xx, yy, xy }: Moments): PrincipalAxes {
  const difference = xx - yy;
  const sign = difference < 0 ? -1 : 1;
  const spread = Math.hypot(difference, 2 * xy);
  const angle = spread === 0 ? 0 : 0.5 * Math.atan2(2 * xy * sign, Math.abs(difference));
  return { angle, first: (xx + yy + sign * spread) / 2, second: (xx + yy - sign * spread) / 2 };
}

/**
 * Squared distance from the centroid in 1/e²-equivalent radii (2σ) along the principal axes: 1 on the beam's
 * 1/e² ellipse. Returns the coefficients of x², xy and y².
 */
export function ellipseForm({ xx, yy, xy }: Moments): [number, number, number] {
  const determinant = 4 * (xx * yy - xy * xy);
  return [yy / determinant, (-2 * xy) / determinant, xx / determinant];
}
