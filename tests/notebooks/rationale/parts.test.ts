import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import type { Outcome } from '../../../lib/graph/outcome.ts';
import { noStudies } from '../../../lib/graph/studies.ts';
import { documents } from '../../../notebooks/contents.ts';
import type { ProseBlock } from '../../../notebooks/document.ts';
import { alternativeBlocks } from '../../../notebooks/rationale/alternativesPart.ts';
import { filesSaid } from '../../../notebooks/rationale/beamPart.ts';
import { cautionBlocksFor } from '../../../notebooks/rationale/cautionsPart.ts';
import { commandText, factsOf } from '../../../notebooks/rationale/facts.ts';
import { keyNumbers } from '../../../notebooks/rationale/keyNumbers.ts';
import { notMeasured } from '../../../notebooks/rationale/measuredFiles.ts';
import { originsOf } from '../../../notebooks/rationale/origins.ts';
import { outlineOf, outlineSaid } from '../../../notebooks/rationale/outline.ts';
import { type UseName, useNames } from '../../../notebooks/rationale/section.ts';
import { blocksFor } from '../../../notebooks/rationale/sections.ts';
import { toldDesign } from '../../../notebooks/rationale/told.ts';
import { uncheckedBlocks } from '../../../notebooks/rationale/uncheckedPart.ts';
import { usesOf, withUses } from '../../../notebooks/rationale/uses.ts';
import { demoDesign, withStudies, wordsOf } from './workedPapers.ts';

const { initial } = designGraph;
const design = { inputs: initial };
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

describe('uses', () => {
  it('are those of which an input was set, a file given or a result required, until the person chooses', () => {
    expect(usesOf(design)).toEqual([]);
    expect(usesOf({ inputs: { ...initial, 'groove.passes': 9 } })).toEqual(['grooves']);
    expect(usesOf({ inputs: { ...initial, 'micrograph.picture': {} } })).toEqual(['ripples']);
    const asked = (id: string) =>
      withStudies(design, { requirements: [{ id, unit: '1', atLeast: 1, reason: '' }] });
    expect(usesOf(asked('unshaped.engraving.depth'))).toEqual(['engraving']);
    expect(usesOf(asked('spot.width'))).toEqual([]);
    const chosen = withUses({ inputs: { ...initial, 'groove.passes': 9 } }, ['sheet', 'scaleUp']);
    expect(usesOf(chosen)).toEqual(['sheet', 'scaleUp']);
    expect(usesOf(withUses(chosen, []))).toEqual([]);
    expect(usesOf(withStudies(design, { texts: { uses: 'grooves, nonsense' } }))).toEqual(['grooves']);
  });

  it('bring their parts and their cautions', () => {
    const ids = (uses: readonly UseName[]) => blocksFor(withUses(design, uses)).map(({ id }) => id);
    for (const use of allUses) expect(ids([use]).length, use).toBeGreaterThan(ids([]).length);
    expect(ids(['scaleUp'])).toContain('scale-up-fume');
    expect(ids([])).not.toContain('scale-up-fume');
  });
});

describe('the outline', () => {
  it('says what is there and what is missing', () => {
    const empty = outlineOf(design);
    expect(empty.filter(({ open }) => open)).toHaveLength(8);
    expect(outlineSaid(empty)).toMatch(
      /^8 parts could still be filled: purpose, requirements, .* and what was not checked\.$/,
    );
    expect(empty[3]!.says).toBe(
      'the facts; no reason of yours for the step, the plane, the fluence and the spacing',
    );
    const texts = {
      purpose: 'p',
      step: 's',
      plane: 'p',
      fluence: 'f',
      spacing: 's',
      risks: 'r',
      unchecked: 'u',
      uses: 'ripples',
    };
    const one = { name: 'A', about: '', inputs: {} };
    const requirement = { id: 'spot.dip', unit: '1', atMost: 1, reason: '' };
    const full = withStudies(
      { inputs: { ...initial, 'laser.beamImage': {} } },
      { texts, alternatives: [one, one], requirements: [requirement] },
    );
    expect(outlineSaid(outlineOf(full))).toBe('Nothing is missing from the write-up.');
    expect(outlineOf(full).map(({ says }) => says)).toEqual([
      'in your words',
      '1 requirement',
      '1 measured file in the design',
      'the facts, and your reasons for all four',
      '2 kept designs beside this one',
      'from the pages',
      'ripples',
      'in your words, and all cautions',
      'in your words, and what the design tells',
      'all inputs, formulas and sources',
    ]);
    const { risks: _, ...others } = texts;
    const open = withStudies(full, { ...full.studies, texts: others });
    expect(outlineSaid(outlineOf(open))).toBe('One part could still be filled: risks and cautions.');
  });
});

describe('cautions', () => {
  /** A caution of a document that the rationale has in other words, or that belongs to what it does not show. */
  const elsewhere = [
    'through-focus/plate-out',
    'threshold/plate-out',
    'set-up-sheet/before-aligning',
    'threshold/ladder-plate-out',
    'threshold/mark-picture-warning',
  ];
  it('every caution of a document stands in the rationale of all uses', () => {
    const all = blocksFor(withUses(design, allUses));
    const texts = new Set(all.map((block) => ('prose' in block ? block.prose : undefined)));
    for (const { id, blocks } of documents)
      for (const block of blocks.filter((one): one is ProseBlock => one.kind === 'caution')) {
        const shared = documents.some((other) => other.id === 'threshold' && other.blocks.includes(block));
        if (
          elsewhere.includes(`${id}/${block.id}`) ||
          (shared && elsewhere.includes(`threshold/${block.id}`))
        )
          continue;
        expect(texts.has(block.prose), `${id}/${block.id}`).toBe(true);
      }
    expect(cautionBlocksFor([]).length).toBeGreaterThan(4);
  });
});

describe('small parts', () => {
  it('numbers that decide are there, with those required and the own ones', () => {
    const numbers = keyNumbers({ graph: designGraph, studies: noStudies });
    expect(numbers).toHaveLength(19);
    const more = keyNumbers({
      graph: designGraph,
      studies: {
        ...noStudies,
        requirements: [
          { id: 'spot.uniformity', unit: '1', atMost: 1, reason: '' },
          { id: 'lens.focalLength', unit: 'm', atMost: 1, reason: '' },
          { id: 'no.such', unit: '1', atMost: 1, reason: '' },
        ],
      },
    });
    expect(more.map(({ id }) => id).slice(19)).toEqual(['spot.uniformity']);
  });

  it('an alternative that is as the design is said to be so', () => {
    const studies = { ...noStudies, alternatives: [{ name: 'Same', about: '', inputs: initial }] };
    const same = toldDesign(designGraph, { inputs: initial, studies }, {}, [{}]);
    expect(wordsOf(alternativeBlocks(same))).toBe('No input of ‘Same’ differs from this design.');
  });

  it('more than three alternatives stand in several tables', () => {
    const alternatives = [50, 60, 70, 80].map((f) => ({
      name: `f ${f}`,
      about: '',
      inputs: { ...initial, 'lens.focalLength': f / 1e3 },
    }));
    const blocks = alternativeBlocks(
      toldDesign(
        designGraph,
        { inputs: initial, studies: { ...noStudies, alternatives } },
        {},
        alternatives.map(() => ({})),
      ),
    );
    expect(blocks.map((block) => (block.kind === 'table' ? block.columns.slice(2) : block.kind))).toEqual([
      ['f 50', 'f 60', 'f 70'],
      ['f 80'],
    ]);
  });

  it('a command is typed back with its quotes', () => {
    expect(commandText(['stepwell', 'rationale', "my design's.json", '--set', 'a=1 mm'])).toBe(
      "stepwell rationale 'my design'\\''s.json' --set 'a=1 mm'",
    );
    expect(factsOf({ name: 'N', date: 'D', command: 'C' }).at(-1)).toEqual([
      'Made again by',
      'C --to FILE.html',
    ]);
  });

  it('what was not asked for is no number', () => {
    const outcome = told().outcomeOf(designGraph.quantities.get('spot.width')!);
    expect(outcome).toMatchObject({ problem: { message: 'Spot width was not worked out.' } });
    expect(demoDesign('lecture-table').name).toBe('Lecture table');
  });
});
