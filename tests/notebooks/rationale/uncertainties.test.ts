import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { isInput, type Quantity } from '../../../lib/graph/quantity.ts';
import { shownValue } from '../../../lib/graph/shown.ts';
import { parseQuantity } from '../../../lib/graph/units.ts';
import { uncertainties, uncertaintyOf } from '../../../notebooks/paper/uncertainties.ts';
import { type Told, writtenValue } from '../../../notebooks/paper/writtenValue.ts';

const { initial, quantities } = designGraph;

/** Outcomes of two quantities, and of nothing else. */
function toldOf(values: Readonly<Record<string, number>>, inputs = initial): Told {
  const absent = { kind: 'absent', message: 'not here', parts: {}, at: '' } as const;
  return {
    inputs,
    outcomeOf: ({ id }) => (Object.hasOwn(values, id) ? { value: values[id] } : { problem: absent }),
  };
}

const threshold = quantities.get('threshold.fluence')!;
const written = (value: number, uncertainty: number, quantity: Quantity = threshold) =>
  writtenValue(
    quantity,
    toldOf({ [quantity.id]: value, [uncertaintyOf(quantity, { inputs: initial })!.id]: uncertainty }),
  );

describe('which numbers have an uncertainty', () => {
  it('every result that is one belongs to a number, in the same unit', () => {
    const known = new Set(Object.values(uncertainties));
    const all = [...quantities.values()].filter(
      ({ id, kind }) => kind === 'derived' && /[uU]ncertainty/.test(id),
    );
    expect(all.length).toBeGreaterThan(20);
    for (const { id } of all) expect(known, id).toContain(id);
    for (const [id, uncertainty] of Object.entries(uncertainties))
      expect(quantities.get(uncertainty)?.unit, id).toBe(quantities.get(id)!.unit);
  });

  it('a beam and an M² that were typed have none, measured ones that of their measurement', () => {
    const of = (id: string, inputs: object) =>
      uncertaintyOf(quantities.get(id)!, { inputs: { ...initial, ...inputs } })?.id;
    expect(of('laser.usedBeamDiameter', {})).toBeUndefined();
    expect(of('laser.usedBeamDiameter', { 'laser.beamSource': 'measured' })).toBe(
      'laser.measuredUncertainty',
    );
    expect(of('laser.usedBeamDiameter', { 'laser.beamSource': 'caustic' })).toBe(
      'laser.causticWaistDiameterUncertainty',
    );
    expect(of('laser.usedBeamPropagationRatio', {})).toBeUndefined();
    expect(of('laser.usedBeamPropagationRatio', { 'laser.ratioSource': 'measured' })).toBe(
      'laser.causticRatioUncertainty',
    );
    expect(of('plate.stepDiameter', {})).toBeUndefined();
  });
});

describe('numbers are rounded to the second digit of their uncertainty', () => {
  const J = 1e4;
  const rows: readonly (readonly [value: number, uncertainty: number, text: string])[] = [
    [0.20834 * J, 0.0031 * J, '0.208'],
    [0.20834 * J, 0.031 * J, '0.208'],
    [0.20834 * J, 0.31 * J, '0.21'],
    [0.20834 * J, 3.1 * J, '0.2'],
    [0.02 * J, 3.1 * J, '0'],
    // 0.0997 has two digits as 0.10, not as 0.100.
    [1.23456 * J, 0.0997 * J, '1.23'],
    [1.23456 * J, 0.994 * J, '1.23'],
    [1.23456 * J, 0.996 * J, '1.2'],
    [1.25 * J, 0, '1.25'],
    [12345 * J, 100 * J, '12300'],
    [1e7, 5e-324, '1000'],
    [5e-324, 1e7, '0'],
  ];
  for (const [value, uncertainty, text] of rows) {
    it(`${value} ± ${uncertainty} J/m² reads ${text} J/cm²`, () => {
      expect(written(value, uncertainty).replace(/\s.*$/, '')).toBe(text);
    });
  }

  it('an angle is rounded in the unit that it is shown in', () => {
    const direction = quantities.get('micrograph.direction')!;
    const degree = Math.PI / 180;
    expect(written(83.4567 * degree, 1.2 * degree, direction)).toMatch(/^83\.5/);
  });

  it('never finer than it is shown, and never off by more than half of the second digit', () => {
    const size = fc.double({ min: -12, max: 12, noNaN: true }).map((x) => 10 ** x);
    fc.assert(
      fc.property(size, size, (value, uncertainty) => {
        const text = written(value, uncertainty);
        const shown = shownValue(threshold, { value });
        if (text === shown) return;
        const digits = (one: string) =>
          one
            .replace(/\s.*$/, '')
            .replace(/[^\d]/g, '')
            .replace(/^0+|0+$/g, '').length;
        expect(digits(text)).toBeLessThanOrEqual(digits(shown));
        const place = 10 ** (Math.floor(Math.log10(Number(uncertainty.toPrecision(2)))) - 1);
        expect(Math.abs(parseQuantity(text, 'J/m^2') - value)).toBeLessThanOrEqual(0.5 * place * (1 + 1e-9));
      }),
      { seed: 4, numRuns: 400 },
    );
  });

  it('without a value, and where the uncertainty is not known, a number reads as everywhere', () => {
    expect(writtenValue(threshold, toldOf({}))).toBe('—');
    expect(writtenValue(threshold, toldOf({ [threshold.id]: 2083.4 }))).toBe(
      shownValue(threshold, { value: 2083.4 }),
    );
    for (const quantity of quantities.values())
      if (isInput(quantity) && quantity.kind === 'number')
        expect(writtenValue(quantity, toldOf({ [quantity.id]: quantity.initial }))).toBe(
          shownValue(quantity, { value: quantity.initial }),
        );
  });
});
