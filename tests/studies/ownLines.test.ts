import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import type { OwnLine } from '../../lib/graph/studies.ts';
import { extendGraph, ownQuantities } from '../../lib/studies/ownQuantities.ts';
import { evaluated, line } from './ownOnes.ts';

/** The message of the only problem of these lines. */
function refusal(...lines: readonly OwnLine[]): string {
  const { problems } = ownQuantities(designGraph, lines);
  expect(problems).toHaveLength(1);
  return problems[0]!.problem.message;
}

describe('lines that are not right', () => {
  it.each<[string, OwnLine[], string]>([
    [
      'taken by the design',
      [{ ...line('a', '1'), id: 'lens.focalLength' }],
      "'lens.focalLength' cannot be the id of an own quantity; write 'own.' and then letters and digits, the first a small letter, at most 40 characters in all.",
    ],
    [
      'taken by a line',
      [line('a', '1'), line('a', '2')],
      "The name 'own.a' is taken already; choose another.",
    ],
    ['no name', [line('a', '1', { name: ' ' })], 'own.a has no name; give it a few words.'],
    [
      'long name',
      [line('a', '1', { name: 'x'.repeat(81) })],
      'The name of own.a has 81 characters; at most 80 are kept.',
    ],
    [
      'letters left out',
      [line('a', '1 + groove.dept / 1 m')],
      "At character 5 stands 'groove.dept', which is no quantity; did you mean groove.depth, groove.meanDepth, groove.besideDepth?",
    ],
    [
      'end of an id',
      [line('a', 'focalLength')],
      "At character 1 stands 'focalLength', which is no quantity; did you mean lens.focalLength, wish.focalLength, comparison.focalLength?",
    ],
    [
      'like nothing',
      [line('a', 'qqqqqqqqqqqq')],
      "At character 1 stands 'qqqqqqqqqqqq', which is no quantity; ids look like spot.width.",
    ],
    ['a unit', [line('a', '3 * um')], "At character 5 stands the unit 'um' without a number; write 1 um."],
    [
      'a choice',
      [line('a', 'plate.stop')],
      "At character 1 stands 'plate.stop' (stop), which is no number; formulas take numbers only.",
    ],
    [
      'broken powers',
      [line('a', 'sqrt(lens.focalLength)')],
      'The result is a quantity in m^(1/2), which no unit here has; raise it to a power or divide, so that whole powers remain.',
    ],
    [
      'unknown display',
      [line('a', 'lens.focalLength', { display: 'parsnip' })],
      "The unit 'parsnip' is not known; use one such as m.",
    ],
    [
      'display of another kind',
      [line('a', 'lens.focalLength', { display: 'J/cm²' })],
      "The result is a length and cannot be shown in 'J/cm²', the unit of a fluence.",
    ],
    [
      'units that do not fit',
      [line('a', 'spot.peakFluence + lens.focalLength')],
      "At character 1 fluence and length cannot be added: 'spot.peakFluence' is a fluence, 'lens.focalLength' is a length.",
    ],
    [
      'itself',
      [line('a', '1 + own.a')],
      "At character 5 stands 'own.a', which leads back to this line: own.a → own.a. A quantity cannot follow from itself; take one of them out.",
    ],
    [
      'not a text',
      [{ ...line('a', '1'), formula: 3 as unknown as string }],
      'An own quantity needs id, name and formula as texts.',
    ],
  ])('%s', (_, lines, message) => {
    expect(refusal(...lines)).toBe(message);
  });

  it('a circle is named from each of its lines, what rests on it says so, and the others have their values', () => {
    const { problems, texts } = evaluated([
      line('a', '1 + own.b'),
      line('b', 'own.c * 2'),
      line('c', 'own.d + own.b'),
      line('d', '3'),
      line('e', '2 * own.b'),
    ]);
    expect(texts).toEqual({ 'own.d': '3' });
    const circle = (shown: string, at: number, chain: string) =>
      `At character ${at} stands 'own.${shown}', which leads back to this line: ${chain}. A quantity cannot follow from itself; take one of them out.`;
    expect(problems.map(({ line: number, problem }) => [number, problem.message])).toEqual([
      [0, "At character 5 stands 'own.b', which has a mistake of its own; correct that line first."],
      [1, circle('c', 1, 'own.b → own.c → own.b')],
      [2, circle('b', 9, 'own.c → own.b → own.c')],
      [4, "At character 5 stands 'own.b', which has a mistake of its own; correct that line first."],
    ]);
  });

  it('long circles and too many lines are refused in time', () => {
    const ring = Array.from({ length: 210 }, (_, i) =>
      line(`a${i}`, `own.a${(i + 1) % 200} + own.a${(i + 7) % 200}`),
    );
    const { quantities, problems } = ownQuantities(designGraph, ring);
    expect(quantities).toEqual([]);
    expect(problems).toHaveLength(210);
    expect(problems[0]!.problem.message).toMatch(/own\.a0 → .* → … → .* → own\.a0\. A quantity/);
    expect(problems[205]!.problem.message).toBe('There are more than 200 own quantities; take some out.');
  });

  it('names that programs know are names like any other, or refused', () => {
    const known = ['constructor', 'toString', 'valueOf', 'hasOwnProperty', 'then'];
    const { texts, problems } = evaluated([
      ...known.map((name, i) => line(name, `${i}`)),
      line('sum', known.map((name) => `own.${name}`).join(' + ')),
    ]);
    expect(problems).toEqual([]);
    expect(texts['own.sum']).toBe('10');
    for (const id of [
      'own.__proto__',
      '__proto__',
      'constructor',
      'own',
      'own.',
      'own.a.b',
      'own.é',
      'own.A',
      '',
    ]) {
      expect(refusal({ ...line('a', '1'), id })).toMatch(/cannot be the id of an own quantity/);
    }
    for (const formula of ['own.__proto__', '__proto__', 'constructor', 'lens.constructor', 'own.missing']) {
      expect(refusal(line('a', formula))).toMatch(/^At character 1 stands '.*', which is no quantity; /);
    }
  });

  it('an id of the graph is not given twice', () => {
    const { quantities } = ownQuantities(designGraph, [line('a', '1')]);
    const graph = extendGraph(designGraph, quantities);
    expect(ownQuantities(graph, [line('a', '2')]).problems[0]!.problem.message).toMatch(
      /'own.a' is taken already/,
    );
    expect(() => extendGraph(graph, quantities)).toThrow("'own.a' is taken already");
  });
});
