import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { derived } from '../../lib/graph/define.ts';
import type { Derived, NumberInput } from '../../lib/graph/quantity.ts';
import { readNumber, typedText } from '../../lib/graph/typedNumber.ts';

const quantity = (id: string) => designGraph.quantities.get(id) as Derived<number> | NumberInput;
const made = { about: 'of a test', from: {}, formula: 'x', source: 'definition', symbol: 'x' } as const;
const wandering = derived({
  ...made,
  id: 'a.length',
  name: 'length',
  unit: 'm',
  display: 'auto:m',
  compute: () => 1,
});
const plain = derived({ ...made, id: 'a.ratio', name: 'ratio', unit: '1', compute: () => 1 });

describe('a number typed for a result', () => {
  it('is read with any unit of its kind, and without in the one it is shown in', () => {
    const width = quantity('spot.width');
    expect(readNumber(width, '20 µm')).toBe(2e-5);
    expect(readNumber(width, '0.02 mm')).toBe(2e-5);
    expect(readNumber(width, '20')).toBe(2e-5);
    expect(readNumber(quantity('spot.dip'), '5')).toBe(0.05);
    expect(readNumber(quantity('spot.dip'), '5 %')).toBe(0.05);
    expect(readNumber(plain, '1,05')).toBe(1.05);
  });

  it('needs its unit where it is shown in several', () => {
    expect(readNumber(wandering, '3 mm')).toBe(3e-3);
    expect(readNumber(wandering, '0')).toBe(0);
    expect(() => readNumber(wandering, '3', 2e-3)).toThrow(
      /^Write the unit too, as in 2\smm: length is shown in several\.$/,
    );
    expect(() => readNumber(wandering, '3')).toThrow(/^Write the unit too: length/);
  });

  it('refuses another kind, with what it is today as an example', () => {
    expect(() => readNumber(quantity('spot.width'), '3 J', 19.52e-6)).toThrow(/a length such as 19\.5\sµm/);
    expect(() => readNumber(quantity('spot.width'), '')).toThrow(/The field is empty/);
    expect(() => readNumber(quantity('laser.wavelength'), 'red')).toThrow(/1030\snm or 1\.03\sµm/);
  });

  it('is shown again with all digits that were typed', () => {
    expect(typedText(quantity('spot.width'), 131.2567e-6)).toBe('131.2567\u202fµm');
    expect(typedText(quantity('spot.dip'), 1e-4)).toBe('0.01\u202f%');
    expect(typedText(wandering, 0)).toBe('0\u202fm');
    for (const text of ['131.2567 µm', '0.3 mm', '7 nm'])
      expect(
        readNumber(
          quantity('spot.width'),
          typedText(quantity('spot.width'), readNumber(quantity('spot.width'), text)),
        ),
      ).toBe(readNumber(quantity('spot.width'), text));
  });
});
