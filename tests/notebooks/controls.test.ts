import fc from 'fast-check';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { firstFocalLength } from '../../lib/design/expander.ts';
import { workpieceZ } from '../../lib/design/focus.ts';
import { pulseEnergy, repetitionRate, wavelength } from '../../lib/design/laser.ts';
import { designPhase, stepDiameter, stop, typedIndex } from '../../lib/design/plate.ts';
import type { NumberInput } from '../../lib/graph/quantity.ts';
import { checkInput } from '../../lib/graph/state.ts';
import { createChoiceField } from '../../notebooks/page/controls/choiceField.ts';
import { helpText, type Setting } from '../../notebooks/page/controls/field.ts';
import { createNumberField } from '../../notebooks/page/controls/numberField.ts';
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
    ['not onto a value that is left out', firstFocalLength, -1e-3, 1, 2, -1e-3],
    ['not onto an end that is left out', typedIndex, 1.0001, -1, 0.1, 1.0001],
  ] as const)('%s', (_, input, value, direction, fraction, next) => {
    expectClose(stepValue(input, value, direction, fraction), next, { relative: 1e-14, absolute: 0 });
  });

  it('moves every input of the design from its initial value, to a value it allows', () => {
    for (const input of numberInputs) {
      const next = stepValue(input, input.initial, 1, 0.01);
      expect(next, input.id).toBeGreaterThan(input.initial);
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

describe('number field', () => {
  function open(input: NumberInput) {
    const { document, window } = parseHTML('<html><body></body></html>');
    const calls: [number, Setting][] = [];
    const field = createNumberField(document, input, (value, setting) => {
      checkInput(input, value);
      calls.push([value, setting]);
    });
    document.body.append(field.element);
    const text = field.element.querySelector<HTMLInputElement>('input[type=text]')!;
    const press = (key: string, extra: object = {}) =>
      text.dispatchEvent(Object.assign(new window.Event('keydown', { cancelable: true }), { key, ...extra }));
    const type = (typed: string) => {
      text.value = typed;
      press('Enter');
    };
    const problem = () => field.element.querySelector('.problem')!.textContent;
    return {
      field,
      text,
      calls,
      press,
      type,
      problem,
      fire: (name: string) => text.dispatchEvent(new window.Event(name)),
    };
  }

  it('keeps what was typed until the value changes from elsewhere', () => {
    const { field, text, calls, type } = open(wavelength);
    type('1.03 um');
    expect(calls).toEqual([[1.03e-6, { final: true }]]);
    field.update(1.03e-6);
    expect(text.value).toBe('1.03 um');
    field.update(515e-9);
    expect(text.value).toBe('515\u202fnm');
    field.update(515e-9, '0,515 µm');
    expect(text.value).toBe('0,515 µm');
  });

  it('takes a plain number in the unit it shows', () => {
    const { calls, type } = open(wavelength);
    type('800');
    expectClose(calls[0]![0], 800e-9, { relative: 1e-15, absolute: 0 });
  });

  it.each([
    ['5 kg', 'mass'],
    ['abc', 'no number'],
    ['5 mm', 'not possible'],
  ])('explains "%s" beside the field and leaves the design', (typed, reason) => {
    const { text, calls, type, press, problem } = open(wavelength);
    type(typed);
    expect(problem()).toContain(reason);
    expect(text.getAttribute('aria-invalid')).toBe('true');
    expect(text.value).toBe(typed);
    expect(calls).toEqual([]);
    press('Escape');
    expect([text.value, problem(), text.getAttribute('aria-invalid')]).toEqual(['1030\u202fnm', '', null]);
  });

  it('does not set a value that was only looked at', () => {
    const { field, calls, fire } = open(stepDiameter);
    field.update(10.123456e-3);
    fire('focus');
    fire('blur');
    expect(calls).toEqual([]);
  });

  it('makes held arrow keys one final change', () => {
    const { text, calls, press, fire } = open(stepDiameter);
    press('ArrowUp');
    press('ArrowUp', { shiftKey: true });
    fire('keyup');
    expect(calls.map(([, { final }]) => final)).toEqual([false, false, true]);
    expect(text.value).toBe('11\u202fmm');
  });

  it('shows a problem from elsewhere unless what is typed has one of its own', () => {
    const { field, type, problem } = open(stepDiameter);
    field.explain('The step lies outside the stop.');
    expect(problem()).toBe('The step lies outside the stop.');
    type('abc');
    expect(problem()).toContain('abc');
    type('9 mm');
    expect(problem()).toBe('The step lies outside the stop.');
    field.explain();
    expect(problem()).toBe('');
  });

  it('is tied to its label, its help and its problem', () => {
    const { field, text } = open(stepDiameter);
    expect(field.element.querySelector('label')!.getAttribute('for')).toBe(text.id);
    const described = text.getAttribute('aria-describedby')!.split(' ');
    for (const id of described) expect(field.element.querySelector(`#${id}`), id).not.toBeNull();
  });

  it('drags without ends of change, and ends with one', () => {
    const { field, calls, text } = open(stepDiameter);
    const slider = field.element.querySelector<HTMLInputElement>('input[type=range]')!;
    const fire = (name: string) => slider.dispatchEvent(new text.ownerDocument.defaultView!.Event(name));
    slider.value = '0';
    fire('input');
    fire('change');
    expect(calls).toEqual([
      [2e-3, { final: false }],
      [2e-3, { final: true }],
    ]);
    expect(text.value).toBe('2\u202fmm');
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
