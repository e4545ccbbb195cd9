import type { Spot } from '../../lib/optics/askedSpot.ts';

/**
 * Marks of a spot that is the same on both sides of either axis, with the diameters along x and y of the part above each
 * level, from a quadrant of samples 0.12 µm apart; straight between steps of 1/40 in ln(1/level), up to 3.
 */
export function boxedMarks(spot: Spot): (ratio: number) => Boxed {
  const places = Array.from({ length: 240 ** 2 }, (_, i) => {
    const [x, y] = [(i % 240) * 0.12e-6, Math.floor(i / 240) * 0.12e-6];
    return { x, y, irradiance: spot.irradianceAt(x, y) };
  });
  const steps = Array.from({ length: 121 }, (_, i): Boxed => {
    const level = Math.exp(-i / 40) * spot.peak;
    const above = places.filter(({ irradiance }) => irradiance > level);
    const extent = (of: (place: { x: number; y: number }) => number) =>
      above.reduce((most, place) => Math.max(most, of(place)), 0) + 0.06e-6;
    return {
      area: spot.areaAbove(level),
      diameters: [2 * extent(({ x }) => x), 2 * extent(({ y }) => y)],
    };
  });
  return (ratio) => {
    const place = Math.min(119.999, Math.max(0, 40 * Math.log(ratio)));
    const [from, to] = [steps[Math.floor(place)]!, steps[Math.floor(place) + 1]!];
    const between = (a: number, b: number) => a + (b - a) * (place % 1);
    return {
      area: between(from.area, to.area),
      diameters: [between(from.diameters[0], to.diameters[0]), between(from.diameters[1], to.diameters[1])],
    };
  };
}

interface Boxed {
  readonly area: number;
  readonly diameters: readonly [number, number];
}
