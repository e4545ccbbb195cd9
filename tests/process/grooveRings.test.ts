import { expect, it } from 'vitest';
import { shapeOf } from '../../lib/process/grooveShape.ts';
import { expectClose } from '../close.ts';

/** Half the width at the surface of a shallow groove of a Gaussian, and where its ring lies, m. */
const [half, ringAt, ringHalf] = [10e-6, 13e-6, 4e-6];
const y = Float64Array.from({ length: 801 }, (_, i) => (i - 400) * 0.05e-6);

/** (1 − y²/b²)^{3/2} as a Gaussian leaves it, and a ring on either side of `ring` times its depth that overlaps its foot. */
function grooveWith(ring: number) {
  const part = (at: number, width: number) => Math.max(0, 1 - (at / width) ** 2) ** 1.5;
  const depth = y.map((x) => 1e-5 * (part(x, half) + ring * part(Math.abs(x) - ringAt, ringHalf)));
  return shapeOf({ y, depth })!;
}

it('the top width is that of the closed form without rings', () => {
  // Straight lines between samples 0.05 µm apart.
  expectClose(grooveWith(0).topWidth, 2 * half, { relative: 1e-3, source: 'closed form' });
});

it.each([0.1, 0.19, 0.21, 0.3, 0.39, 0.41, 0.49])(
  'a ring of %s of the depth lies beside the groove, and moves its width by less than it reaches into its foot',
  (ring) => {
    const { topWidth, besideDepth, wallAngle } = grooveWith(ring);
    // The ring begins 1 µm inside the foot; an edge that took it in would lie at 17 µm.
    expect(Math.abs(topWidth / 2 - half)).toBeLessThan(1e-6);
    expectClose(besideDepth, ring * 1e-5, { relative: 1e-3, source: 'definition' });
    expect(Math.abs(wallAngle - grooveWith(0).wallAngle)).toBeLessThan((6 * Math.PI) / 180);
  },
);

it('a ring at least half as deep is the wall of the groove', () => {
  expect(grooveWith(0.55).topWidth / 2).toBeGreaterThan(ringAt);
});
