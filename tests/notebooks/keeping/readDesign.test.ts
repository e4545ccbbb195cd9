import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { designVersion, writeDesignFile } from '../../../lib/design/designFile.ts';
import { originalOf } from '../../../lib/graph/originals.ts';
import { applyPatch, initialState } from '../../../lib/graph/state.ts';
import type { CameraImage } from '../../../lib/measured/cameraImage.ts';
import type { NamedCaustic } from '../../../lib/measured/causticTable.ts';
import { Problem } from '../../../lib/problem.ts';
import { checkLength, readDesign } from '../../../notebooks/keeping/readDesign.ts';
import { readFileAsPatch } from '../../../notebooks/measuredFiles.ts';
import { succeed } from '../runCommand.ts';
import { damagedDesigns } from './damagedDesigns.ts';
import { bytesOf, designText, fixture } from './designText.ts';

const start = initialState(designGraph);
const write = (inputs: Readonly<Record<string, unknown>>, rest: object = {}) =>
  writeDesignFile(designGraph, { inputs, ...rest });

describe('what is saved', () => {
  const changed = applyPatch(designGraph, start, {
    'laser.wavelength': 515e-9,
    'lens.plateDistance': 0.123456789012345,
    'plate.glass': 'sapphire',
    'workpiece.z': -0.1e-3 / 3,
  });

  it('comes back as it was written, to the last bit', () => {
    const text = write(changed.inputs, { name: 'trial', about: 'for a test' });
    const file = readDesign(bytesOf(text), 'trial.json');
    expect([file.name, file.about]).toEqual(['trial', 'for a test']);
    expect(file.inputs).toEqual(changed.inputs);
    expect(writeDesignFile(designGraph, file)).toBe(text);
  });

  it('holds files as they were given, and reads them again', () => {
    const { inputs } = readDesign(fixture('design-v2.json'), 'design-v2.json');
    const again = readDesign(bytesOf(write(inputs)), 'again.json');
    expect(again.inputs).toEqual(inputs);
    const [image, table] = ['laser.beamImage', 'laser.causticTable'].map((id) => again.inputs[id]);
    expect((image as CameraImage).width).toBe(40);
    expect((table as NamedCaustic).z).toHaveLength(13);
    expect(originalOf(image)).toEqual(originalOf(inputs['laser.beamImage']));
  });

  it('may give a value in any unit of its kind, and is called by its file where it has no name', () => {
    const inputs = { 'laser.wavelength': { value: 515, unit: 'nm' } };
    const text = JSON.stringify({ format: 'stepwell-design', version: 2, inputs, files: {} });
    const file = readDesign(bytesOf(text), 'folder/x.json');
    expect(file.inputs).toEqual({ 'laser.wavelength': 515e-9 });
    expect(file.name).toBe('x');
  });

  it.each([
    ['a mark at the start', new Uint8Array([0xef, 0xbb, 0xbf, ...fixture('design-v2.json')])],
    ['UTF-16', new Uint8Array(Buffer.from(`\uFEFF${fixture('design-v2.json').toString('utf8')}`, 'utf16le'))],
  ])('opens with %s, as editors write it', (_name, bytes) => {
    expect(readDesign(bytes, 'a.json').inputs['laser.wavelength']).toBe(1030e-9);
  });
});

describe('every version opens', () => {
  it.each(Array.from({ length: designVersion }, (_, i) => i + 1))('version %i', (version) => {
    const file = readDesign(fixture(`design-v${version}.json`), `design-v${version}.json`);
    expect(file.name).toBe('Rain-gauge funnel');
    expect(file.about).toMatch(/ripple/);
    expect(file.inputs).toMatchObject({
      'laser.beamDiameter': 2.5e-3,
      'plate.stepDiameter': 8e-3,
      'plate.stop': 'round',
      'lens.focalLength': 160e-3,
    });
    expect(file.kept).toEqual({ inputs: {}, files: {} });
  });

  it('on the command line too, pictures included', () => {
    const argv = ['evaluate', 'tests/fixtures/design-v2.json', '--get', 'laser.usedBeamDiameter'];
    const typed = JSON.parse(succeed(argv))['laser.usedBeamDiameter'].value;
    const measured = JSON.parse(succeed([...argv, '--set', 'laser.beamSource=measured']));
    expect(typed).toBe(2.5e-3);
    // The picture was drawn 2.5 mm wide on pixels of 0.2 mm, which tells a diameter to about 2 %.
    expect(Math.abs(measured['laser.usedBeamDiameter'].value / 2.5e-3 - 1)).toBeLessThan(0.02);
  });
});

describe('what a later program has saved', () => {
  it('is kept with its files, and written back', () => {
    const design = designText();
    const { sha256, file } = design.inputs['laser.beamImage'] as { sha256: string; file: string };
    const later = {
      'later.thing': { value: 3, unit: 'm' },
      'later.way': ['a'],
      'later.file': { file, sha256 },
    };
    Object.assign(design.inputs, later, { 'laser.beamImage': { file: null } });
    const read = readDesign(bytesOf(JSON.stringify(design)), 'later.json');
    expect(read.kept).toEqual({ inputs: later, files: { [sha256]: design.files[sha256] } });
    const { inputs, files } = JSON.parse(writeDesignFile(designGraph, read));
    expect(inputs).toMatchObject(later);
    expect(files[sha256]).toBe(design.files[sha256]);
  });
});

describe('a damaged file', () => {
  it('there are many kinds', () => expect(damagedDesigns.length).toBeGreaterThan(30));

  for (const [name, bytes, says] of damagedDesigns) {
    it(`${name}: refused in a sentence that names the file, and what to do`, () => {
      let problem: unknown;
      try {
        readDesign(bytes, 'bad.json');
      } catch (error) {
        problem = error;
      }
      expect(problem).toBeInstanceOf(Problem);
      const { message } = problem as Problem;
      expect(message).toMatch(says);
      expect(message).toMatch(/^'bad\.json'.*\.$/s);
      expect(message).toMatch(/[Cc]hoose|[Uu]se|[Ww]rite|[Ss]ave|[Oo]pen|allowed|[Tt]ake/);
      expect(message).not.toMatch(/undefined|\[object|Invalid|Expected|[Rr]eceived/);
      expect(message.length).toBeLessThan(500);
    });
  }

  it('a file too long to be read is refused before it is', () => {
    expect(() => checkLength(5e9, 'film.avi')).toThrow(/^'film\.avi' is 5000 MB long.*at most 200 MB/);
    expect(() => checkLength(5e6, 'a.json')).not.toThrow();
  });
});

it('a file given to an input is remembered with its bytes', () => {
  const bytes = bytesOf('0,1\n2,3\n');
  const patch = readFileAsPatch('laser.beamImage', bytes, 'b.csv');
  expect(originalOf(patch['laser.beamImage'])).toMatchObject({ name: 'b.csv', bytes });
  expect(JSON.stringify(patch)).not.toContain('sha256');
});
