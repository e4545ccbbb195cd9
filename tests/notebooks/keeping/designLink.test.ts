import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { initialSet, initialValues } from '../../../lib/design/initialSets.ts';
import { createEngine } from '../../../lib/graph/engine.ts';
import { valueOrThrow } from '../../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../../lib/graph/state.ts';
import { Problem } from '../../../lib/problem.ts';
import { linkVersion, readLink, writeLink } from '../../../notebooks/keeping/designLink.ts';
import { linkWords } from '../../../notebooks/keeping/linkWords.ts';
import { readDesign } from '../../../notebooks/keeping/readDesign.ts';
import { readFileAsPatch } from '../../../notebooks/measuredFiles.ts';
import { here } from '../runCommand.ts';
import { damagedLinks } from './damagedLinks.ts';
import { fixture } from './designText.ts';

const start = initialState(designGraph);
const withPatch = (patch: Patch) => applyPatch(designGraph, start, patch);

describe('a link', () => {
  it('carries what differs from the initial design, to the last bit', async () => {
    const patch = {
      'laser.wavelength': 515e-9,
      'lens.plateDistance': 0.123456789012345,
      'plate.stop': 'open',
    };
    const { text, leftOut } = await writeLink({ ...withPatch(patch), name: 'Grüße', about: '½ λ' });
    const read = await readLink(text);
    expect(read.inputs).toEqual(withPatch(patch).inputs);
    expect([read.name, read.about, leftOut]).toEqual(['Grüße', '½ λ', '']);
    expect(text.length).toBeLessThan(320);
    expect(text).toMatch(/^5\.[0-9a-f]{8}\.[\w-]+$/);
  });

  it('of the initial design is the initial design, short', async () => {
    const { text } = await writeLink(start);
    expect((await readLink(text)).inputs).toEqual(start.inputs);
    expect(text.length).toBeLessThan(60);
    expect((await readLink(text)).leftOut).toEqual({ files: {}, measured: [], typed: [] });
  });

  it('carries small files and ids that are not known here', async () => {
    const { text } = await writeLink({
      ...readDesign(fixture('design-v2.json'), 'design-v2.json'),
      kept: { inputs: { 'later.thing': { value: 1 } }, files: {} },
    });
    const { inputs, kept } = await readLink(text);
    expect(inputs['laser.beamImage']).toMatchObject({ name: 'beam.png', width: 40 });
    expect(inputs['laser.causticTable']).toMatchObject({ name: 'rain-gauge-caustic.csv' });
    expect(kept).toEqual({ inputs: { 'later.thing': { value: 1 } }, files: {} });
  });

  it('refuses to be longer than what passes everywhere', async () => {
    const about = Array.from({ length: 4000 }, (_, i) => ((i * 7919) % 9973).toString(36)).join(' ');
    await expect(writeLink({ ...start, about })).rejects.toThrow(
      /more than 8 kB.*Shorten the notes, keep fewer alternatives/,
    );
  });
});

describe('a link without its files', () => {
  const bytes = (name: string) => new Uint8Array(readFileSync(here(`data/measured/${name}`)));
  const laterHash = 'cd'.repeat(32);
  const laterFile = {
    inputs: { 'later.file': { file: 'later.bin', sha256: laterHash }, 'later.gone': { file: 'gone.bin' } },
    files: { [laterHash]: 'Zm9v' },
  };
  let measured: Patch;
  beforeAll(() => {
    measured = {
      ...readFileAsPatch('laser.beamImage', bytes('rain-gauge-beam.png'), 'rain-gauge-beam.png'),
      ...readFileAsPatch('laser.causticTable', bytes('rain-gauge-caustic.csv'), 'rain-gauge-caustic.csv'),
      'expander.waistSource': 'measured',
    };
  });
  const numbers = ['laser.usedBeamDiameter', 'laser.usedBeamPropagationRatio', 'expander.usedWaistDistance'];
  const evaluate = (inputs: Patch) => {
    const outcomes = createEngine(designGraph, inputs).evaluate(numbers);
    return numbers.map((id) => valueOrThrow(outcomes[id]!));
  };

  it('carries their measured numbers as typed values, and says so', async () => {
    const state = withPatch(measured);
    const { text, leftOut } = await writeLink(state);
    const { inputs } = await readLink(text);
    expect([inputs['laser.beamImage'], inputs['laser.beamSource']]).toEqual([null, 'typed']);
    expect(evaluate(inputs)).toEqual(evaluate(state.inputs));
    expect(leftOut).toMatch(
      /^A link holds 8 kB at most, so files are left out of it\. .* as typed: raw beam diameter 2\.\d+\smm; beam propagation ratio M² 1\.\d+; distance .*mm\.$/,
    );
    expect(text.length).toBeLessThan(600);
  });

  it('tells its receiver what stayed behind, and what counts as typed', async () => {
    const state = { ...withPatch(measured), kept: laterFile };
    const { inputs, leftOut } = await readLink((await writeLink(state)).text);
    expect(leftOut).toEqual({
      files: {
        'laser.beamImage': 'rain-gauge-beam.png',
        'laser.causticTable': 'rain-gauge-caustic.csv',
        'later.file': 'later.bin',
      },
      measured: ['laser.beamDiameter', 'laser.beamPropagationRatio', 'expander.waistDistance'],
      typed: [],
    });
    expect(linkWords(inputs, leftOut)).toMatch(
      /^The design in the link is open\. The steps that led to it do not travel in a link\. Stayed behind with the sender, since a link holds 8 kB at most: ‘rain-gauge-beam\.png’ \(camera image of the raw beam\), ‘rain-gauge-caustic\.csv’ \(table of a caustic\), ‘later\.bin’; a design file would bring them\. What was measured from files counts as typed here: raw beam diameter 2\.\d+\smm; beam propagation ratio M² 1\.\d+; distance .*mm\.$/,
    );
  });

  it('says where nothing was measured that could be typed', async () => {
    const clipped = readFileAsPatch('laser.beamImage', bytes('rain-gauge-beam.png'), 'b.png');
    const state = withPatch({ ...clipped, 'laser.ratioSource': 'measured' });
    const { text, leftOut } = await writeLink(state);
    expect(leftOut).toContain('beam propagation ratio M² 1, since nothing that can be typed was measured');
    const read = await readLink(text);
    expect(read.inputs['laser.ratioSource']).toBe('typed');
    expect(linkWords(read.inputs, read.leftOut)).toMatch(
      /would bring it\. .*raw beam diameter 2\..* Nothing that can be typed was measured for these, so they count as typed before: beam propagation ratio M² 1\.$/,
    );
  });
});

it('a link that names many files, strange ids or long names says so in few words', () => {
  const files = Object.fromEntries(Array.from({ length: 9 }, (_, i) => [`a.${i}`, 'x'.repeat(200)]));
  const words = linkWords(start.inputs, { files, measured: ['later.thing', 'plate.stop'], typed: [] });
  expect(words).toMatch(/‘x{60}…’ and 3 more; a design file would bring them\.$/);
  expect(words.length).toBeLessThan(700);
});

describe('every version opens', () => {
  const linkOf = (version: number) => readLink(fixture(`link-v${version}.txt`).toString('utf8').trim());
  it.each(Array.from({ length: linkVersion }, (_, i) => i + 1))('version %i', async (version) => {
    const { name, inputs } = await linkOf(version);
    expect(name).toBe('Rain-gauge funnel');
    expect(inputs).toMatchObject({
      'laser.wavelength': 1.03e-6,
      'laser.beamDiameter': 2.5e-3,
      'plate.stepDiameter': 8e-3,
    });
  });

  it('version 1 with its files, of which it left none out', async () => {
    const { inputs, leftOut } = await linkOf(1);
    expect(inputs['laser.causticTable']).toMatchObject({ name: 'rain-gauge-caustic.csv' });
    expect(leftOut).toEqual({ files: {}, measured: [], typed: [] });
    expect(linkWords(inputs, leftOut)).toBe(
      'The design in the link is open. The steps that led to it do not travel in a link.',
    );
  });

  it('version 1 without files does not know whether any stayed behind', async () => {
    const content = deflateRawSync('{"initial":1,"inputs":{}}');
    const sum = createHash('sha256').update(content).digest('hex').slice(0, 8);
    const { inputs, leftOut } = await readLink(`1.${sum}.${content.toString('base64url')}`);
    expect(leftOut).toBe('unknown');
    expect(linkWords(inputs, leftOut)).toMatch(
      /earlier program, which did not note whether files.*behind\.$/,
    );
  });

  it('version 2 with what it left out', async () => {
    const { inputs, leftOut } = await linkOf(2);
    expect(leftOut).toEqual({
      files: { 'laser.beamImage': 'rain-gauge-beam.png', 'laser.causticTable': 'rain-gauge-caustic.csv' },
      measured: ['laser.beamPropagationRatio', 'expander.waistDistance'],
      typed: [],
    });
    expect(inputs).toMatchObject({ 'laser.ratioSource': 'typed', 'laser.causticTable': null });
    expect((inputs['laser.beamPropagationRatio'] as number).toFixed(3)).toBe('1.150');
  });

  it.each(Array.from({ length: initialSet }, (_, i) => i + 1))(
    'initial values %i are as they were',
    (set) => {
      // Every id that this set began with; a change of any needs a new set in lib/design/initialSets.ts.
      const written = JSON.parse(fixture(`initial-${set}.json`).toString('utf8'));
      expect(initialValues(designGraph, set)).toMatchObject(written);
    },
  );
});

describe('a damaged link', () => {
  it('there are many kinds', () => expect(damagedLinks.length).toBeGreaterThan(30));

  for (const [name, text, says] of damagedLinks) {
    it(`${name}: refused in a sentence that says what to do`, async () => {
      const problem = await readLink(text).then(
        () => undefined,
        (error: unknown) => error,
      );
      expect(problem).toBeInstanceOf(Problem);
      const { message } = problem as Problem;
      expect(message).toMatch(says);
      expect(message).toMatch(/[Ll]ink.*\.$/s);
      expect(message).not.toMatch(/undefined|\[object|Invalid|Expected|[Rr]eceived/);
      expect(message.length).toBeLessThan(500);
    });
  }
});
