import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { mostAlternatives } from '../../lib/design/savedStudies.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { applyPatch, initialState, sameDesign } from '../../lib/graph/state.ts';
import {
  alternativesOf,
  forgetAlternative,
  freeName,
  keepAlternative,
  takeAlternative,
} from '../../lib/studies/alternatives.ts';
import { compareDesigns, isHeavy } from '../../lib/studies/compare.ts';
import { changeText, comparisonColumns, comparisonSaid } from '../../notebooks/compareWords.ts';

const start = initialState(designGraph);
const wide = applyPatch(designGraph, start, { 'expander.magnification': 2.4, 'plate.stop': 'open' });
const quantity = (id: string) => designGraph.quantities.get(id)!;

describe('two designs side by side', () => {
  const ids = [
    'match.stepRatio',
    'match.stepRatio',
    'focus.rayleighLength',
    'laser.wavelength',
    'groove.depth',
  ];
  const designs = [
    { name: 'today', inputs: start.inputs },
    { name: 'wide', inputs: wide.inputs },
  ];
  const { inputs, results, same, heavy } = compareDesigns(designGraph, designs, ids);

  it('differ in the inputs that were changed, by id', () => {
    expect(inputs.map(({ id, texts }) => [id, ...texts])).toEqual([
      ['expander.magnification', '2', '2.4'],
      ['plate.stop', 'round stop', 'no stop'],
    ]);
    expect(inputs[0]!.changes[1]).toBeCloseTo(0.2, 12);
    expect(inputs[1]!.changes).toEqual([undefined, undefined]);
  });

  it('and in results: a/w goes with 1/M, the Rayleigh length with 1/M² (closed form)', () => {
    expect(results.map(({ id }) => id)).toEqual(['match.stepRatio', 'focus.rayleighLength']);
    expect(results[0]!.changes[1]).toBeCloseTo(1 / 1.2 - 1, 12);
    expect(results[1]!.changes[1]).toBeCloseTo(1 / 1.44 - 1, 9);
    expect(same).toBe(0);
  });

  it('what takes a search is named and not worked out', () => {
    expect(heavy).toEqual([quantity('groove.depth').name]);
    const weighed = ['groove.depth', 'match.stepRatio', 'threshold.fluence'].map((id) =>
      isHeavy(quantity(id), start.inputs),
    );
    // The threshold can come from a fit, but does not here.
    expect(weighed).toEqual([true, false, false]);
  });

  it('what takes a search is worked out too where all is asked for, and the part done is told', () => {
    const parts: number[] = [];
    const whole = compareDesigns(designGraph, designs, ['groove.depth'], {
      all: true,
      report: (part) => parts.push(part),
    });
    expect(whole.heavy).toEqual([]);
    const texts = designs.map(({ inputs }) =>
      shownValue(
        quantity('groove.depth'),
        createEngine(designGraph, inputs).evaluate(['groove.depth'])['groove.depth']!,
      ),
    );
    expect(whole.results.map((row) => row.texts)).toEqual([texts]);
    expect(parts).toEqual([0.5, 1]);
  });

  it('what no design has is a dash, and no change', () => {
    const pair = [
      { name: 'wide', inputs: wide.inputs },
      { name: 'today', inputs: start.inputs },
    ];
    const [row] = compareDesigns(designGraph, pair, ['match.stopRatio']).results;
    expect(row).toMatchObject({ texts: ['—', '1.4'], changes: [undefined, undefined] });
  });
});

describe('what is kept', () => {
  it('is kept under its name, taken over, and taken out', () => {
    const kept = keepAlternative(wide, '  Wide\n beam ');
    expect(alternativesOf(kept).map(({ name }) => name)).toEqual(['Wide beam']);
    const back = { ...kept, inputs: start.inputs };
    expect(takeAlternative(back, 0).inputs).toEqual(wide.inputs);
    expect(alternativesOf(takeAlternative(back, 0))).toEqual(alternativesOf(kept));
    expect(alternativesOf(forgetAlternative(back, 0))).toEqual([]);
    expect(sameDesign(forgetAlternative(kept, 0), wide)).toBe(true);
  });

  it('needs a name of its own', () => {
    const kept = keepAlternative(start, 'Alternative 2');
    expect(freeName(start)).toBe('Alternative 1');
    expect(freeName(kept)).toBe('Alternative 3');
    expect(() => keepAlternative(kept, 'Alternative 2')).toThrow(
      /There is an alternative ‘Alternative 2’ already/,
    );
    expect(() => keepAlternative(kept, ' ')).toThrow(/The name of the alternative is empty/);
    expect(() => keepAlternative(kept, 'x'.repeat(200))).toThrow(/has 200 signs/);
  });

  it('has room for as many as a page shows', () => {
    let full = start as Omit<typeof start, 'revision'>;
    for (let i = 0; i < mostAlternatives; i++) full = keepAlternative(full, freeName(full));
    expect(() => keepAlternative(full, 'one more')).toThrow(/20 alternatives are kept, and no more fit/);
  });
});

describe('words of a comparison', () => {
  it.each([
    [undefined, ''],
    [0, ''],
    [Number.POSITIVE_INFINITY, ''],
    [0.123, '+12\u202f%'],
    [-0.031, '\u22123.1\u202f%'],
    [3, '× 4.00'],
    [2137.4, '× 2138'],
    [-6.7e-16, ''],
  ])('a change of %s is told as "%s"', (change, text) => expect(changeText(change)).toBe(text));

  const row = { id: 'a.b', name: 'width', texts: ['1 mm', '2 mm'], changes: [0, 1] };
  it.each([
    [
      { inputs: [], results: [], same: 0, heavy: [] },
      /^‘Grooves’ shows no numbers that can be compared at once\.$/,
    ],
    [
      { inputs: [], results: [], same: 3, heavy: ['x'] },
      /^None of the 3 numbers .* differs\. One more takes a longer/,
    ],
    [{ inputs: [], results: [row], same: 2, heavy: [] }, /^1 of the 3 numbers of ‘Grooves’ differs\.$/],
    [
      { inputs: [], results: [row, row], same: 2, heavy: ['x', 'y'] },
      /^2 of the 4 .* differ\. 2 more take a longer/,
    ],
  ])('counts what differs', (comparison, text) =>
    expect(comparisonSaid(comparison, 'Grooves')).toMatch(text),
  );

  it('become a file with a column a design', () => {
    expect(comparisonColumns(['today', 'wide'], [row])).toEqual([
      ['quantity', 'id', 'today', 'wide'],
      ['width', 'a.b', '1 mm', '2 mm'],
    ]);
  });
});
