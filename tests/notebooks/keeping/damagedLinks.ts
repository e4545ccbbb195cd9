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
  ['empty', '', /not of the form/],
  ['words', 'matching', /not of the form/],
  ['a version alone', '1', /not of the form/],
  ['without its sum', `1.${content}`, /not of the form/],
  ['without content', `1.${sum}.`, /not of the form/],
  ['version 0', whole.replace(/^1/, '0'), /not of the form/],
  ['a negative version', whole.replace(/^1/, '-1'), /not of the form/],
  ['a version between two', whole.replace(/^1/, '1.5'), /not of the form/],
  [
    'a newer version',
    whole.replace(/^1/, '99'),
    /is version 99, and this program reads up to version 1; open/,
  ],
  ['cut short', whole.slice(0, -9), /does not match its sum/],
  ['cut short by one sign', whole.slice(0, -1), /does not match its sum/],
  ['one sign changed', whole.replace(/.$/, (sign) => (sign === 'A' ? 'Q' : 'A')), /does not match its sum/],
  ['a sign that no link has', whole.replace(/.$/, '!'), /not of the form/],
  ['broken over two lines', `${whole.slice(0, 80)}%20${whole.slice(80)}`, /not of the form/],
  ['with capitals lost', `1.${sum}.${content.toLowerCase()}`, /does not match its sum/],
  ['not compressed', around(Buffer.from('{"initial":1,"inputs":{}}')), /cannot be unfolded/],
  [
    'compressed to its half',
    around(deflateRawSync(Buffer.alloc(999, 'abc')).subarray(0, 4)),
    /cannot be unfolded/,
  ],
  ['one that unfolds to much', folded(Buffer.alloc(50e6)), /unfolds to more than 1 MB/],
  ['no text in it', folded(Buffer.from([0xff, 0xfe, 0xfd])), /cannot be unfolded/],
  ['no JSON in it', folded('wavelength = 515 nm'), /begins with 'wavelength/],
  ['a list in it', folded('[]'), /at initial: it is missing/],
  ['without inputs', folded('{"initial":1}'), /at inputs: it is missing/],
  ['a list of inputs', holding({ inputs: [] }), /at inputs/],
  ['initial values not known', holding({ initial: 9 }), /initial values 9, which this program does not know/],
  ['a value as text', wavelength('515 nm'), /'link', inputs\.laser\.wavelength: value: .*"515 nm"/],
  ['a value out of range', wavelength(1), /allowed is from 250\snm/],
  ['a wrong unit', wavelength(1, 'J'), /in 'J'/],
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
    /bytes of "a\.png"/,
  ],
  [
    'a picture of other bytes',
    holding({ inputs: { 'laser.beamImage': { file: 'a.png', sha256: hash } }, files: { [hash]: 'Zm9v' } }),
    /does not match its sum/,
  ],
];
