import { expect, test } from 'vitest';
import { designGraph as graph } from '../../../lib/design/design.ts';
import type { Blocked, SolveRequest, SolveResult } from '../../../lib/studies/solveRequest.ts';
import {
  apart,
  atLimitsSaid,
  blockedSaid,
  changesOf,
  consequencesSaid,
  missedSaid,
  solutionText,
  solvedSaid,
  wantText,
} from '../../../notebooks/solveWords.ts';
import { asTyped } from './plainSpaces.ts';

const inputs = graph.initial;
const ratio = { id: 'match.stepRatio', kind: 'value', value: 1.05 } as const;
const width = { id: 'spot.width', kind: 'atMost', value: 60e-6 } as const;
const request: SolveRequest = { wants: [ratio, width], moves: [{ id: 'expander.magnification' }] };
const result: SolveResult = { met: true, missed: [], atLimits: [], others: [], tried: 306, complete: true };
const other = { patch: {}, values: {} };

test('what is wanted, in words', () => {
  expect(wantText(graph, ratio)).toBe('1.05');
  expect(asTyped(wantText(graph, width))).toBe('at most 60 µm');
  expect(asTyped(wantText(graph, { ...width, kind: 'atLeast' }))).toBe('at least 60 µm');
  expect(asTyped(wantText(graph, { id: width.id, kind: 'between', low: 5e-5, high: 6e-5 }))).toBe(
    'from 50 µm to 60 µm',
  );
});

test('what came of looking', () => {
  expect(solvedSaid(result)).toBe('Found, after 306 designs.');
  expect(solvedSaid({ ...result, others: [other] })).toBe(
    'Found, after 306 designs. There is one other solution; the one nearest to today’s design stands first.',
  );
  expect(solvedSaid({ ...result, others: [other, other], complete: false })).toBe(
    'Found, after 306 designs. There are 2 other solutions; the one nearest to today’s design stands first. The search was cut short there, so that there may be more.',
  );
  expect(solvedSaid({ ...result, met: false, tried: 1 })).toBe(
    'Nothing within what may change gives what is wanted; 1 design was tried.',
  );
  expect(solvedSaid({ ...result, met: false, complete: false })).toMatch(
    /^Not found in 306 designs\. .* there may still be one/,
  );
});

test('a solution by what it changes', () => {
  const lens = { 'lens.focalLength': 0.08, 'expander.magnification': 2 };
  expect(changesOf({ patch: lens, values: {} }, inputs)).toEqual(['lens.focalLength']);
  expect(asTyped(solutionText(graph, { patch: lens, values: {} }, inputs))).toBe('focal length 80 mm');
  expect(asTyped(solutionText(graph, { patch: lens, values: {}, part: 'Short one' }, inputs))).toBe(
    'Short one and focal length 80 mm',
  );
  expect(solutionText(graph, { patch: {}, values: {} }, inputs)).toBe('today’s design as it is');
});

test('how far off the nearest is, by as many digits as tell it from what is wanted', () => {
  const missed = { index: 0, id: ratio.id, wanted: 1.05 };
  const say = (reached: number, factor?: number) =>
    asTyped(
      missedSaid(graph, [
        { ...missed, reached, by: reached - 1.05, ...(factor === undefined ? {} : { factor }) },
      ]),
    );
  expect(missedSaid(graph, [])).toBe('');
  expect(say(1, 1 / 1.05)).toBe('The nearest that was found gives step ratio 1 instead of 1.05, 4.8 % less.');
  expect(say(1.26, 1.2)).toBe('The nearest that was found gives step ratio 1.26 instead of 1.05, 20 % more.');
  expect(say(4.2, 4)).toBe(
    'The nearest that was found gives step ratio 4.2 instead of 1.05, 4 times as much.',
  );
  expect(say(0.105, 0.1)).toBe(
    'The nearest that was found gives step ratio 0.105 instead of 1.05, a factor of 10 less.',
  );
  expect(say(-1)).toBe('The nearest that was found gives step ratio −1 instead of 1.05.');
  expect(say(1.050002, 1.050002 / 1.05)).toContain('1.050002 instead of 1.05.');
  expect(apart(graph.quantities.get(ratio.id)!, 1.05, 1.0500000001)).toEqual(['1.05', '1.05']);
});

test('every reason why there is none, with what to do', () => {
  const say = (blocked: Blocked) => asTyped(blockedSaid(graph, request, blocked, inputs));
  const problem = { kind: 'impossible', message: 'The step is too wide.', parts: {}, at: 'x' } as const;
  expect(say({ reason: 'problem', problem, part: 0.4 })).toBe(
    'What stands in the way: 40 % of the designs tried have no value. The step is too wide.',
  );
  expect(say({ reason: 'problem', problem, part: 1, input: 'plate.stepDiameter' })).toBe(
    'What stands in the way: all of the designs tried have no value. The step is too wide. Let step diameter change too, or choose other limits.',
  );
  const limits = [{ id: 'expander.magnification', end: 'to', value: 5 }] as const;
  expect(say({ reason: 'limits', want: 0, limits })).toBe(
    'What stands in the way: step ratio would come nearer beyond the limits; magnification stands at the upper limit, 5. Further limits may help, if they are possible on your table.',
  );
  const beyond = { patch: { 'expander.magnification': 7 }, values: {} };
  expect(say({ reason: 'limits', want: 0, limits, beyond })).toMatch(
    /With further limits it is met: magnification 7\.$/,
  );
  expect(say({ reason: 'gap', want: 1, below: 50e-6, above: 70e-6 })).toBe(
    'What stands in the way: spot width jumps over what is wanted. The nearest on either side are 50 µm and 70 µm; let another input change, or add values to the list.',
  );
  expect(say({ reason: 'reach', want: 1, low: 50e-6, high: 70e-6 })).toBe(
    'What stands in the way: spot width was found from 50 µm to 70 µm and turns round before it gets to what is wanted. Other inputs have to change.',
  );
  expect(say({ reason: 'unmoved', want: 1 })).toContain('nothing that may change enters spot width');
  expect(say({ reason: 'contradiction', wants: [0, 1] })).toContain(
    'step ratio and spot width can each be had alone, but not both together',
  );
  expect(say({ reason: 'contradiction', wants: [0, 1, 0] })).toContain('but not all together');
});

test('ends at which a solution stands', () => {
  expect(atLimitsSaid(graph, [])).toBe('');
  const limits = [
    { id: 'expander.magnification', end: 'from', value: 0.5 },
    { id: 'lens.focalLength', end: 'to', value: 0.125 },
  ] as const;
  expect(asTyped(atLimitsSaid(graph, limits))).toBe(
    'Magnification stands at the lower limit, 0.5 and focal length stands at the upper limit, 125 mm.',
  );
});

test('what else a proposal changes', () => {
  const row = { id: ratio.id, name: 'step ratio', texts: ['1', '2'], changes: [0, 1] };
  const say = (results: number, same: number, heavy: number) =>
    consequencesSaid(
      { inputs: [], results: Array(results).fill(row), same, heavy: Array(heavy).fill('x') },
      'Ripples',
    );
  expect(say(0, 0, 0)).toBe('‘Ripples’ shows no numbers that can be worked out at once.');
  expect(say(0, 3, 1)).toBe(
    'None of the 3 numbers of ‘Ripples’ would change. One more takes a longer computation.',
  );
  expect(say(2, 3, 2)).toBe(
    '2 of the 5 numbers of ‘Ripples’ would change. 2 more take a longer computation.',
  );
});
