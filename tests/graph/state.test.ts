import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import { Problem } from '../../lib/problem.ts';

/** The Problem that `run` throws. */
function problemOf(run: () => unknown): Problem {
  try {
    run();
  } catch (error) {
    expect(error).toBeInstanceOf(Problem);
    return error as Problem;
  }
  return expect.fail('no Problem was thrown');
}

const start = initialState(designGraph);

describe('a patch', () => {
  it('changes what it names, counts the revision and leaves the old state alone', () => {
    const next = applyPatch(designGraph, start, { 'laser.wavelength': 515e-9, 'plate.raised': 'ring' });
    expect(next.inputs['laser.wavelength']).toBe(515e-9);
    expect(next.inputs['plate.raised']).toBe('ring');
    expect(next.revision).toBe(start.revision + 1);
    expect(start.inputs['laser.wavelength']).toBe(1.03e-6);
  });

  it('that changes nothing is the same state', () => {
    expect(applyPatch(designGraph, start, { 'laser.wavelength': 1.03e-6 })).toBe(start);
    expect(applyPatch(designGraph, start, {})).toBe(start);
  });

  it('for a settable derived quantity sets the inputs behind it', () => {
    const next = applyPatch(designGraph, start, { 'lens.plateDistance': 0.3 });
    expect(next.inputs['lens.distanceMode']).toBe('typed');
    expect(next.inputs['lens.typedPlateDistance']).toBe(0.3);
    const problem = problemOf(() => applyPatch(designGraph, start, { 'lens.plateDistance': -1 }));
    expect(problem.parts.input).toBe('lens.typedPlateDistance');
  });

  it('takes both ends of a range, and the lower one only where it belongs to it', () => {
    for (const focalLength of [5e-3, 2]) applyPatch(designGraph, start, { 'lens.focalLength': focalLength });
    applyPatch(designGraph, start, { 'plate.typedIndex': 1.0001 });
    const problem = problemOf(() => applyPatch(designGraph, start, { 'plate.typedIndex': 1 }));
    expect(problem.message).toBe('Typed refractive index of 1 is not possible; allowed is above 1 up to 4.');
  });
});

const refused: readonly [name: string, patch: Patch, kind: string, input: string, says: RegExp][] = [
  [
    'a length above its range',
    { 'lens.focalLength': 3 },
    'impossible',
    'lens.focalLength',
    /^Focal length of 3000\smm is not possible; allowed is from 5\smm to 2000\smm\.$/,
  ],
  [
    'a length far above its range, which would fill the shown unit with zeros',
    { 'laser.wavelength': 5e-3 },
    'impossible',
    'laser.wavelength',
    /^Wavelength of 5\smm is not possible; allowed is from 250\snm to 2300\snm\.$/,
  ],
  [
    'a range whose end would',
    { 'expander.separation': 1e-7 },
    'impossible',
    'expander.separation',
    /^Distance between the lenses of 100\snm is not possible; allowed is from 1\smm to 10\sm\.$/,
  ],
  [
    'a length below its range',
    { 'laser.wavelength': 1e-9 },
    'impossible',
    'laser.wavelength',
    /^Wavelength of 1\snm is not possible; allowed is from 250\snm to 2300\snm\.$/,
  ],
  [
    'a value between the ends that cannot be',
    { 'expander.firstFocalLength': 0 },
    'impossible',
    'expander.firstFocalLength',
    /^Focal length of the first lens of 0\smm is not possible; allowed is from −2000\smm to 2000\smm, but not 0\smm\.$/,
  ],
  [
    'not a number',
    { 'laser.wavelength': Number.NaN },
    'unreadable',
    'laser.wavelength',
    /^Wavelength needs a number/,
  ],
  ['endless', { 'workpiece.z': Number.POSITIVE_INFINITY }, 'unreadable', 'workpiece.z', /needs a number/],
  [
    'a text for a number',
    { 'laser.pulseEnergy': '20' },
    'unreadable',
    'laser.pulseEnergy',
    /^Pulse energy needs a number, such as 20\sµJ\.$/,
  ],
  [
    'no such option',
    { 'plate.raised': 'both' },
    'impossible',
    'plate.raised',
    /^Raised part cannot be 'both'; choose one of: centre, ring\.$/,
  ],
  [
    'a name of every object',
    { 'plate.raised': 'toString' },
    'impossible',
    'plate.raised',
    /choose one of: centre, ring/,
  ],
  [
    'a result',
    { 'spot.width': 1e-5 },
    'impossible',
    'spot.width',
    /^'spot\.width' follows from other values and cannot be set/,
  ],
  ['a constant', { 'plate.micrometre': 1 }, 'impossible', 'plate.micrometre', /cannot be set/],
];

describe('a refused patch', () => {
  for (const [name, patch, kind, input, says] of refused) {
    it(`${name}: names the input, says what is allowed, changes nothing`, () => {
      const before = JSON.stringify(start);
      // A good change beside it must not slip through.
      const problem = problemOf(() =>
        applyPatch(designGraph, start, { 'expander.magnification': 3, ...patch }),
      );
      expect(problem.kind).toBe(kind);
      expect(problem.parts.input).toBe(input);
      expect(problem.message).toMatch(says);
      expect(JSON.stringify(start)).toBe(before);
    });
  }

  it('is written in numbers that can be read, whatever was typed', () => {
    const numbers = designGraph.order.filter((quantity) => quantity.kind === 'number');
    for (const input of numbers.filter(({ unit }) => ['m', 's', 'J', 'Hz'].includes(unit))) {
      for (const value of [input.range.max * 3, input.range.max * 1e4, input.range.min - input.range.max]) {
        const { message } = problemOf(() => applyPatch(designGraph, start, { [input.id]: value }));
        expect(message, input.id).not.toMatch(/10[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+|\d{6}/);
      }
    }
  });

  it('carries value and allowed range apart as well', () => {
    const { parts } = problemOf(() => applyPatch(designGraph, start, { 'lens.focalLength': 3 }));
    expect(parts).toEqual({
      input: 'lens.focalLength',
      value: '3000\u202fmm',
      allowed: 'from 5\u202fmm to 2000\u202fmm',
    });
  });

  it('for an unknown id suggests a known one', () => {
    const { message } = problemOf(() => applyPatch(designGraph, start, { 'beam.wavelength': 1e-6 }));
    expect(message).toBe(
      "There is no quantity 'beam.wavelength'. Did you mean laser.wavelength? The command quantities lists all.",
    );
  });
});
