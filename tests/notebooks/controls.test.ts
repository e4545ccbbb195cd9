import fc from 'fast-check';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { firstFocalLength } from '../../lib/design/expander.ts';
import { workpieceZ } from '../../lib/design/focus.ts';
import { pulseEnergy, repetitionRate, wavelength } from '../../lib/design/laser.ts';
import { designPhase, stepDiameter, stop, typedIndex } from '../../lib/design/plate.ts';
import { spots } from '../../lib/design/scaleUpInputs.ts';
import type { NumberInput } from '../../lib/graph/quantity.ts';
import { checkInput } from '../../lib/graph/state.ts';
import { createChoiceField } from '../../notebooks/page/controls/choiceField.ts';
import { helpText } from '../../notebooks/page/controls/field.ts';
import { decentStep, sliderScale, stepValue } from '../../notebooks/page/controls/steps.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';

const numberInputs = designGraph.order.filter(
  (quantity): quantity is NumberInput => quantity.kind === 'number',
);

describe('decent steps', () => {
  it.each([
    [0.1, 0.1],
    [0.102, 0.1],
    [1.5, 2],
    [3.2, 5],
    [7.5, 10],
    [0.0103, 0.01],
    [412, 500],
  ])('%f becomes %f', (size, step) => {
    expect(decentStep(size)).toBe(step);
  });
});

describe('stepping by arrow keys', () => {
  it.each([
    ['10 mm by 1 %', stepDiameter, 10e-3, 1, 0.01, 10.1e-3],
    ['10.1 mm back', stepDiameter, 10.1e-3, -1, 0.01, 10e-3],
    ['onto a multiple', stepDiameter, 10.137e-3, 1, 0.01, 10.2e-3],
    ['10 mm by 10 %', stepDiameter, 10e-3, 1, 0.1, 11e-3],
    ['10 mm by 0.1 %', stepDiameter, 10e-3, -1, 0.001, 9.99e-3],
    ['1030 nm', wavelength, 1.03e-6, 1, 0.01, 1.04e-6],
    ['z from zero, 1 % of half the typical span', workpieceZ, 0, 1, 0.01, 10e-6],
    ['z back to zero', workpieceZ, 10e-6, -1, 0.01, 0],
    ['half a wave', designPhase, Math.PI, 1, 0.01, 1.01 * Math.PI],
    ['held at the end', stepDiameter, 100e-3, 1, 0.1, 100e-3],
    ['whole numbers by one', spots, 4, 1, 0.01, 5],
    ['whole numbers down to the end', spots, 1, -1, 0.1, 1],
    ['many whole numbers by 1 %', spots, 2000, 1, 0.01, 2020],
    ['not onto a value that is left out', firstFocalLength, -1e-3, 1, 2, -1e-3],
    ['not onto an end that is left out', typedIndex, 1.0001, -1, 0.1, 1.0001],
  ] as const)('%s', (_, input, value, direction, fraction, next) => {
    expectClose(stepValue(input, value, direction, fraction), next, { relative: 1e-14, absolute: 0 });
  });

  it('moves every input of the design from its initial value, to a value it allows', () => {
    for (const input of numberInputs) {
      // Downwards where it starts at the upper end of its range.
      const direction = input.initial === input.range.max ? -1 : 1;
      const next = stepValue(input, input.initial, direction, 0.01);
      expect((next - input.initial) * direction, input.id).toBeGreaterThan(0);
      expect(checkInput(input, next), input.id).toBe(next);
    }
  });
});

describe('slider scale', () => {
  const sliding = numberInputs.filter((input) => input.typical);

  it('is logarithmic over more than a decade only', () => {
    expect(sliderScale(repetitionRate)?.logarithmic).toBe(true);
    expect(sliderScale(pulseEnergy)?.logarithmic).toBe(true);
    expect(sliderScale(stepDiameter)?.logarithmic).toBe(false);
    expect(sliderScale(workpieceZ)?.logarithmic).toBe(false);
    expect(sliderScale({ ...stepDiameter, typical: undefined as never })).toBeUndefined();
  });

  it('ends on the typical span, and holds what lies outside', () => {
    for (const input of sliding) {
      const scale = sliderScale(input)!;
      const [low, high] = input.typical!;
      expect([scale.valueAt(0), scale.valueAt(1)], input.id).toEqual([low, high]);
      expect([scale.positionOf(low - high), scale.positionOf(2 * high)], input.id).toEqual([0, 1]);
    }
  });

  it('gives a new value at every place, so arrow keys on it always move', () => {
    for (const input of sliding) {
      const scale = sliderScale(input)!;
      const values = Array.from({ length: scale.places + 1 }, (_, i) => scale.valueAt(i / scale.places));
      for (const [i, value] of values.slice(1).entries()) {
        expect(value, `${input.id}, place ${i}`).toBeGreaterThan(values[i]!);
      }
    }
  });

  it('of a whole number holds whole numbers only', () => {
    for (const input of sliding.filter(({ whole }) => whole)) {
      const scale = sliderScale(input)!;
      for (let i = 0; i <= scale.places; i++)
        expect(Number.isInteger(scale.valueAt(i / scale.places)), input.id).toBe(true);
    }
    expect(sliderScale(spots)!.valueAt(0.001)).toBe(1);
  });

  it('finds the place of a value again to half a place', () => {
    const chosen = fc.tuple(fc.constantFrom(...sliding), fc.double({ min: 0, max: 1, noNaN: true }));
    fc.assert(
      fc.property(chosen, ([input, position]) => {
        const scale = sliderScale(input)!;
        return Math.abs(scale.positionOf(scale.valueAt(position)) - position) < 0.75 / scale.places;
      }),
      { numRuns: cases(2000, 200), seed: 11 },
    );
  });
});

describe('help', () => {
  it('gives meaning, range and the unit of a plain number', () => {
    expect(helpText(stepDiameter)).toBe(
      'Diameter of the round step on the plate. From 0.1\u202fmm to 100\u202fmm. A plain number counts in mm; other units may be typed.',
    );
    expect(helpText(typedIndex)).toContain('Above 1 up to 4.');
    expect(helpText(stop)).toBe(stop.about);
  });
});

describe('choice field', () => {
  it('sets the chosen way, and goes back where it is refused', () => {
    const { document, window } = parseHTML('<html><body></body></html>');
    const calls: string[] = [];
    let refuse = false;
    const field = createChoiceField(document, stop, (value) => {
      if (refuse) throw new Error('Not now.');
      calls.push(value);
    });
    const radios = [...field.element.querySelectorAll<HTMLInputElement>('input[type=radio]')];
    const checked = () => radios.find((radio) => radio.checked)?.value;
    const pick = (value: string) => {
      for (const radio of radios) radio.checked = radio.value === value;
      field.element.querySelector('[role=radiogroup]')!.dispatchEvent(new window.Event('change'));
    };
    pick('open');
    expect([calls, checked()]).toEqual([['open'], 'open']);
    refuse = true;
    pick('round');
    expect([calls, checked()]).toEqual([['open'], 'open']);
    expect(field.element.querySelector('.problem')!.textContent).toBe('Not now.');
  });
});
