import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { applyPatch, initialState } from '../../../lib/graph/state.ts';
import { documents } from '../../../notebooks/contents.ts';
import { initialWords } from '../../../notebooks/keeping/initialWords.ts';
import { readDesign } from '../../../notebooks/keeping/readDesign.ts';
import { addressWords, readAddress, takeDesign } from '../../../notebooks/page/keeping/address.ts';
import { designWords, typedWords } from '../../../notebooks/page/keeping/keepingNotices.ts';
import { fullDesign, openedWords } from '../../../notebooks/page/keeping/openedDesign.ts';
import { printedGroups } from '../../../notebooks/page/keeping/printed.ts';
import { fixture } from './designText.ts';

const opened = readDesign(fixture('design-v2.json'), 'design-v2.json');
const whole = { ...opened, inputs: { ...designGraph.initial, ...opened.inputs } };

describe('what is said of the open design', () => {
  it.each([
    ['own', 'Funnel', ''],
    ['again', 'Funnel', 'Your last design, ‘Funnel’, is open again.'],
    ['again', '', 'Your last design is open again.'],
    [
      'elsewhere',
      'Funnel',
      /^This design, ‘Funnel’, is open in another tab too\. .*copy of its own.*keeps what it has\.$/,
    ],
    ['elsewhere', '', /^This design is open in another tab too\./],
    ['copy', 'Funnel', /^This tab goes on with a copy of its own;/],
  ] as const)('%s, called %j', (design, name, says) => {
    if (typeof says === 'string') expect(designWords(design, name)).toBe(says);
    else expect(designWords(design, name)).toMatch(says);
  });
});

describe('what is said of what was typed and came back', () => {
  it.each([
    [[], ''],
    [
      [['raw beam diameter', '4,2']],
      'What you were typing, ‘4,2’ for raw beam diameter, stands in its field again and does not count yet: Enter takes it, Escape drops it.',
    ],
    [
      [
        ['wavelength', '9 nm'],
        ['raw beam diameter', '4'],
      ],
      'What you were typing, ‘9 nm’ for wavelength, ‘4’ for raw beam diameter, stand in their fields again and do not count yet: Enter takes each, Escape drops it.',
    ],
    [[['wavelength', 'x'.repeat(300)]], /^What you were typing, ‘x{24}…’ for wavelength,/],
  ] as const)('%j', (typed, says) => {
    if (typeof says === 'string') expect(typedWords(typed)).toBe(says);
    else expect(typedWords(typed)).toMatch(says);
  });
});

describe('what is said of what was opened', () => {
  const keeping = (ids: readonly string[]) => ({
    ...whole,
    kept: { inputs: Object.fromEntries(ids.map((id) => [id, 1])), files: {} },
  });

  it('is short where all is known', () => expect(openedWords('It is open.', whole)).toBe('It is open.'));

  it('names what is not known, six at most', () => {
    expect(openedWords('It is open.', keeping(['later.thing']))).toBe(
      'It is open. A later program or a mistyped name put into it what this one does not know: later.thing. It is kept, and saved again.',
    );
    const many = openedWords('It is open.', keeping(['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h']));
    expect(many).toContain('a, b, c, d, e, f and 2 more.');
  });
});

describe('values that a design leaves out', () => {
  const without = (...ids: readonly string[]) =>
    initialWords(Object.fromEntries(Object.entries(designGraph.initial).filter(([id]) => !ids.includes(id))));

  it.each([
    [[], ''],
    [['laser.wavelength'], 'It leaves out a value, which is taken as at first: wavelength 1030\u202fnm.'],
    // Those that count come first: the expander is given by its magnification.
    [
      ['plate.glass', 'expander.firstFocalLength', 'laser.wavelength'],
      /^It leaves out 3 values, which are taken as at first: wavelength 1030\snm, glass of the plate .*, focal length of the first lens .*\.$/,
    ],
    [
      ['laser.wavelength', 'laser.beamDiameter', 'plate.stepDiameter', 'lens.focalLength', 'plate.stop'],
      /: wavelength 1030\snm, raw beam diameter .*, step diameter 10\smm, and 2 more\.$/,
    ],
    // No file is none, and replaces nothing.
    [['laser.beamImage', 'spot.otherProfiles'], ''],
  ] as const)('%j', (ids, says) => {
    if (typeof says === 'string') expect(without(...ids)).toBe(says);
    else expect(without(...ids)).toMatch(says);
  });

  it('are named for files of former versions, beside what is not known', () => {
    for (const name of ['design-v1.json', 'design-v2.json']) {
      const read = readDesign(fixture(name), name);
      expect(openedWords('It is open.', read)).toMatch(/^It is open\. It leaves out \d+ values, .* more\.$/);
    }
    const slip = { ...whole.inputs };
    delete (slip as Record<string, unknown>)['plate.stepDiameter'];
    const read = { ...whole, inputs: slip, kept: { inputs: { 'plate.stepDiametr': 1 }, files: {} } };
    expect(openedWords('It is open.', read)).toMatch(
      /step diameter 10\smm\. .*not know: plate\.stepDiametr\./,
    );
  });
});

describe('a design that is opened', () => {
  it('has every input, those that the file does not give as at first', () => {
    const { inputs } = fullDesign({ inputs: { 'plate.stop': 'open' } }, designGraph.initial);
    expect(inputs).toEqual({ ...designGraph.initial, 'plate.stop': 'open' });
  });

  it('takes a file that is open already as the very same', () => {
    const again = readDesign(fixture('design-v2.json'), 'design-v2.json');
    const { inputs } = fullDesign(again, opened.inputs);
    expect(again.inputs['laser.beamImage']).not.toBe(opened.inputs['laser.beamImage']);
    expect(inputs['laser.beamImage']).toBe(opened.inputs['laser.beamImage']);
  });
});

describe('an address', () => {
  it.each([
    ['', { document: '', within: '', design: undefined }],
    ['#matching', { document: 'matching', within: '', design: undefined }],
    ['#matching?design=1.ab.c-_', { document: 'matching', within: '', design: '1.ab.c-_' }],
    ['#?design=x', { document: '', within: '', design: 'x' }],
    ['#matching?other=1', { document: 'matching', within: '', design: undefined }],
    ['#lessons/beam-size', { document: 'lessons', within: 'beam-size', design: undefined }],
    ['#lectures/own/3?design=x', { document: 'lectures', within: 'own/3', design: 'x' }],
    ['#matching?design=a?b', { document: 'matching', within: '', design: 'a?b' }],
  ])('%s', (hash, address) => expect(readAddress(hash)).toEqual(address));

  it.each([
    ['', ''],
    ['#', ''],
    ['#matching', ''],
    ['#matching?design=x', ''],
    ['#?design=x', ''],
    ['#nonsense', 'The address ends in ‘#nonsense’, and no document is called that. Choose one here.'],
    ['#design=zzz', /^The address ends in ‘#design=zzz’, which brings no design: .* ‘#matching\?design=…’\./],
    [`#${'x'.repeat(300)}`, /‘#x{40}…’/],
  ])('%j leads to a document, or it is said', (hash, says) => {
    if (typeof says === 'string') expect(addressWords(hash, documents)).toBe(says);
    else expect(addressWords(hash, documents)).toMatch(says);
  });

  it('loses the design when it is taken, and keeps the document', () => {
    let address = '#matching?design=x';
    const replaceState = (_state: unknown, _title: string, next: string) => {
      address = next;
    };
    const window = { location: { hash: address }, history: { state: null, replaceState } };
    expect(takeDesign(window as unknown as Window)).toBe('x');
    expect(address).toBe('#matching');
  });
});

describe('the list of values on paper', () => {
  const start = initialState(designGraph);

  it('holds every input that counts, once, and no other', () => {
    const groups = printedGroups(start.inputs);
    const names = groups.flatMap(({ values }) => values.map(([name]) => name));
    expect(names).toContain('raw beam diameter');
    expect(names).not.toContain('pixel pitch of the camera');
    expect(new Set(names).size).toBe(names.length);
    expect(groups.map(({ heading }) => heading).slice(0, 2)).toEqual(['Laser', 'Expander']);
    for (const { values } of groups)
      for (const [, value] of values) expect(value).not.toMatch(/NaN|undefined/);
  });

  it('follows what counts', () => {
    const { inputs } = applyPatch(designGraph, start, {
      'laser.beamSource': 'measured',
      'plate.stop': 'open',
    });
    const names = printedGroups(inputs).flatMap(({ values }) => values.map(([name]) => name));
    expect(names).toContain('pixel pitch of the camera');
    expect(names).not.toContain('raw beam diameter');
    expect(names).not.toContain('stop diameter');
  });
});
