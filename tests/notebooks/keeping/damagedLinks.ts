import { createHash } from 'node:crypto';
import { deflateRawSync } from 'node:zlib';
import { fixture } from './designText.ts';

const whole = fixture('link-v1.txt').toString('utf8').trim();
const [, sum, content] = whole.split('.') as [string, string, string];

/** A link whose form is right, around other bytes. */
function around(bytes: Uint8Array): string {
  const hash = createHash('sha256').update(bytes).digest('hex').slice(0, 8);
  return `1.${hash}.${Buffer.from(bytes).toString('base64url')}`;
}

const folded = (text: string | Buffer) => around(deflateRawSync(text));
const holding = (fields: object) => folded(JSON.stringify({ initial: 1, inputs: {}, ...fields }));
const wavelength = (value: unknown, unit: unknown = 'm') =>
  holding({ inputs: { 'laser.wavelength': { value, unit } } });
const hash = 'ab'.repeat(32);

/** Damaged links: how, the text, what must be said. */
export const damagedLinks: readonly (readonly [name: string, text: string, says: RegExp])[] = [
  ['empty', '', /nothing stands behind ‘design=’/],
  ['words', 'matching', /is not how a link writes a design/],
  ['a version alone', '1', /is not how a link writes a design/],
  ['without its sum', `1.${content}`, /is not how a link writes a design/],
  ['without content', `1.${sum}.`, /is not how a link writes a design/],
  ['version 0', whole.replace(/^1/, '0'), /is not how a link writes a design/],
  ['a negative version', whole.replace(/^1/, '-1'), /is not how a link writes a design/],
  ['a version between two', whole.replace(/^1/, '1.5'), /is not how a link writes a design/],
  [
    'a newer version',
    whole.replace(/^1/, '99'),
    /is version 99, and this program reads up to version 5; open/,
  ],
  ['cut short', whole.slice(0, -9), /letters in it were lost or changed/],
  ['cut short by one sign', whole.slice(0, -1), /letters in it were lost or changed/],
  [
    'one sign changed',
    whole.replace(/.$/, (sign) => (sign === 'A' ? 'Q' : 'A')),
    /letters in it were lost or changed/,
  ],
  ['a sign that no link has', whole.replace(/.$/, '!'), /is not how a link writes a design/],
  [
    'broken over two lines',
    `${whole.slice(0, 80)}%20${whole.slice(80)}`,
    /is not how a link writes a design/,
  ],
  ['with capitals lost', `1.${sum}.${content.toLowerCase()}`, /letters in it were lost or changed/],
  [
    'not compressed',
    around(Buffer.from('{"initial":1,"inputs":{}}')),
    /what is packed in it cannot be unpacked/,
  ],
  [
    'compressed to its half',
    around(deflateRawSync(Buffer.alloc(999, 'abc')).subarray(0, 4)),
    /what is packed in it cannot be unpacked/,
  ],
  ['one that unfolds to much', folded(Buffer.alloc(50e6)), /unpacks to more than 1 MB/],
  ['no text in it', folded(Buffer.from([0xff, 0xfe, 0xfd])), /what is packed in it cannot be unpacked/],
  ['no JSON in it', folded('wavelength = 515 nm'), /begins with 'wavelength.*where a bracket/],
  ['a list in it', folded('[]'), /number of its initial values \(initial\) is missing/],
  ['without inputs', folded('{"initial":1}'), /values \(inputs\) is missing/],
  ['a list of inputs', holding({ inputs: [] }), /values \(inputs\) is a list/],
  [
    'a list of what it left out',
    holding({ leftOut: { files: ['beam.png'] } }),
    /files in the part that says what was left out \(leftOut\) is a list/,
  ],
  ['initial values not known', holding({ initial: 9 }), /initial values 9, which this program does not know/],
  [
    'a value as text',
    wavelength('515 nm'),
    /^The link, at laser\.wavelength: Wavelength has the text "515 nm" .*Ask for the link again/,
  ],
  ['a value out of range', wavelength(1), /allowed is from 250\snm.* Ask for the link again/],
  ['a wrong unit', wavelength(1, 'J'), /Wavelength is given in 'J'/],
  ['an unknown choice', holding({ inputs: { 'plate.stop': { choice: 'square' } } }), /round, open/],
  [
    'an entry named __proto__',
    folded('{"initial":1,"inputs":{"__proto__":{"choice":"a"}}}'),
    /names '__proto__'/,
  ],
  ['an entry given twice', folded('{"initial":1,"initial":1,"inputs":{}}'), /a second time/],
  [
    'a picture without bytes',
    holding({ inputs: { 'laser.beamImage': { file: 'a.png', sha256: hash } } }),
    /names the file "a\.png", which was not saved with it/,
  ],
  [
    'a picture of other bytes',
    holding({ inputs: { 'laser.beamImage': { file: 'a.png', sha256: hash } }, files: { [hash]: 'Zm9v' } }),
    /Camera image of the raw beam cannot be read from "a\.png": its bytes were changed/,
  ],
];
