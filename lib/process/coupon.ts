import type { Mark } from './marks.ts';

/** What a test coupon is fired with, SI: every energy in every plane with every number of pulses, so many times. */
export interface CouponGrid {
  /** Pulse energies where they are measured, ascending. */
  readonly energies: readonly number[];
  readonly planes: readonly number[];
  readonly pulses: readonly number[];
  readonly repeats: number;
}

/** One place of the coupon. */
export interface CouponSpot {
  /** From 1, in the order of firing: along a row of energies, then the next row. */
  readonly number: number;
  /** From the first place, m: along the energies, and along repeats, pulses and planes. */
  readonly x: number;
  readonly y: number;
  readonly energy: number;
  readonly z: number;
  readonly pulses: number;
  /** As predicted. */
  readonly mark: Mark;
}

/** A coupon laid out. */
export interface Coupon {
  /** From place to place in x and y, m. */
  readonly pitch: number;
  readonly spots: readonly CouponSpot[];
}

/** How far apart the places lie. */
export interface CouponSpacing {
  /** Pitch over the largest predicted outer diameter, above 1. */
  readonly pitchFactor: number;
  /** Least pitch, m: for coupons where nothing is predicted to be marked. */
  readonly leastPitch: number;
}

/**
 * Lays out a coupon: a column an energy, a row for each plane, number of pulses and repeat, an empty row between planes.
 * The pitch is the largest predicted mark times a factor, rounded up to two digits, so that marks never touch.
 */
export function layCoupon(
  { energies, planes, pulses, repeats }: CouponGrid,
  markOf: (energy: number, z: number, pulses: number) => Mark,
  { pitchFactor, leastPitch }: CouponSpacing,
): Coupon {
  const rows = planes.flatMap((z, plane) =>
    pulses.flatMap((count, i) =>
      Array.from({ length: repeats }, (_, repeat) => ({
        z,
        pulses: count,
        line: plane * (pulses.length * repeats + 1) + i * repeats + repeat,
      })),
    ),
  );
  // Repeats have the same mark.
  const marks = new Map<string, Mark>();
  const markAt = (energy: number, z: number, count: number) => {
    const key = `${energy} ${z} ${count}`;
    const mark = marks.get(key) ?? markOf(energy, z, count);
    marks.set(key, mark);
    return mark;
  };
  const marked = rows.map((row) => energies.map((energy) => markAt(energy, row.z, row.pulses)));
  const largest = marked.flat().reduce((most, { outerDiameter }) => Math.max(most, outerDiameter), 0);
  const pitch = roundUp(Math.max(leastPitch, pitchFactor * largest));
  const spots = rows.flatMap(({ z, pulses: count, line }, row) =>
    energies.map((energy, column) => ({
      number: row * energies.length + column + 1,
      x: column * pitch,
      y: line * pitch,
      energy,
      z,
      pulses: count,
      mark: marked[row]![column]!,
    })),
  );
  return { pitch, spots };
}

/** The next number with two significant digits. */
export function roundUp(value: number): number {
  const unit = 10 ** (Math.floor(Math.log10(value)) - 1);
  // 1e-9: a number that has two digits already must not go up by the dust of binary fractions.
  return Number((Math.ceil(value / unit - 1e-9) * unit).toPrecision(12));
}

/** From the first to the last in equal steps, or in equal ratios, to three significant digits, so that they can be dialled; each once. */
export function steps(first: number, last: number, count: number, ratios = false): number[] {
  const at = (i: number) => {
    const part = count > 1 ? i / (count - 1) : 0;
    return ratios ? first * (last / first) ** part : first + (last - first) * part;
  };
  // Sums of the two ends leave dust where 0 is meant.
  const dust = 1e-9 * Math.max(Math.abs(first), Math.abs(last));
  const readable = (value: number) => (Math.abs(value) < dust ? 0 : Number(value.toPrecision(3)));
  return [...new Set(Array.from({ length: count }, (_, i) => readable(at(i))))];
}
