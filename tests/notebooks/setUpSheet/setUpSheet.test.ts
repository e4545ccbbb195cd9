import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { composeSetUpSheet } from '../../../notebooks/setUpSheet/composeSetUpSheet.ts';
import { workOutSheet } from '../../../notebooks/setUpSheet/workOutSheet.ts';
import type { Design } from '../rationale/workedPapers.ts';
import { demoDesign, lineOf, made, withStudies, wordsOf } from '../rationale/workedPapers.ts';

const sheetOf = (design: Design) => composeSetUpSheet(workOutSheet(designGraph, design), made);

describe('the set-up sheet', () => {
  for (const name of ['rain-gauge-funnel', 'lecture-table', 'cold-plate-channels']) {
    it(`${name}: cautions first, then settings, order, what is seen and what is accepted`, () => {
      const { blocks, title } = sheetOf(demoDesign(name));
      expect(title).toBe('Set-up sheet: Test');
      expect(blocks[0]).toMatchObject({ kind: 'paragraph', role: 'caution' });
      expect(blocks[1]).toMatchObject({ kind: 'paragraph', role: 'caution' });
      const tables = blocks.flatMap((block) => (block.kind === 'table' ? [block.caption] : []));
      expect(tables).toEqual([
        'Settings',
        'What the camera shows with the plate in, from plane to plane',
        'Accepted if',
      ]);
      const steps = blocks.find((block) => block.kind === 'list')!;
      expect(steps.ordered).toBe(true);
      expect(steps.items.map((item) => lineOf(item).split('.')[0])).toEqual([
        'Power',
        'Beam, plate out',
        'Focus, plate out',
        'Plate in, centred',
        'Plane of the workpiece',
        'Energy',
        'Scan',
      ]);
      const words = wordsOf(blocks);
      expect(words).not.toMatch(/NaN|undefined|\[object|Infinity|—/);
      for (const caution of [
        'laser safety officer',
        'local rules',
        'Eyewear',
        'enclosed',
        'interlocks',
        'lowest power',
        'X-rays',
      ])
        expect(words, caution).toContain(caution);
      expect(words).toContain('moving the workpiece away from the lens makes z larger');
      expect(words).toMatch(/\(chosen\)/);
      expect(words).toContain('attenuator set to let the least light through');
      expect(words).toMatch(/M² of the beam \| 1/);
      // The sheet stands alone: no word leads to something that is not on it.
      expect(words).not.toMatch(/listed above|predicted|focus ladder|see above/i);
    });
  }

  it('has one table of settings, whatever expander and stop', () => {
    const settings = (patch: object) => {
      const design = { inputs: { ...designGraph.initial, ...patch } };
      const tables = sheetOf(design).blocks.flatMap((block) =>
        block.kind === 'table' && block.caption === 'Settings' ? [block] : [],
      );
      expect(tables).toHaveLength(1);
      return wordsOf(tables);
    };
    expect(settings({})).toMatch(/expander, magnification \| 2 .*[\s\S]*stop, diameter \| 14\smm/);
    expect(settings({ 'plate.stop': 'open' })).toMatch(/stop \| no stop/);
    expect(settings({ 'expander.kind': 'lenses' })).toMatch(/expander \| [a-z]/);
    expect(settings({ 'expander.kind': 'lenses', 'plate.stop': 'open' })).not.toMatch(
      /magnification|stop, diameter/,
    );
  });

  it('tells what is required, where anything is', () => {
    const asked = withStudies(
      { inputs: designGraph.initial },
      {
        requirements: [{ id: 'spot.width', unit: 'm', atMost: 15e-6, reason: 'fine' }],
      },
    );
    expect(wordsOf(sheetOf(asked).blocks)).toMatch(/What is required\nThe one requirement is not met\./);
    expect(wordsOf(sheetOf({ inputs: designGraph.initial }).blocks)).not.toContain('What is required');
  });

  it('without a spot keeps its cautions and leaves out what it cannot say', () => {
    const { blocks } = sheetOf({ inputs: { ...designGraph.initial, 'plate.stepDiameter': 20e-3 } });
    expect(blocks[0]).toMatchObject({ role: 'caution' });
    expect(wordsOf(blocks)).not.toMatch(/NaN|undefined|\[object|Infinity/);
  });
});
