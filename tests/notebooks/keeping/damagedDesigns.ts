import { createHash } from 'node:crypto';
import { bytesOf, type DesignText, designText, fixture } from './designText.ts';

/** A damaged file: how it is damaged, its bytes, and what must be said of it. */
export type Damaged = readonly [name: string, bytes: Uint8Array, says: RegExp];

const whole = fixture('design-v2.json').toString('utf8');

/** The fixture after a change of its content. */
function changed(change: (design: DesignText) => void): Uint8Array {
  const design = designText();
  change(design);
  return bytesOf(JSON.stringify(design));
}

const rest = (fields: object) => changed((design) => Object.assign(design, fields));
const entry = (id: string, value: unknown) => changed(({ inputs }) => Object.assign(inputs, { [id]: value }));
const wavelength = (value: unknown, unit: unknown = 'm') => entry('laser.wavelength', { value, unit });
/** The fixture after a change of its text. */
const replaced = (from: string | RegExp, to: string) => bytesOf(whole.replace(from, to));
const wide = (text: string) => new Uint8Array(Buffer.from(text, 'utf16le'));

const image = 'laser.beamImage';
const hash = (designText().inputs[image] as { sha256: string }).sha256;
const sumOf = (text: string) => createHash('sha256').update(text).digest('hex');

/** The fixture with other bytes as its picture, under their right sum. */
const picture = (text: string) =>
  changed(({ inputs, files }) => {
    inputs[image] = { file: 'beam.png', sha256: sumOf(text) };
    files[sumOf(text)] = Buffer.from(text).toString('base64');
  });

export const damagedDesigns: readonly Damaged[] = [
  ['empty', new Uint8Array(0), /not a design file: it is empty/],
  ['only white space', bytesOf(' \n\n'), /it is empty/],
  ['cut short in the middle', bytesOf(whole.slice(0, whole.length / 2)), /ends too early/],
  ['cut short by its last bracket', bytesOf(whole.trimEnd().slice(0, -1)), /ends too early/],
  ['binary', new Uint8Array([137, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13]), /it is no text/],
  ['UTF-16 without its mark', wide(whole), /it is no text/],
  ['a drawing', bytesOf('<svg xmlns="http://www.w3.org/2000/svg"/>'), /begins with '<svg/],
  ['a table', bytesOf('z (mm);d (µm)\n1;2\n'), /begins with 'z \(mm\)/],
  ['a comma too many', replaced(/\n {2}\},/, ',\n  },'), /line \d+, column \d+ holds/],
  ['NaN for a number', replaced(/("value": )[\d.e-]+/, '$1NaN'), /line \d+, column \d+ holds 'N/],
  ['a list', bytesOf('[]'), /at format: it is missing/],
  ['a single number', bytesOf('1'), /at the whole file/],
  ["another program's JSON", bytesOf('{"name":"left-pad","version":"1.3.0"}'), /at format: it is missing/],
  ['a list of parts', bytesOf('{"format":"stepwell-parts","version":1,"parts":[]}'), /at format/],
  ['another format', rest({ format: 'other' }), /at format: .*"other"/],
  ['no version', rest({ version: undefined }), /at version: it is missing/],
  ['a newer version', rest({ version: 99 }), /is version 99 and this program reads up to version 2/],
  ['version 0', rest({ version: 0 }), /at version/],
  ['a negative version', rest({ version: -1 }), /at version/],
  ['a version between two', rest({ version: 1.5 }), /at version/],
  ['a version as text', rest({ version: '2' }), /at version: .*"2"/],
  ['a number for a name', rest({ name: 7 }), /at name: .*7/],
  ['no inputs', rest({ inputs: undefined }), /at inputs: it is missing/],
  ['a list for the inputs', rest({ inputs: [1, 2] }), /at inputs/],
  ['text for the files', rest({ files: 'beam.png' }), /at files/],
  ['a number for a file', changed(({ files }) => Object.assign(files, { [hash]: 7 })), /at files\./],
  ['text for a number', wavelength('515 nm'), /inputs\.laser\.wavelength: value: .*"515 nm".*"unit":"m"/],
  ['null for a number', wavelength(null), /inputs\.laser\.wavelength: value: .*null/],
  ['a number without its entry', entry('laser.wavelength', 515e-9), /inputs\.laser\.wavelength: .*5\.15e-7/],
  [
    'a number without its value',
    entry('laser.wavelength', { unit: 'm' }),
    /laser\.wavelength: value: it is missing/,
  ],
  [
    'a number without its unit',
    entry('laser.wavelength', { value: 515e-9 }),
    /laser\.wavelength: unit: it is missing/,
  ],
  [
    'a number beyond all numbers',
    replaced(/("laser\.wavelength": \{\s*"value": )[\d.e-]+/, '$11e999'),
    /Infinity/,
  ],
  ['a number out of range', wavelength(1), /Wavelength of 1\sm .*allowed is from 250\snm/],
  ['an unknown unit', wavelength(1, 'furlongish'), /in 'furlongish'.*use m\./],
  ['a unit of another kind', wavelength(1, 'J'), /in 'J'.*use m\./],
  [
    'an unknown choice',
    entry('plate.stop', { choice: 'square' }),
    /inputs\.plate\.stop: .*'square'.*round, open/,
  ],
  ['a choice that every object has', entry('plate.stop', { choice: 'toString' }), /round, open/],
  [
    'a number for a choice',
    entry('plate.stop', { value: 1, unit: '1' }),
    /inputs\.plate\.stop: choice: it is missing/,
  ],
  ['a choice for a number', entry('laser.wavelength', { choice: 'green' }), /value: it is missing/],
  [
    'an entry given twice',
    replaced('"inputs": {', '"inputs": {"plate.stop": {"choice": "open"},'),
    /gives 'plate\.stop' a second time/,
  ],
  [
    'an entry named __proto__',
    replaced('"inputs": {', '"inputs": {"__proto__": {"value": 1, "unit": "m"},'),
    /names '__proto__'/,
  ],
  [
    'an entry named constructor',
    replaced('"inputs": {', '"inputs": {"constructor": {"choice": "x"},'),
    /names 'constructor'/,
  ],
  [
    'nested without end',
    replaced('"inputs": {', `"inputs": {"later.thing": ${'['.repeat(9000)}${']'.repeat(9000)},`),
    /nested deeper/,
  ],
  [
    'a picture that is not there',
    changed(({ files }) => delete files[hash]),
    /inputs\.laser\.beamImage: The bytes of "beam\.png"/,
  ],
  [
    'a picture changed by one byte',
    changed(({ files }) => {
      files[hash] = `B${files[hash]!.slice(1)}`;
    }),
    /does not match its sum/,
  ],
  [
    'a picture that is no base64',
    changed(({ files }) => {
      files[hash] = 'no, none!';
    }),
    /is no base64/,
  ],
  [
    'a picture under no sum',
    entry(image, { file: 'beam.png', sha256: 'abc' }),
    /inputs\.laser\.beamImage: .*"abc"/,
  ],
  ['a picture without a name', entry(image, { sha256: hash }), /inputs\.laser\.beamImage: /],
  ['a picture that is none', picture('%PDF-1.7'), /"beam\.png" .*PDF/],
  ['a picture that breaks off', picture('\x89PNG\r\n'), /"beam\.png"/],
  [
    'a table that is none',
    entry('laser.causticTable', { file: 'beam.png', sha256: hash }),
    /"beam\.png" is no text/,
  ],
];
