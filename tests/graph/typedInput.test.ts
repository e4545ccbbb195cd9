import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { workpieceZ } from '../../lib/design/focus.ts';
import { beamPropagationRatio, repetitionRate, wavelength } from '../../lib/design/laser.ts';
import { designPhase, stepDiameter, typedIndex } from '../../lib/design/plate.ts';
import { causticOrigin } from '../../lib/design/waist.ts';
import type { NumberInput } from '../../lib/graph/quantity.ts';
import { examplesOf, readTyped } from '../../lib/graph/typedInput.ts';
import { Problem } from '../../lib/problem.ts';
import { expectClose } from '../close.ts';

/** The message with which a text is refused for an input, spaces made plain. */
function refusalOf(input: NumberInput, text: string, bare?: string): string {
  try {
    readTyped(input, text, bare);
  } catch (error) {
    expect(error).toBeInstanceOf(Problem);
    return (error as Problem).message.replaceAll('\u202f', ' ');
  }
  return expect.fail(`${text} was taken`);
}

describe('examples', () => {
  it.each([
    [wavelength, '1030 nm or 1.03 µm'],
    [stepDiameter, '10 mm or 1 cm'],
    [repetitionRate, '200 kHz or 0.2 MHz'],
    [beamPropagationRatio, '1 or 1.6'],
    [typedIndex, '1.45'],
    [designPhase, '0.5 waves or 180°'],
    [workpieceZ, '1 mm or 0.1 cm'],
    [causticOrigin, '1000 mm or 100 cm'],
  ])('of $id', (input, examples) => {
    expect(examplesOf(input).replaceAll('\u202f', ' ')).toBe(examples);
  });

  const inputs = designGraph.order.filter((quantity) => quantity.kind === 'number');
  it.each(inputs)('of $id can be typed, and mean the same where there are two units', (input) => {
    const texts = examplesOf(input).split(' or ');
    const values = texts.map((text) => readTyped(input, text));
    // "2 px or 5 px" are two values of one unit, as "1 or 1.6" are of none.
    const [first, second] = texts.map((text) => text.replace(/^[-−\d.,]+\s*/, ''));
    if (second !== undefined && first !== second)
      expectClose(values[1]!, values[0]!, { relative: 1e-3, source: 'four digits shown' });
  });
});

describe('what is refused says', () => {
  it.each([
    ['kg', '5 kg', wavelength, "'5 kg' is a mass; a length such as 1030 nm or 1.03 µm belongs here."],
    ['no number', 'abc', beamPropagationRatio, /a pure number such as 1 or 1\.6 belongs here\.$/],
    ['nothing', '', wavelength, 'The field is empty; a length such as 1030 nm or 1.03 µm belongs here.'],
    [
      'lower case',
      '0.2 mhz',
      repetitionRate,
      "The unit 'mhz' in '0.2 mhz' is not known; did you mean MHz? A frequency such as 200 kHz or 0.2 MHz belongs here.",
    ],
    ['upper case', '10 MM', stepDiameter, /did you mean mm\? A length such as/],
    ['micro in upper case', '10 UM', stepDiameter, /did you mean µm\? A length such as/],
    ['a unit of another kind', '10 MJ/cm^2 x', stepDiameter, /is not known; a length such as/],
    [
      'a unit twice',
      '1030 nm nm',
      wavelength,
      "'1030 nm nm' has the unit nm twice; a length such as 1030 nm or 1.03 µm belongs here.",
    ],
    ['an area', '3 mm^2', stepDiameter, /is an area; a length/],
    [
      'digits enough to tell it from the end',
      '2300.0001 nm',
      wavelength,
      'Wavelength of 2300.0001 nm is not possible; allowed is from 250 nm to 2300 nm.',
    ],
    ['those of the lower end', '249.99999 nm', wavelength, /^Wavelength of 249\.99999 nm is/],
    [
      'the end itself where it is left out',
      '1',
      typedIndex,
      /^Typed refractive index of 1 is .*above 1 up to 4\.$/,
    ],
    [
      'comma',
      '1,030 nm',
      wavelength,
      'Wavelength of 1.03 nm is not possible; allowed is from 250 nm to 2300 nm. The comma was read as a decimal mark; leave it out where it parts thousands.',
    ],
    ['comma, far out either way', '1,030 pm', wavelength, /The comma was read as a decimal mark/],
    ['point that may part thousands', '1.030 nm', wavelength, /The point was read as a decimal mark/],
    ['point that cannot', '1.030 pm', wavelength, /2300 nm\.$/],
    ['comma before two digits', '1,03 nm', wavelength, /2300 nm\.$/],
    ['comma behind a nought', '0,103 nm', wavelength, /2300 nm\.$/],
    ['comma that parts beside a decimal point', '1,030.5 µm', wavelength, /2300 nm\.$/],
  ] as const)('%s: %s', (_, text, input, says) => {
    const message = refusalOf(input, text);
    if (typeof says === 'string') expect(message).toBe(says);
    else expect(message).toMatch(says);
  });

  it('how a bare number was read, only where it counts in SI and another unit is shown', () => {
    expect(refusalOf(stepDiameter, '10')).toMatch(
      / A bare number is SI \(m\); write 10 mm for a value in mm\.$/,
    );
    expect(refusalOf(stepDiameter, '1e9')).toMatch(/ write the unit too, as in 10 mm\.$/);
    expect(refusalOf(stepDiameter, '1e9', 'mm')).toMatch(/100 mm\.$/);
    expect(refusalOf(stepDiameter, '10 m')).toMatch(/100 mm\.$/);
    expect(refusalOf(beamPropagationRatio, '10')).toMatch(/to 4\.$/);
  });
});

it('two kinds of mark in one number leave a single reading', () => {
  expect(readTyped(wavelength, '1.030,5 nm')).toBe(1030.5e-9);
  expect(readTyped(wavelength, '1,030.5 nm')).toBe(1030.5e-9);
});
