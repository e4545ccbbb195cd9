import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import {
  createPart,
  inputsOfKind,
  longestName,
  longestNote,
  type PartKind,
  partKinds,
} from '../../lib/design/ownParts.ts';
import { partsLike } from '../../lib/design/ownPartsList.ts';
import { takePart } from '../../lib/design/takePart.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { isInput } from '../../lib/graph/quantity.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import { inputCounts, pathElements } from '../../notebooks/beamPathInputs.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { allowedDesigns } from './inputs.ts';

const start = initialState(designGraph);
const today = (patch: Patch = {}) => applyPatch(designGraph, start, patch);
const chosen = (inputs: Patch, part: { readonly values: Patch }) =>
  applyPatch(designGraph, { inputs, revision: 0 }, part.values).inputs;

describe('what belongs to a part', () => {
  it.each([
    ['lens', {}, ['lens.focalLength']],
    ['expander', {}, ['expander.kind', 'expander.magnification']],
    [
      'expander',
      { 'expander.kind': 'lenses' },
      ['expander.firstFocalLength', 'expander.kind', 'expander.secondFocalLength', 'expander.separation'],
    ],
    ['plate', {}, ['plate.glass', 'plate.madeHeight', 'plate.raised', 'plate.source', 'plate.stepDiameter']],
    [
      'plate',
      { 'plate.glass': 'typed' },
      [
        'plate.glass',
        'plate.madeHeight',
        'plate.raised',
        'plate.source',
        'plate.stepDiameter',
        'plate.typedIndex',
      ],
    ],
  ] as const)('%s with %j', (kind, patch, ids) => {
    expect(Object.keys(takePart(kind, 'A', today(patch).inputs).values).sort()).toEqual(ids);
  });

  it('a plate takes the stop with it only where a person says that its edge is the stop', () => {
    const withStop = (patch: Patch) => takePart('plate', 'A', today(patch).inputs, { withStop: true }).values;
    expect(withStop({})).toMatchObject({ 'plate.stop': 'round', 'plate.apertureDiameter': 14e-3 });
    expect(withStop({ 'plate.stop': 'open' })).not.toHaveProperty(['plate.apertureDiameter']);
    expect(withStop({ 'plate.stop': 'open' })['plate.stop']).toBe('open');
  });

  it('stands in the panel of its element, and counts there as it counts in the part', () => {
    for (const kind of partKinds) {
      const inPanel = pathElements[kind].inputs.map(({ id }) => id);
      for (const { id } of inputsOfKind(kind)) expect(inPanel).toContain(id);
    }
    fc.assert(
      fc.property(allowedDesigns, fc.constantFrom(...partKinds), (inputs, kind) => {
        const made = { ...inputs, 'plate.source': 'made' };
        const { values } = takePart(kind, 'A', made, { withStop: true });
        for (const { id } of inputsOfKind(kind))
          expect(Object.hasOwn(values, id), id).toBe(inputCounts(id, made));
      }),
      { numRuns: cases(500, 100), seed: 31 },
    );
  });
});

describe('choosing a part', () => {
  it('brings back what was kept, leaves the setup, and is found in the list', () => {
    fc.assert(
      fc.property(allowedDesigns, allowedDesigns, fc.constantFrom(...partKinds), (then, now, kind) => {
        const made: Patch = { ...then, 'plate.source': 'made' };
        const kept = takePart(kind, 'A', made);
        const inputs = chosen(now, kept);
        expect(partsLike([kept], kind, inputs)).toEqual([kept]);
        for (const id of Object.keys(inputs))
          expect(inputs[id], id).toBe((Object.hasOwn(kept.values, id) ? made : now)[id]);
      }),
      { numRuns: cases(500, 100), seed: 32 },
    );
  });

  it('of an expander of two lenses leaves its distances to laser and plate', () => {
    const kept = takePart('expander', 'Galilean', today({ 'expander.kind': 'lenses' }).inputs);
    const now = today({ 'expander.waistDistance': 1.5, 'expander.plateDistance': 0.7 }).inputs;
    expect(chosen(now, kept)).toMatchObject({ 'expander.waistDistance': 1.5, 'expander.plateDistance': 0.7 });
  });

  it('that does not fit the ranges is refused, and nothing changes', () => {
    const part = { ...takePart('lens', 'A', start.inputs), values: { 'lens.focalLength': 3 } };
    expect(() => applyPatch(designGraph, start, part.values)).toThrow(/allowed is from 5\smm to 2000\smm/);
    expect(start).toEqual(initialState(designGraph));
  });
});

describe('a designed plate', () => {
  const engine = createEngine(designGraph);
  const valueIn = (inputs: Patch, id: string) => {
    engine.setInputs(inputs);
    return (engine.evaluate([id])[id] as { value: number }).value;
  };

  it('is kept as made for the wavelength of that day: at half the wavelength it delays by more than twice', () => {
    const kept = takePart('plate', 'Half wave', today({ 'plate.madeHeight': 2e-6 }).inputs);
    // h = λ/(2(n−1)) with n = 1.450 for fused silica at 1030 nm (Malitson 1965): 1144 nm.
    expectClose(kept.values['plate.madeHeight'] as number, 1.144e-6, { relative: 1e-3, absolute: 0 });
    const green = chosen(today({ 'laser.wavelength': 515e-9 }).inputs, kept);
    // n(515 nm) − 1 = 0.4615 over 0.4500: 2 × 1.026 half waves.
    expectClose(valueIn(green, 'plate.stepPhase') / Math.PI, 2.05, { relative: 5e-3, absolute: 0 });
    const infrared = chosen(start.inputs, kept);
    expectClose(valueIn(infrared, 'plate.stepPhase'), Math.PI, { relative: 1e-12, absolute: 0 });
  });

  it('is not the kept one while it is still designed: its height follows the laser', () => {
    const kept = takePart('plate', 'Half wave', start.inputs);
    expect(partsLike([kept], 'plate', start.inputs)).toEqual([]);
    expect(partsLike([kept], 'plate', chosen(start.inputs, kept))).toEqual([kept]);
  });

  it.each([
    [{}, '', 'height for 0.5\u202fwaves at 1030\u202fnm'],
    [{ 'plate.source': 'made' }, '', ''],
    [{ 'plate.source': 'made', 'plate.glass': 'typed' }, '', 'refractive index 1.45 at 1030\u202fnm'],
    [
      { 'plate.glass': 'typed', 'laser.wavelength': 515e-9 },
      '  ',
      'height for 0.5\u202fwaves and refractive index 1.45 at 515\u202fnm',
    ],
    [{}, ' drawer  3 ', 'drawer 3'],
  ])('%j with the note "%s" notes "%s"', (patch, note, kept) => {
    // Spaces within a number are kept as plain ones: a note is one line of words.
    expect(takePart('plate', 'A', today(patch).inputs, { note }).note).toBe(kept.replaceAll('\u202f', ' '));
  });

  it('whose height cannot be worked out or made is refused', () => {
    const outside = today({ 'plate.glass': 'typed', 'plate.typedIndex': 1.001 }).inputs;
    expect(() => takePart('plate', 'A', outside)).toThrow(/Made step height of 515\sµm is not possible/);
    const unknown = { ...start.inputs, 'laser.wavelength': 20e-6 };
    expect(() => takePart('plate', 'A', unknown)).toThrow(/index of .* is known from/);
  });
});

describe('the part that today’s inputs are', () => {
  const lens = createPart('lens', '160 mm', { 'lens.focalLength': 0.16 });
  const twin = createPart('lens', 'the other 160 mm', { 'lens.focalLength': 0.16 });

  it('is found although rounding differs, and is not found one nanometre off', () => {
    const like = (f: number) => partsLike([lens], 'lens', today({ 'lens.focalLength': f }).inputs);
    expect(like(0.1 + 0.06)).toEqual([lens]);
    expect(like(0.16 * (1 + 1e-12))).toEqual([lens]);
    expect(like(0.16 + 1e-9)).toEqual([]);
  });

  it('may be several', () => {
    const { inputs } = today({ 'lens.focalLength': 0.16 });
    expect(partsLike([lens, twin], 'lens', inputs)).toEqual([lens, twin]);
    expect(partsLike([lens, twin], 'plate', inputs)).toEqual([]);
  });

  it('may stand beside any stop unless it brings its own', () => {
    const plate = takePart('plate', 'A', start.inputs);
    const edged = takePart('plate', 'B', start.inputs, { withStop: true });
    const { inputs } = today({ ...plate.values, 'plate.apertureDiameter': 20e-3 });
    expect(partsLike([plate, edged], 'plate', inputs)).toEqual([plate]);
  });
});

describe('what is no part', () => {
  const lens = { 'lens.focalLength': 0.16 };
  const plate = takePart('plate', 'A', start.inputs).values;
  it.each<[string, PartKind, string, Patch, string, RegExp]>([
    ['no name', 'lens', '  ', lens, '', /name of the lens is empty; give it one/],
    ['a page as name', 'lens', 'x'.repeat(longestName + 1), lens, '', /61 signs; up to 60 are possible/],
    ['a page as note', 'lens', 'A', lens, 'x'.repeat(longestNote + 1), /note has 201 signs; up to 200/],
    ['no value', 'lens', 'A', {}, '', /focal length \(lens\.focalLength\) of the lens is missing/],
    ['a value out of range', 'lens', 'A', { 'lens.focalLength': 3 }, '', /3000\smm is not possible; allowed/],
    ['no number', 'lens', 'A', { 'lens.focalLength': Number.NaN }, '', /needs a number, such as 100\smm/],
    ['an inherited value', 'lens', 'A', Object.create(lens), '', /is missing/],
    ['no way that is known', 'expander', 'A', { 'expander.kind': 'mirrors' }, '', /magnification, lenses/],
    [
      'half an expander',
      'expander',
      'A',
      { 'expander.kind': 'lenses', 'expander.firstFocalLength': -0.05, 'expander.separation': 0.05 },
      '',
      /focal length of the second lens .* is missing/,
    ],
    ['a designed plate', 'plate', 'A', { ...plate, 'plate.source': 'designed' }, '', /is a made one/],
    [
      'a glass without index',
      'plate',
      'A',
      { ...plate, 'plate.glass': 'typed' },
      '',
      /typed refractive index/,
    ],
    [
      'a stop without diameter',
      'plate',
      'A',
      { ...plate, 'plate.stop': 'round' },
      '',
      /stop diameter .*missing/,
    ],
  ])('%s', (_, kind, name, values, note, says) => {
    expect(() => createPart(kind, name, values, note)).toThrow(says);
  });

  it('keeps one line of the name and only its own values', () => {
    const part = createPart('lens', ' 160 mm\n scan ', { ...start.inputs, 'lens.colour': 1 });
    expect(part).toEqual({
      kind: 'lens',
      name: '160 mm scan',
      note: '',
      values: { 'lens.focalLength': 0.1 },
    });
  });

  it('every input of a kind is one of the design', () => {
    for (const kind of partKinds)
      for (const input of inputsOfKind(kind)) {
        expect(designGraph.quantities.get(input.id)).toBe(input);
        expect(isInput(input)).toBe(true);
      }
  });
});
