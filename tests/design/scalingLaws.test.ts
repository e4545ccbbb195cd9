import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import { cases } from '../cases.ts';
import { type Inputs, usualDesigns } from './inputs.ts';

/** Numbers of a design; undefined where there is none. */
function numbersOf(design: Inputs, wanted: readonly string[]): Record<string, number | undefined> {
  const outcomes = createEngine(designGraph, design).evaluate(wanted);
  return Object.fromEntries(
    wanted.map((id) => [id, hasValue(outcomes[id]!) ? (outcomes[id].value as number) : undefined]),
  );
}

/** Expects the numbers of two designs to have the given ratios, to `relative`; absolute for those near 0. */
function expectRatios(
  one: Inputs,
  other: Inputs,
  ratios: Readonly<Record<string, number>>,
  relative = 1e-9,
): void {
  const wanted = Object.keys(ratios);
  const before = numbersOf(one, wanted);
  const after = numbersOf(other, wanted);
  for (const id of wanted) {
    const [x, y] = [before[id], after[id]];
    expect(x === undefined, id).toBe(y === undefined);
    if (x === undefined || y === undefined) continue;
    const expected = x * ratios[id]!;
    // Dip and uniformity are differences of numbers near 1.
    const scale = /dip|uniformity/.test(id) ? Math.max(1, Math.abs(expected)) : Math.abs(expected);
    if (!(Math.abs(y - expected) <= relative * scale)) {
      expect.fail(`${id}: ${y} instead of ${expected}, off by ${((y - expected) / scale).toExponential(2)}`);
    }
  }
}

const at = (design: Inputs, id: string) => design[id] as number;
const factor = fc.noBias(fc.double({ min: -1, max: 1, noNaN: true })).map((x) => 2 ** x);
const settings = { seed: 77, numRuns: cases(200, 8) };
/** One focal length from the plate, where B = f and the two sides of the focus are alike. */
const symmetric = usualDesigns.map((design) => ({ ...design, 'lens.distanceMode': 'focal' }));
const shape = {
  'spot.dip': 1,
  'spot.relativePeak': 1,
  'spot.areaRatio': 1,
  'spot.flatness': 1,
  'spot.uniformity': 1,
};

describe('scaling laws', () => {
  it('a lens of c times the focal length makes the spot c times as wide at the same ζ', () => {
    fc.assert(
      fc.property(symmetric, factor, (design, c) => {
        const other = {
          ...design,
          'lens.focalLength': at(design, 'lens.focalLength') * c,
          'workpiece.z': at(design, 'workpiece.z') * c * c,
        };
        expectRatios(design, other, {
          ...shape,
          'spot.width': c,
          'spot.edgeWidth': c,
          'spot.ringDiameter': c,
          'spot.peakFluence': 1 / (c * c),
          'focus.rayleighLength': c * c,
        });
      }),
      settings,
    );
  });

  it('light of c times the wavelength with a lens of 1/c the focal length gives the same spot', () => {
    fc.assert(
      fc.property(symmetric, factor, (design, c) => {
        const designed = { ...design, 'plate.source': 'designed', 'plate.glass': 'typed' };
        const other = {
          ...designed,
          'laser.wavelength': at(design, 'laser.wavelength') * c,
          'lens.focalLength': at(design, 'lens.focalLength') / c,
          // ζ = π w² z/(λ f²)
          'workpiece.z': at(design, 'workpiece.z') / c,
        };
        expectRatios(designed, other, {
          ...shape,
          'spot.width': 1,
          'spot.edgeWidth': 1,
          'spot.peakFluence': 1,
          'plate.stepPhase': 1,
          'plate.stepHeight': c,
          'match.stepRatio': 1,
          'plate.transmission': 1,
        });
      }),
      settings,
    );
  });

  it('fluence grows with the pulse energy, the shape does not', () => {
    fc.assert(
      fc.property(usualDesigns, factor, (design, c) => {
        // One of the two counts.
        const other = {
          ...design,
          'laser.pulseEnergy': at(design, 'laser.pulseEnergy') * c,
          'laser.typedPower': at(design, 'laser.typedPower') * c,
        };
        expectRatios(design, other, {
          ...shape,
          'spot.width': 1,
          'spot.energyInHalf': 1,
          'spot.peakFluence': c,
          'unshaped.spot.peakFluence': c,
        });
      }),
      settings,
    );
  });

  it('the ring raised instead of the centre swaps the two sides of the focus', () => {
    fc.assert(
      fc.property(symmetric, (design) => {
        const centre = { ...design, 'plate.raised': 'centre' };
        const ring = { ...design, 'plate.raised': 'ring', 'workpiece.z': -at(design, 'workpiece.z') };
        expectRatios(centre, ring, { ...shape, 'spot.width': 1, 'spot.edgeWidth': 1 });
      }),
      settings,
    );
  });

  it('raw diameter and magnification count by their product alone', () => {
    fc.assert(
      fc.property(usualDesigns, factor, (design, c) => {
        const other = {
          ...design,
          'laser.beamDiameter': at(design, 'laser.beamDiameter') * c,
          'expander.magnification': at(design, 'expander.magnification') / c,
        };
        expectRatios(design, other, {
          ...shape,
          'spot.width': 1,
          'spot.peakFluence': 1,
          'match.stepRatio': 1,
          'match.magnification': 1 / c,
        });
      }),
      settings,
    );
  });

  it('the lens taken for a wanted width gives that width at the same ζ', () => {
    let met = 0;
    fc.assert(
      fc.property(usualDesigns, (design) => {
        const wished = numbersOf(design, ['wish.focalLength', 'focus.defocus']);
        const f = wished['wish.focalLength'];
        if (f === undefined) return;
        met += 1;
        const beam = at(design, 'laser.beamDiameter') * at(design, 'expander.magnification');
        const perLength =
          (wished['focus.defocus']! * at(design, 'laser.wavelength')) / (Math.PI * (beam / 2) ** 2);
        const d = design['lens.distanceMode'] === 'focal' ? f : at(design, 'lens.typedPlateDistance');
        // ζ = π w² z/(λ f B) with B = f + z − d z/f, solved for z.
        const z = (perLength * f * f) / (1 - perLength * (f - d));
        const other = { ...design, 'lens.focalLength': f, 'workpiece.z': z };
        const width = numbersOf(other, ['spot.width'])['spot.width']!;
        const want = at(design, 'wish.spotWidth');
        expect(Math.abs(width / want - 1)).toBeLessThan(1e-9);
      }),
      { ...settings, numRuns: cases(200, 24) }, // not every design has such a lens
    );
    expect(met).toBeGreaterThan(6);
  });
});
