import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import type { Outcome } from '../../../lib/graph/outcome.ts';
import { noStudies } from '../../../lib/graph/studies.ts';
import { documents } from '../../../notebooks/contents.ts';
import type { ProseBlock } from '../../../notebooks/document.ts';
import { alternativeBlocks } from '../../../notebooks/rationale/alternativesPart.ts';
import { cautionBlocksFor } from '../../../notebooks/rationale/cautionsPart.ts';
import { commandText, factsOf } from '../../../notebooks/rationale/facts.ts';
import { keyNumbers } from '../../../notebooks/rationale/keyNumbers.ts';
import { outlineOf, outlineSaid } from '../../../notebooks/rationale/outline.ts';
import { type UseName, useNames } from '../../../notebooks/rationale/section.ts';
import { blocksFor } from '../../../notebooks/rationale/sections.ts';
import { toldDesign } from '../../../notebooks/rationale/told.ts';
import { usesOf, withUses } from '../../../notebooks/rationale/uses.ts';
import { demoDesign, withStudies, wordsOf } from './workedPapers.ts';

const { initial } = designGraph;
const design = { inputs: initial };
const allUses = Object.keys(useNames) as UseName[];
const told = (inputs: object = {}, outcomes: Readonly<Record<string, Outcome>> = {}, studies = noStudies) =>
  toldDesign(designGraph, { inputs: { ...initial, ...inputs }, studies }, outcomes);

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
