import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { examplesOf } from '../../lib/graph/typedInput.ts';
import { parseQuantity } from '../../lib/graph/units.ts';
import { parseFormula } from '../../lib/studies/formulaParser.ts';
import { expectClose } from '../close.ts';
import { worked } from './formulas.ts';

const source = 'by hand';
const exactly = { relative: 4e-16, source };

describe('precedence', () => {
  it.each([
    ['1 + 2 * 3', 7],
    ['(1 + 2) * 3', 9],
    ['8 / 4 / 2', 1],
    ['8 − 4 - 2', 2],
    ['2^3^2', 512],
    ['(2^3)^2', 64],
    ['-2^2', -4],
    ['(-2)^2', 4],
    ['2^-2', 0.25],
    ['2^-2*4', 1],
    ['2*-3', -6],
    ['- -3', 3],
    ['+3 - +2', 1],
    ['6/2*10^3', 3000],
    ['10^2^3', 1e8],
    ['2²·3', 12],
    ['2⁻¹', 0.5],
    ['6 ÷ 3 × 2', 4],
    ['6 / 2 * 10^3', 3000],
    ['6 / 2 × 10³', 0.003],
    ['2^3 × 10²', 800],
    ['10²^2', 1e4],
    ['3 × 10⁻² × 2', 0.06],
  ])('%s = %d', (text, value) => {
    expectClose(worked(text).value, value, exactly);
  });
});

describe('values and units', () => {
  it.each([
    ['groove.depth / groove.topWidth', 0.5, '1'],
    ['2*sqrt(ln(spot.peakFluence/threshold.fluence)) * 3 um', 6e-6 * Math.sqrt(Math.log(4)), 'm'],
    ['3 um', 3e-6, 'm'],
    ['2.5 µm + 500 nm', 3e-6, 'm'],
    ['0.2 J/cm² * 3', 6000, 'J/m^2'],
    ['0.35 mm³/(W·min)', 0.35e-9 / 60, 'm^3/J'],
    ['200 /mm', 2e5, '1/m'],
    ['3.2 × 10^-7 m', 3.2e-7, 'm'],
    ['5 % + 0.05', 0.1, '1'],
    ['180°', Math.PI, 'rad'],
    ['0.5 waves', Math.PI, 'rad'],
    ['2 pi', 2 * Math.PI, 'rad'],
    ['3 um^2', 3e-12, 'm^2'],
    ['(3 um)^2', 9e-12, 'm^2'],
    ['2 um / groove.depth', 0.1, '1'],
    ['3 m-2 m', 1, 'm'],
    ['2 W*min(3 s, 4 s)', 6, 'J'],
    ['3/e', 3 / Math.E, '1'],
    ['3/(2*e)', 1.5 / Math.E, '1'],
    ['laser.energy / (pi * groove.depth²)', 50e-6 / (Math.PI * 4e-10), 'J/m^2'],
    ['sqrt(groove.depth * groove.topWidth)', Math.sqrt(8e-10), 'm'],
    ['sqrt(groove.depth)^2', 20e-6, 'm'],
    ['groove.depth^(1/2) * groove.depth^0.5', 20e-6, 'm'],
    ['cbrt(8 mm³)', 2e-3, 'm'],
    ['hypot(3 um, 4 um)', 5e-6, 'm'],
    ['max(groove.depth, 30 um, 1 nm)', 30e-6, 'm'],
    ['min(groove.depth, groove.topWidth)', 20e-6, 'm'],
    ['abs(-3 um)', 3e-6, 'm'],
    ['atan(groove.depth / groove.topWidth)', Math.atan(0.5), 'rad'],
    ['atan2(1 um, -1 um)', 0.75 * Math.PI, 'rad'],
    ['asin(1) + acos(1)', Math.PI / 2, 'rad'],
    ['sin(plate.phase) + cos(0) + tan(45°)', 3, '1'],
    ['plate.phase + 1', Math.PI / 2 + 1, 'rad'],
    ['plate.phase * groove.depth', (Math.PI / 2) * 20e-6, 'm'],
    ['exp(1) - e + ln(e) + log10(100)', 3, '1'],
    ['round(2.5) + floor(-0.5) + ceil(0.2)', 3, '1'],
    ['if(groove.depth < 30 um, 1 J, 2 J)', 1, 'J'],
    ['if(groove.depth >= 30 um, 1 J, 2 J)', 2, 'J'],
    ['if(heat.none == 0, 3, 1/heat.none)', 3, '1'],
    ['if(1 > 2, 1, if(1 ≤ 2, 5, 6))', 5, '1'],
    ['1 kg / 1 m / 1 s', 1, 'kg/(m*s)'],
    ['100 rad / 2 s', 50, 'rad/s'],
  ])('%s', (text, value, unit) => {
    const result = worked(text);
    expect(result.unit).toBe(unit);
    expectClose(result.value, value, exactly);
  });
});

describe('whatever an input takes can stand in a formula', () => {
  const inputs = designGraph.order.filter((quantity) => quantity.kind === 'number');
  it.each(inputs)('$id', (input) => {
    for (const text of examplesOf(input).split(' or ')) {
      const wanted = parseQuantity(text, input.unit);
      expect(worked(text).value, text).toBe(wanted);
      expect(worked(`2 * ${text} / (1 + ${text} / ${text})`).value, text).toBe(wanted);
    }
  });
});

it('a tree keeps its places in the text, brackets included', () => {
  expect(parseFormula('2 * (a.b + 1)')).toMatchObject({
    kind: 'operation',
    from: 0,
    to: 13,
    right: {
      kind: 'operation',
      operator: '+',
      from: 4,
      to: 13,
      left: { kind: 'name', id: 'a.b', from: 5, to: 8 },
    },
  });
});
