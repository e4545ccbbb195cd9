import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { initialSet, initialValues } from '../../../lib/design/initialSets.ts';
import { createEngine } from '../../../lib/graph/engine.ts';
import { valueOrThrow } from '../../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../../lib/graph/state.ts';
import { Problem } from '../../../lib/problem.ts';
import { linkVersion, readLink, writeLink } from '../../../notebooks/keeping/designLink.ts';
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
    expect(text).toMatch(/^1\.[0-9a-f]{8}\.[\w-]+$/);
  });

  it('of the initial design is the initial design, short', async () => {
    const { text } = await writeLink(start);
    expect((await readLink(text)).inputs).toEqual(start.inputs);
    expect(text.length).toBeLessThan(60);
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
    await expect(writeLink({ ...start, about })).rejects.toThrow(/more than 8 kB.*Shorten the notes/);
  });
});

describe('a link without its files', () => {
  const bytes = (name: string) => new Uint8Array(readFileSync(here(`data/measured/${name}`)));
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

  it('says where nothing was measured that could be typed', async () => {
    const clipped = readFileAsPatch('laser.beamImage', bytes('rain-gauge-beam.png'), 'b.png');
    const state = withPatch({ ...clipped, 'laser.ratioSource': 'measured' });
    const { text, leftOut } = await writeLink(state);
    expect(leftOut).toContain('beam propagation ratio M² 1, since nothing that can be typed was measured');
    expect((await readLink(text)).inputs['laser.ratioSource']).toBe('typed');
  });
});

describe('every version opens', () => {
  it.each(Array.from({ length: linkVersion }, (_, i) => i + 1))('version %i', async (version) => {
    const { name, inputs } = await readLink(fixture(`link-v${version}.txt`).toString('utf8').trim());
    expect(name).toBe('Rain-gauge funnel');
    expect(inputs).toMatchObject({
      'laser.wavelength': 1.03e-6,
      'laser.beamDiameter': 2.5e-3,
      'plate.stepDiameter': 8e-3,
      'laser.causticTable': { name: 'rain-gauge-caustic.csv' },
    });
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
      expect(message).toMatch(/link.*\.$/s);
      expect(message).not.toMatch(/undefined|\[object/);
      expect(message.length).toBeLessThan(500);
    });
  }
});
