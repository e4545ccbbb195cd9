import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { writeDesignFile } from '../../lib/design/designFile.ts';
import { initialState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { expectClose } from '../close.ts';
import { line } from '../studies/ownOnes.ts';
import { run, succeed } from './runCommand.ts';

const ownLines = [
  line('speed', 'lens.focalLength / plate.stepDiameter', { name: 'step ratio of the lens' }),
  line('wrong', 'lens.focalLength + 1 J'),
];
const files = {
  'mine.json': writeDesignFile(designGraph, {
    ...initialState(designGraph),
    studies: { ...noStudies, ownLines },
  }),
};
const initial = (id: string) => designGraph.initial[id] as number;

describe('own quantities from the command line', () => {
  it('have their values in evaluate, and a mistake is told in words', () => {
    const { code, out, err } = run(['evaluate', 'mine.json', '--get', 'own.speed,own.wrong'], files);
    expect(code).toBe(2);
    const entries = JSON.parse(out);
    const byHand = initial('lens.focalLength') / initial('plate.stepDiameter');
    expectClose(entries['own.speed'].value, byHand, { relative: 1e-15, source: 'by hand' });
    expect(entries['own.wrong'].problem).toMatch(/^At character 1 length and energy/);
    expect(err).toMatch(/own\.wrong: At character/);
  });

  it('are varied and ranked like any other', () => {
    const args = ['vary', 'mine.json', '--over', 'lens.focalLength=50:100:2 mm', '--get', 'own.speed'];
    const [, first, last] = succeed(args, files).trim().split('\r\n');
    expect(Number(last!.split(',')[1]) / Number(first!.split(',')[1])).toBeCloseTo(2, 12);
    const ranked = succeed(['influence', 'mine.json', '--of', 'own.speed'], files);
    expect(ranked).toMatch(/lens\.focalLength,"[^"]*",1\r\n/);
    expect(ranked).toMatch(/plate\.stepDiameter,"[^"]*",-1\r\n/);
  });

  it('stand among the quantities of their design, and of no other', () => {
    expect(succeed(['quantities', 'mine.json'], files)).toMatch(/^own\.speed\t1\t/m);
    expect(succeed(['quantities'])).not.toMatch(/^own\./m);
    expect(run(['evaluate', '--get', 'own.speed']).err).toMatch(/no quantity 'own\.speed'/);
  });
});
