import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import type { Outcome } from '../../../lib/graph/outcome.ts';
import { noStudies } from '../../../lib/graph/studies.ts';
import { filesSaid } from '../../../notebooks/rationale/beamPart.ts';
import { notMeasured } from '../../../notebooks/rationale/measuredFiles.ts';
import { originsOf } from '../../../notebooks/rationale/origins.ts';
import { type UseName, useNames } from '../../../notebooks/rationale/section.ts';
import { toldDesign } from '../../../notebooks/rationale/told.ts';
import { uncheckedBlocks } from '../../../notebooks/rationale/uncheckedPart.ts';
import { wordsOf } from './workedPapers.ts';

const { initial } = designGraph;
const allUses = Object.keys(useNames) as UseName[];
const told = (inputs: object = {}, outcomes: Readonly<Record<string, Outcome>> = {}, studies = noStudies) =>
  toldDesign(designGraph, { inputs: { ...initial, ...inputs }, studies }, outcomes);

describe('where each number is from', () => {
  const of = (id: string, inputs: object) =>
    originsOf({ ...initial, ...inputs }).find(({ quantity }) => quantity.id === id);

  it('typed, measured, from a handbook or worked out, with the file', () => {
    const file = { name: 'beam.png' };
    expect(of('laser.usedBeamDiameter', {})).toMatchObject({ standing: 'typed', words: 'typed' });
    expect(
      of('laser.usedBeamDiameter', { 'laser.beamSource': 'measured', 'laser.beamImage': file }),
    ).toMatchObject({ standing: 'measured', words: 'second moments of beam.png' });
    expect(of('laser.usedBeamDiameter', { 'laser.beamSource': 'caustic' })).toMatchObject({
      standing: 'measured',
      words: 'waist of the caustic in a file without a name',
    });
    expect(of('laser.usedBeamPropagationRatio', {})).toMatchObject({ standing: 'typed' });
    expect(of('laser.usedBeamPropagationRatio', { 'laser.ratioSource': 'measured' })).toMatchObject({
      standing: 'measured',
    });
    expect(of('laser.usedPulseEnergy', {})).toMatchObject({ words: 'typed' });
    expect(of('laser.usedPulseEnergy', { 'laser.energySource': 'power' })).toMatchObject({
      words: 'from the average power and rate that were typed',
    });
    expect(of('threshold.fluence', {})).toMatchObject({ standing: 'handbook' });
    expect(of('threshold.fluence', { 'threshold.source': 'typed' })).toMatchObject({ standing: 'typed' });
    expect(of('threshold.fluence', { 'threshold.source': 'fitted' })).toMatchObject({ standing: 'measured' });
    expect(of('plate.stepPhase', {})).toMatchObject({
      standing: 'typed',
      words: 'as the plate was designed, not measured',
    });
    expect(of('plate.stepPhase', { 'plate.source': 'made' })).toMatchObject({ standing: 'worked out' });
    expect(of('plate.stepHeight', {})).toMatchObject({ standing: 'worked out' });
    expect(of('plate.stepHeight', { 'plate.source': 'made' })).toMatchObject({ standing: 'typed' });
    expect(of('plate.refractiveIndex', {})).toMatchObject({
      standing: 'handbook',
      words: 'handbook, fused silica',
    });
    expect(of('plate.refractiveIndex', { 'plate.glass': 'typed' })).toMatchObject({ standing: 'typed' });
  });

  it('leaves out what does not count: the stop of an open plate, the magnification of lenses', () => {
    expect(of('plate.apertureDiameter', {})).toBeDefined();
    expect(of('plate.apertureDiameter', { 'plate.stop': 'open' })).toBeUndefined();
    expect(of('expander.magnification', {})).toBeDefined();
    expect(of('expander.magnification', { 'expander.kind': 'lenses' })).toBeUndefined();
    expect(of('plate.beamDiameter', { 'expander.kind': 'lenses' })).toMatchObject({
      words: 'from the lenses of the expander',
    });
  });

  it('counts the files', () => {
    const say = (inputs: object) => filesSaid({ graph: designGraph, inputs: { ...initial, ...inputs } });
    expect(say({})).toBe('No measured file is in this design.');
    expect(say({ 'threshold.spotTable': { name: 's.csv' } })).toBe(
      'One measured file is in this design: table of measured spots (s.csv).',
    );
    expect(say({ 'threshold.spotTable': { name: 's.csv' }, 'laser.beamImage': { name: 'b.png' } })).toMatch(
      /^2 measured files are .*\(b\.png\) and .*\(s\.csv\)\.$/,
    );
  });
});

describe('what was not measured', () => {
  const some = { name: 'x' };
  const rows: readonly (readonly [says: RegExp, files: readonly string[], use?: UseName])[] = [
    [/^The beam was not measured/, ['laser.beamImage', 'laser.causticTable']],
    [/^No profile of the spot/, ['spot.measuredProfile']],
    [/^The place of the focus/, ['focus.measuredCaustic', 'ladder.table']],
    [/^No mark was measured/, ['threshold.spotTable', 'ladder.table', 'markPicture.picture']],
    [/^No ripples were measured/, ['ripples.series', 'micrograph.picture'], 'ripples'],
    [/^No cross-section/, ['groove.sectionFile'], 'grooves'],
  ];
  for (const [says, files, use] of rows) {
    it(says.source, () => {
      const said = (inputs: object, uses: readonly UseName[]) =>
        notMeasured({ ...initial, ...inputs }, uses).some((text) => says.test(text));
      expect(said({}, use ? [use] : [])).toBe(true);
      if (use) expect(said({}, [])).toBe(false);
      for (const file of files) expect(said({ [file]: some }, use ? [use] : []), file).toBe(false);
    });
  }
});

describe('what was not checked', () => {
  const words = (inputs: object, lacking: object = {}, outcomes = {}, texts = {}) =>
    wordsOf(
      uncheckedBlocks(told(inputs, outcomes, { ...noStudies, texts }), {
        problems: [],
        read: [],
        uses: [],
        ...lacking,
      }),
    );
  const problem = { kind: 'absent', message: 'There is no plane.', parts: {}, at: 'x' } as const;

  it('typed and handbook values, with their values', () => {
    expect(words({})).toMatch(
      /^Typed, with no measurement of this design behind it: wavelength 1030\snm, raw beam diameter in use —, /,
    );
    expect(words({})).toMatch(
      /Taken from a handbook: refractive index of the plate —, threshold fluence —\./,
    );
    expect(words({ 'plate.glass': 'typed', 'threshold.source': 'typed' })).not.toContain('handbook:');
  });

  it('each problem once', () => {
    expect(
      words({}, { problems: [problem, problem] }).match(/Not worked out: There is no plane\./g),
    ).toHaveLength(1);
    expect(words({})).not.toContain('Not worked out');
  });

  it('reasons that nobody wrote, until all are written', () => {
    expect(words({})).toContain('given for the step, the plane, the fluence and the spacing.');
    expect(words({}, {}, {}, { step: 'a', plane: 'b', fluence: 'c', spacing: ' ' })).toContain(
      'given for the spacing.',
    );
    expect(words({}, {}, {}, { step: 'a', plane: 'b', fluence: 'c', spacing: 'd' })).not.toContain(
      'own words is given',
    );
  });

  it('uses that were not looked at', () => {
    expect(words({})).toContain(
      'Not looked at here: ripples, grooves, an engraved field, a cut through a thin sheet and a larger machine.',
    );
    expect(words({}, { uses: allUses })).not.toContain('Not looked at');
  });

  it('notes on validity, each with the numbers that share it', () => {
    const ids = [
      'spot.width',
      'spot.dip',
      'spot.edgeWidth',
      'spot.peakFluence',
      'spot.kind',
      'spot.areaRatio',
    ];
    const read = ids.map((id) => designGraph.quantities.get(id)!);
    const noted = (count: number) =>
      Object.fromEntries(
        ids.map((id, i) => [id, i < count ? { value: 1, note: 'The lens is steep.' } : { value: 1 }]),
      );
    expect(words({}, { read }, noted(0))).not.toContain('strained');
    expect(words({}, { read }, noted(1))).toContain(
      'Where a model or a measurement is strained:\nSpot width: The lens is steep.',
    );
    expect(words({}, { read }, noted(2))).toContain('Spot width and dip on the axis: The lens is steep.');
    expect(words({}, { read }, noted(6))).toMatch(
      /\nSpot width, dip on the axis, edge width, peak fluence and 2 more: The lens is steep\./,
    );
  });
});
