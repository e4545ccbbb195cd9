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
  ['a table', bytesOf('z (mm);d (µm)\n1;2\n'), /begins with 'z \(mm\).*where a bracket/],
  ['a comma too many', replaced(/\n {2}\},/, ',\n  },'), /line \d+, column 3, near workpiece\.z, reads '}'/],
  [
    'NaN for a number',
    replaced(/("value": )[\d.e-]+/, '$1NaN'),
    /line \d+, column \d+, near [\w.]+, reads 'NaN'/,
  ],
  ['a list', bytesOf('[]'), /what it is \(format\) is missing/],
  ['a single number', bytesOf('1'), /all that it holds is 1, where a group of named entries belongs/],
  [
    "another program's JSON",
    bytesOf('{"name":"left-pad","version":"1.3.0"}'),
    /what it is \(format\) is missing/,
  ],
  [
    'a list of parts',
    bytesOf('{"format":"stepwell-parts","version":1,"parts":[]}'),
    /it is a list of lenses, expanders and plates/,
  ],
  [
    'another format',
    rest({ format: 'other' }),
    /\(format\) is the text "other", where "stepwell-design" belongs/,
  ],
  ['no version', rest({ version: undefined }), /its version is missing/],
  ['a newer version', rest({ version: 99 }), /is version 99 and this program reads up to version 5/],
  ['version 0', rest({ version: 0 }), /its version is 0, where a whole number from 1 on belongs/],
  ['a negative version', rest({ version: -1 }), /its version is -1, where a whole number/],
  ['a version between two', rest({ version: 1.5 }), /its version is 1\.5, where a whole number/],
  ['a version as text', rest({ version: '2' }), /its version is the text "2", where a number/],
  ['a number for a name', rest({ name: 7 }), /its name is 7, where a text belongs/],
  ['no inputs', rest({ inputs: undefined }), /the part with its values \(inputs\) is missing/],
  ['a list for the inputs', rest({ inputs: [1, 2] }), /values \(inputs\) is a list, where a group/],
  ['text for the files', rest({ files: 'beam.png' }), /files \(files\) is the text "beam\.png"/],
  [
    'a number for a file',
    changed(({ files }) => Object.assign(files, { [hash]: 7 })),
    /content of the file kept under 3c1963ec… is 7, where a text/,
  ],
  [
    'text for a number',
    wavelength('515 nm'),
    /at laser\.wavelength: Wavelength has the text "515 nm" where its number belongs; allowed is from 250\snm to 2300\snm\. Write it as \{"value":1030,"unit":"nm"\}/,
  ],
  ['null for a number', wavelength(null), /Wavelength has nothing where its number belongs/],
  [
    'a number without its entry',
    entry('laser.wavelength', 515e-9),
    /Wavelength is written as the bare number 5\.15e-7, without a unit/,
  ],
  [
    'a number without its value',
    entry('laser.wavelength', { unit: 'm' }),
    /Wavelength is written as \{"unit":"m"\}, where a number with its unit/,
  ],
  [
    'a number without its unit',
    entry('laser.wavelength', { value: 515e-9 }),
    /Wavelength has the number 5\.15e-7 without a unit/,
  ],
  [
    'a number beyond all numbers',
    replaced(/("laser\.wavelength": \{\s*"value": )[\d.e-]+/, '$11e999'),
    /Wavelength has a number that is too large/,
  ],
  [
    'a number out of range',
    wavelength(1),
    /Wavelength of 1\sm .*allowed is from 250\snm.* Correct it there, or choose another file/,
  ],
  [
    'an unknown unit',
    wavelength(1, 'furlongish'),
    /Wavelength is given in 'furlongish', which is no unit for it.*"nm"/,
  ],
  ['a unit of another kind', wavelength(1, 'J'), /Wavelength is given in 'J', which is no unit for it.*"nm"/],
  [
    'an unknown choice',
    entry('plate.stop', { choice: 'square' }),
    /at plate\.stop: Stop cannot be 'square'; choose one of: round, open/,
  ],
  ['a choice that every object has', entry('plate.stop', { choice: 'toString' }), /round, open/],
  [
    'a number for a choice',
    entry('plate.stop', { value: 1, unit: '1' }),
    /Stop is written as \{"value":1,"unit":"1"\}, where a choice belongs; choose one of: round, open/,
  ],
  [
    'a choice for a number',
    entry('laser.wavelength', { choice: 'green' }),
    /Wavelength is written as \{"choice":"green"\}, where/,
  ],
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
    /inside more than 40 brackets/,
  ],
  [
    'a picture that is not there',
    changed(({ files }) => delete files[hash]),
    /Camera image of the raw beam names the file "beam\.png", which was not saved with it/,
  ],
  [
    'a picture changed by one byte',
    changed(({ files }) => {
      files[hash] = `B${files[hash]!.slice(1)}`;
    }),
    /Camera image of the raw beam cannot be read from "beam\.png": its bytes were changed after it was saved/,
  ],
  [
    'a picture that is no base64',
    changed(({ files }) => {
      files[hash] = 'no, none!';
    }),
    /Camera image of the raw beam .*damaged.*no base64/,
  ],
  [
    'a picture under no sum',
    entry(image, { file: 'beam.png', sha256: 'abc' }),
    /at laser\.beamImage: Camera image of the raw beam is written as .*"abc"/,
  ],
  [
    'a picture without a name',
    entry(image, { sha256: hash }),
    /Camera image of the raw beam is written as .*where the name of a file/,
  ],
  ['a picture that is none', picture('%PDF-1.7'), /Camera image of the raw beam: "beam\.png" .*PDF/],
  ['a picture that breaks off', picture('\x89PNG\r\n'), /"beam\.png"/],
  [
    'a table that is none',
    entry('laser.causticTable', { file: 'beam.png', sha256: hash }),
    /Table of a caustic: "beam\.png" is no text/,
  ],
];
