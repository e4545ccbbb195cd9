import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPart, partKinds } from '../../lib/design/ownParts.ts';
import { readPartsFile, writePartsFile } from '../../lib/design/ownPartsFile.ts';
import { takePart } from '../../lib/design/takePart.ts';
import { cases } from '../cases.ts';
import { allowedDesigns } from './inputs.ts';

const lens = createPart('lens', '160 mm', { 'lens.focalLength': 0.16 }, 'drawer 3');
const entry = (values: object, rest: object = {}) => ({ kind: 'lens', name: 'A', values, ...rest });
const focal = (value: unknown, unit: unknown = 'm') => ({ 'lens.focalLength': { value, unit } });
const file = (parts: unknown, rest: object = {}) =>
  JSON.stringify({ format: 'stepwell-parts', version: 1, parts, ...rest });

describe('file of parts', () => {
  it('holds every value with its unit', () => {
    expect(JSON.parse(writePartsFile([lens]))).toEqual({
      format: 'stepwell-parts',
      version: 1,
      parts: [{ kind: 'lens', name: '160 mm', note: 'drawer 3', values: focal(0.16) }],
    });
  });

  it('reads what was written, to the last digit', () => {
    const named = fc.string({ minLength: 1, maxLength: 20 }).map((text) => `a${text}`);
    fc.assert(
      fc.property(
        allowedDesigns,
        fc.constantFrom(...partKinds),
        named,
        fc.boolean(),
        (inputs, kind, name, withStop) => {
          const made = { ...inputs, 'plate.source': 'made' };
          const parts = [takePart(kind, name, made, { withStop, note: name })];
          expect(readPartsFile(writePartsFile(parts), 'own.json')).toEqual({ parts, unknown: [] });
        },
      ),
      { numRuns: cases(1000, 200), seed: 33 },
    );
    expect(readPartsFile(writePartsFile([]), 'own.json').parts).toEqual([]);
  });

  it('takes other units, and plates without word of their source', () => {
    const values = {
      'plate.stepDiameter': { value: 10, unit: 'mm' },
      'plate.madeHeight': { value: 1.144, unit: 'µm' },
      'plate.glass': { choice: 'fusedSilica' },
      'plate.raised': { choice: 'ring' },
    };
    const { parts } = readPartsFile(file([{ kind: 'plate', name: 'A', values }]), 'own.json');
    expect(parts[0]!.values).toEqual({
      'plate.stepDiameter': 0.01,
      'plate.source': 'made',
      'plate.madeHeight': 1.144e-6,
      'plate.glass': 'fusedSilica',
      'plate.raised': 'ring',
    });
  });

  it('reports ids that it does not know for such a part, and reads the rest', () => {
    const values = {
      ...focal(0.1),
      'lens.coating': { choice: 'none' },
      'plate.stepDiameter': { value: 1, unit: 'm' },
    };
    const { parts, unknown } = readPartsFile(file([entry(values)]), 'own.json');
    expect(parts).toEqual([createPart('lens', 'A', { 'lens.focalLength': 0.1 })]);
    expect(unknown).toEqual(['lens.coating of the lens ‘A’', 'plate.stepDiameter of the lens ‘A’']);
  });

  it.each([
    [
      'no JSON',
      '{"format": "stepw',
      /^'own\.json' is not a list of parts: .* Choose a file that was saved as a list/,
    ],
    ['nothing', '', /is not a list of parts/],
    ['null', 'null', /is not a list of parts: all that it holds is nothing, where a group/],
    [
      'a design',
      '{"format": "stepwell-design", "version": 1, "inputs": {}}',
      /is not a list of parts: it is a design\./,
    ],
    ['no version', file([], { version: undefined }), /its version is missing/],
    ['a later version', file([], { version: 2 }), /is version 2 and this program reads up to version 1/],
    ['no list', file({}), /the list of its parts \(parts\) is \{\}, where a list belongs/],
    [
      'another kind',
      file([entry(focal(0.1), { kind: 'mirror' })]),
      /kind of part 1 is the text "mirror", where "lens" or "expander" or "plate" belongs/,
    ],
    ['a number as name', file([entry(focal(0.1), { name: 7 })]), /name of part 1 is 7, where a text belongs/],
    [
      'text as number',
      file([entry(focal('0.1'))]),
      /part 1 \(lens ‘A’\): Focal length has the text "0\.1" where its number belongs; allowed is from/,
    ],
    [
      'no unit',
      file([entry({ 'lens.focalLength': { value: 0.1 } })]),
      /Focal length has the number 0\.1 without a unit/,
    ],
    [
      'another kind of unit',
      file([entry(focal(1, 'kg'))]),
      /part 1 \(lens ‘A’\): .* in 'kg', which is no unit/,
    ],
    ['an unknown unit', file([entry(focal(1, 'ell'))]), /in 'ell', which is no unit/],
    [
      'out of range',
      file([entry(focal(3))]),
      /part 1 \(lens ‘A’\): .*3000\smm is not possible; allowed is from/,
    ],
    [
      'a choice for a number',
      file([entry({ 'lens.focalLength': { choice: 'x' } })]),
      /Focal length is written as \{"choice":"x"\}, where a number with its unit belongs/,
    ],
    ['no value', file([entry({})]), /\(lens\.focalLength\) of the lens is missing/],
    ['an empty name', file([entry(focal(0.1), { name: ' ' })]), /name of the lens is empty/],
    [
      'the same name twice',
      file([entry(focal(0.1)), entry(focal(0.2), { name: 'a' })]),
      /part 2 \(lens ‘a’\): .*already has the lens ‘A’/,
    ],
    [
      'a designed plate',
      file([
        {
          kind: 'plate',
          name: 'A',
          values: { 'plate.stepDiameter': { value: 1, unit: 'cm' }, 'plate.source': { choice: 'designed' } },
        },
      ]),
      /is a made one/,
    ],
  ])('refuses %s', (_, text, says) => {
    expect(() => readPartsFile(text, 'own.json')).toThrow(says);
    expect(() => readPartsFile(text, 'own.json')).not.toThrow(/undefined|NaN/);
  });
});
