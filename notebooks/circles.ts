import type { SeriesSpec } from './document.ts';

/** Sides of a drawn circle: the largest deviates by 0.5 % of its radius. */
const sides = 32;

/** A circle to draw, in the unit of the axes. */
export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

/** Circles one after the other with a gap between; those without a diameter are left out. */
export function circles(all: readonly Circle[]): Pick<SeriesSpec, 'x' | 'y'> {
  const drawn = all.filter(({ diameter }) => diameter > 0);
  const column = (of: (circle: Circle, angle: number) => number) =>
    Float64Array.from({ length: drawn.length * (sides + 2) }, (_, i) => {
      const step = i % (sides + 2);
      return step > sides
        ? Number.NaN
        : of(drawn[Math.floor(i / (sides + 2))]!, (2 * Math.PI * step) / sides);
    });
  return {
    x: column(({ x, diameter }, angle) => x + (diameter / 2) * Math.cos(angle)),
    y: column(({ y, diameter }, angle) => y + (diameter / 2) * Math.sin(angle)),
  };
}

/** Places drawn as points, one by one. */
export function points(
  places: readonly { readonly x: number; readonly y: number }[],
): Pick<SeriesSpec, 'x' | 'y'> {
  const column = (of: 'x' | 'y') =>
    Float64Array.from({ length: 2 * places.length }, (_, i) => (i % 2 ? Number.NaN : places[i >> 1]![of]));
  return { x: column('x'), y: column('y') };
}
