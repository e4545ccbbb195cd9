import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fieldSurface,
  heightAt,
  largestSlope,
  partWithin,
  rangeOver,
  steadyWithin,
  usableTimes,
  worstCase,
} from '../../lib/process/fieldSurface.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';

const um = 1e-6;
const field = { width: 20e-3, height: 12e-3 };
const flat = { tilt: 0, direction: 0, sag: 0, width: field.width };
const depth = { from: -41 * um, to: 41 * um };

/** Values at places from edge to edge, an odd number of them so that the middle is one. */
function overGrid<T>(size: typeof field, steps: number, look: (x: number, y: number) => T): T[] {
  return Array.from({ length: (steps + 1) ** 2 }, (_, i) =>
    look(
      size.width * ((i % (steps + 1)) / steps - 0.5),
      size.height * (Math.floor(i / (steps + 1)) / steps - 0.5),
    ),
  );
}

const surfaces = fc.record({
  z: fc.double({ min: -20 * um, max: 20 * um, noNaN: true }),
  tilt: fc.double({ min: 0, max: 10e-3, noNaN: true }),
  direction: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
  sag: fc.double({ min: -100 * um, max: 100 * um, noNaN: true }),
});

describe('the surface over the field', () => {
  it('goes away from the lens in the direction of the tilt, and nears it where the focus lies further off', () => {
    const tilted = fieldSurface(5 * um, { ...flat, tilt: 1e-3, direction: Math.PI / 2 });
    expectClose(heightAt(tilted, 0, 6e-3), 11 * um, { relative: 1e-6, source: 'by hand' });
    expectClose(heightAt(tilted, 6e-3, 0), 5 * um, { relative: 1e-9, source: 'by hand' });
    const bent = fieldSurface(0, { ...flat, sag: 8 * um });
    expectClose(heightAt(bent, 10e-3, 0), -8 * um, { relative: 1e-12, source: 'at half the width' });
    expectClose(heightAt(bent, 0, 5e-3), -2 * um, { relative: 1e-12, source: 'square of the distance' });
    expect(worstCase({ from: 0, to: 0 }, { height: 3 * um, shift: 7 * um })).toEqual({
      from: -10 * um,
      to: 3 * um,
    });
    expect(worstCase({ from: 0, to: 0 }, { height: 3 * um, shift: -7 * um })).toEqual({
      from: -3 * um,
      to: 10 * um,
    });
  });

  it('range: as a fine grid finds it', () => {
    fc.assert(
      fc.property(surfaces, (parts) => {
        const surface = fieldSurface(parts.z, { ...parts, width: field.width });
        const values = overGrid(field, 200, (x, y) => heightAt(surface, x, y));
        const { from, to } = rangeOver(surface, field);
        // The grid misses a vertex by half a step at most: bend × (step/2)² each way.
        const miss = Math.abs(surface.bend) * ((field.width / 400) ** 2 + (field.height / 400) ** 2) + 1e-15;
        expectClose(Math.min(...values), from, { absolute: miss, source: 'grid' });
        expectClose(Math.max(...values), to, { absolute: miss, source: 'grid' });
        expect(Math.min(...values)).toBeGreaterThanOrEqual(from - 1e-15);
        expect(Math.max(...values)).toBeLessThanOrEqual(to + 1e-15);
      }),
      { seed: 1, numRuns: cases(200, 30) },
    );
  });
});

describe('part of the field within the depth', () => {
  it('tilt alone along the width: depth over width × tan α', () => {
    const surface = fieldSurface(0, { ...flat, tilt: 8e-3 });
    const part = (82 * um) / (field.width * Math.tan(8e-3));
    expectClose(partWithin(surface, field, depth), part, { relative: 1e-12, source: 'closed form' });
  });

  it('curvature alone: a disc of radius (F/2)√(depth/s), cut by nothing', () => {
    const surface = fieldSurface(0, { ...flat, sag: 200 * um });
    const radius = (field.width / 2) * Math.sqrt(41 / 200);
    const part = (Math.PI * radius * radius) / (field.width * field.height);
    expectClose(partWithin(surface, field, depth), part, { absolute: 1e-4, source: 'closed form' });
    const other = fieldSurface(0, { ...flat, sag: -200 * um });
    expectClose(partWithin(other, field, depth), part, { absolute: 1e-4, source: 'closed form' });
  });

  it('curvature alone, workpiece moved: a ring', () => {
    const surface = fieldSurface(60 * um, { ...flat, sag: 400 * um });
    const square = (z: number) => ((field.width / 2) ** 2 * z) / (400 * um);
    const part = (Math.PI * (square(101 * um) - square(19 * um))) / (field.width * field.height);
    expectClose(partWithin(surface, field, depth), part, { absolute: 1e-4, source: 'closed form' });
  });

  it('mixtures: as counting a fine grid', () => {
    fc.assert(
      fc.property(surfaces, (parts) => {
        const surface = fieldSurface(parts.z, { ...parts, width: field.width });
        const limits = steadyWithin(depth, { height: 4 * um, shift: -9 * um });
        const steps = 400;
        const inside = overGrid(
          { width: field.width * (1 - 1 / (steps + 1)), height: field.height * (1 - 1 / (steps + 1)) },
          steps,
          (x, y) => {
            const z = heightAt(surface, x, y);
            return z >= limits.from && z <= limits.to;
          },
        ).filter((within) => within).length;
        expectClose(partWithin(surface, field, limits), inside / (steps + 1) ** 2, {
          absolute: 4e-3,
          source: 'counting 401² places: a place along the outline either way',
        });
      }),
      { seed: 2, numRuns: cases(200, 40) },
    );
  });

  it('none where what is unsteady takes the whole depth', () => {
    const limits = steadyWithin(depth, { height: 50 * um, shift: 0 });
    expect(partWithin(fieldSurface(0, flat), field, limits)).toBe(0);
  });
});

describe('the largest field', () => {
  const widths = (surface: ReturnType<typeof fieldSurface>, limits = depth) => {
    const { set, moved } = usableTimes(surface, field, limits);
    return [set, moved].map((times) => (times === null ? null : times * field.width));
  };

  it('tilt alone along the width: depth over tan α, whatever the height', () => {
    const [set, moved] = widths(fieldSurface(0, { ...flat, tilt: 2e-3 }));
    expectClose(set!, (82 * um) / Math.tan(2e-3), { relative: 1e-12, source: 'closed form' });
    expectClose(moved!, (82 * um) / Math.tan(2e-3), { relative: 1e-12, source: 'closed form' });
    const off = fieldSurface(30 * um, { ...flat, tilt: 2e-3 });
    expectClose(widths(off)[0]!, (22 * um) / Math.tan(2e-3), {
      relative: 1e-12,
      source: 'to the nearer end',
    });
    expectClose(widths(off)[1]!, (82 * um) / Math.tan(2e-3), { relative: 1e-12, source: 'closed form' });
  });

  it('tilt aslant: width |cos β| + height |sin β| take their parts', () => {
    const direction = 0.6;
    const [set] = widths(fieldSurface(0, { ...flat, tilt: 2e-3, direction }));
    const slope = Math.tan(2e-3) * (Math.cos(direction) + (field.height / field.width) * Math.sin(direction));
    expectClose(set!, (82 * um) / slope, { relative: 1e-12, source: 'closed form' });
  });

  it('curvature alone: its corners end it, half the depth from the focus or the whole one when moved', () => {
    const sag = 30 * um;
    const [set, moved] = widths(fieldSurface(0, { ...flat, sag }));
    // s (F'² + G'²)/F² = depth, G' = F'·G/F.
    const width = (z: number) => field.width * Math.sqrt(z / sag / (1 + (field.height / field.width) ** 2));
    expectClose(set!, width(41 * um), { relative: 1e-11, source: 'closed form' });
    expectClose(moved!, width(82 * um), { relative: 1e-11, source: 'closed form' });
  });

  it('nothing moves the surface: no limit; no depth left: no field', () => {
    expect(widths(fieldSurface(0, flat))).toEqual([null, null]);
    expect(widths(fieldSurface(60 * um, flat))).toEqual([0, null]);
    const limits = steadyWithin(depth, { height: 50 * um, shift: 0 });
    expect(widths(fieldSurface(0, { ...flat, tilt: 1e-3 }), limits)).toEqual([0, 0]);
  });

  it('mixtures: all of a fine grid over it is within the depth, and not over a little more', () => {
    fc.assert(
      fc.property(surfaces, (parts) => {
        const surface = fieldSurface(parts.z, { ...parts, width: field.width });
        const { set, moved } = usableTimes(surface, field, depth);
        const spread = (times: number) => {
          const size = { width: times * field.width, height: times * field.height };
          const values = overGrid(size, 100, (x, y) => heightAt(surface, x, y));
          return { from: Math.min(...values), to: Math.max(...values) };
        };
        for (const [times, least] of [
          [set, false],
          [moved, true],
        ] as const) {
          if (times === null || times === 0) continue;
          const [within, over] = [spread(0.9999 * times), spread(1.001 * times)];
          const fits = ({ from, to }: typeof within) =>
            least ? to - from <= 82 * um : from >= depth.from && to <= depth.to;
          expect(fits(within)).toBe(true);
          expect(fits(over)).toBe(false);
        }
        if (set !== null && moved !== null) expect(moved).toBeGreaterThanOrEqual(set * (1 - 1e-9));
      }),
      { seed: 3, numRuns: cases(200, 40) },
    );
  });
});

describe('the tilt allowed', () => {
  it('without curvature the depth over |cos β| width + |sin β| height', () => {
    const slope = largestSlope(fieldSurface(0, flat), 0.6, field, 50 * um);
    const span = Math.cos(0.6) * field.width + Math.sin(0.6) * field.height;
    expectClose(slope, (50 * um) / span, { relative: 1e-12, source: 'closed form' });
  });

  it('with curvature it takes just the depth', () => {
    const bent = fieldSurface(0, { ...flat, sag: 30 * um });
    const slope = largestSlope(bent, 0.6, field, 60 * um);
    const surface = fieldSurface(0, { ...flat, sag: 30 * um, tilt: Math.atan(slope), direction: 0.6 });
    const values = overGrid(field, 2000, (x, y) => heightAt(surface, x, y));
    let [low, high] = [0, 0];
    for (const value of values) [low, high] = [Math.min(low, value), Math.max(high, value)];
    expectClose(high - low, 60 * um, { relative: 1e-6, source: 'grid of 2001²' });
    expect(largestSlope(bent, 0.6, field, 40 * um)).toBe(0);
  });
});
