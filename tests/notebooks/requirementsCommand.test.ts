import { expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { writeDesignFile } from '../../lib/design/designFile.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { type DesignState, initialState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { withRequirement } from '../../lib/studies/requirements.ts';
import { line } from '../studies/ownOnes.ts';
import { run, succeed } from './runCommand.ts';

const start = initialState(designGraph);
const ask = (
  design: Omit<DesignState, 'revision'>,
  id: string,
  bounds: { atLeast?: number; atMost?: number },
  reason = '',
) => withRequirement(design, designGraph.quantities.get(id)!, { ...bounds, reason });
const fileOf = (design: Omit<DesignState, 'revision'>) => ({
  'asked.json': writeDesignFile(designGraph, design),
});
const judge = ['evaluate', 'asked.json', '--requirements'];

const met = ask(start, 'spot.width', { atMost: 2e-5 }, 'the tool path, "drawn"');
const width = createEngine(designGraph).evaluate(['spot.width'])['spot.width'] as { value: number };

it('evaluate --requirements writes what is asked, in the units shown, and ends well where all is met', () => {
  const lines = succeed(judge, fileOf(met)).split('\r\n');
  const value = Number((width.value * 1e6).toPrecision(12));
  expect(lines[0]).toBe('id,at least,at most,value,unit,verdict,how far,because');
  expect(lines[1]).toMatch(
    new RegExp(`^spot\\.width,,20,${value},µm,met,0\\.4\\d* µm to spare,"the tool path, ""drawn"""$`),
  );
  expect(lines).toHaveLength(3);
});

it('what is not met stands first, then what is not known, and both are named in one line', () => {
  const failed = ask(met, 'match.stepRatio', { atLeast: 1.05, atMost: 1.2 });
  const all = {
    ...failed,
    studies: {
      ...failed.studies!,
      requirements: [...failed.studies!.requirements, { id: 'own.gone', unit: 'm', atMost: 1, reason: '' }],
    },
  };
  const { code, out, err } = run(judge, fileOf(all));
  expect(code).toBe(2);
  expect(out.split('\r\n').map((line) => line.split(',')[0])).toEqual([
    'id',
    'match.stepRatio',
    'own.gone',
    'spot.width',
    '',
  ]);
  expect(err).toBe(
    'match.stepRatio: required from 1.05 to 1.2, not met, 0.05 too little. own.gone: required at most 1 m, not known, no such number in this design.\n',
  );
  expect(run([...judge, '--set', 'expander.magnification=1.9'], fileOf(failed))).toMatchObject({
    code: 0,
    err: '',
  });
});

it('a number without a value is not known, with the reason', () => {
  const { code, err } = run([...judge, '--set', 'plate.stepDiameter=20 mm'], fileOf(met));
  expect(code).toBe(2);
  expect(err).toMatch(/spot\.width: required at most 20\sµm, not known, .*outside the stop/);
});

it('refuses a design of which nothing is asked, and two lists at once', () => {
  expect(run(['evaluate', '--requirements'])).toMatchObject({
    code: 2,
    out: '',
    err: expect.stringMatching(/Nothing is asked of this design/),
  });
  expect(run([...judge, '--get', 'spot.width'], fileOf(met))).toMatchObject({
    code: 2,
    out: '',
    err: expect.stringMatching(/not both/),
  });
});

it('an own quantity is judged like any other, and one with a mistake is not known', () => {
  const ownLines = [
    line('speed', 'lens.focalLength / plate.stepDiameter', { name: 'focal length over step' }),
    line('wrong', 'lens.focalLength + 1 J'),
  ];
  const asked = (id: string, unit: string) => ({ id, unit, atLeast: 10, reason: '' });
  const requirements = [asked('own.speed', '1'), asked('own.wrong', 'm')];
  const own = { ...start, studies: { ...noStudies, ownLines, requirements } };
  const { code, out, err } = run(judge, fileOf(own));
  expect(code).toBe(2);
  expect(out).toMatch(/own\.wrong,10,,,m,not known,/);
  // 100 mm over 10 mm: on the bound.
  expect(out).toMatch(/own\.speed,10,,10,,met,on the bound,/);
  expect(err).toMatch(/^own\.wrong: required at least 10 m, not known, /);
});
