import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { workpieceZ } from '../../lib/design/focus.ts';
import { wavelength } from '../../lib/design/laser.ts';
import { designPhase, stepDiameter, typedIndex } from '../../lib/design/plate.ts';
import { spots } from '../../lib/design/scaleUpInputs.ts';
import type { NumberInput } from '../../lib/graph/quantity.ts';
import { checkInput } from '../../lib/graph/state.ts';
import type { Setting } from '../../notebooks/page/controls/field.ts';
import { createNumberField } from '../../notebooks/page/controls/numberField.ts';
import { expectClose } from '../close.ts';

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

  it('rounds what must be a whole number, and shows what counts', () => {
    const { text, calls, type } = open(spots);
    type('2.5');
    expect(calls.at(-1)![0]).toBe(3);
    expect(text.value).toBe('3');
    type('7');
    expect([calls.at(-1)![0], text.value]).toEqual([7, '7']);
  });

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

  it('takes what it said of a refused text back with the first edit', () => {
    const { text, calls, type, problem, fire } = open(wavelength);
    type('abc');
    expect(problem()).toContain('still counts');
    expect(text.getAttribute('aria-invalid')).toBe('true');
    text.value = 'ab';
    fire('input');
    expect(problem()).toBe('');
    expect(text.hasAttribute('aria-invalid')).toBe(false);
    text.value = '';
    fire('input');
    expect(problem()).toBe('');
    // What stands there when the field is left is still judged.
    text.value = 'ab';
    fire('blur');
    expect(problem()).toContain('still counts');
    type('800');
    expect([problem(), calls.length]).toEqual(['', 1]);
  });

  it('takes one stop of Tab beside its help: arrow keys in the text do what the slider does', () => {
    const { field, press, calls } = open(stepDiameter);
    const stops = [...field.element.querySelectorAll('input, summary, button, select, a')].filter(
      (control) => control.getAttribute('tabindex') !== '-1',
    );
    expect(stops.map((control) => control.className || control.localName)).toEqual(['summary', 'field-text']);
    press('ArrowUp');
    expect(calls.at(-1)![0]).toBeGreaterThan(stepDiameter.initial);
  });

  it('takes a plain number in the unit it shows', () => {
    const { calls, type } = open(wavelength);
    type('800');
    expectClose(calls[0]![0], 800e-9, { relative: 1e-15, absolute: 0 });
  });

  it.each([
    ['800', '800\u202fnm', wavelength, 800e-9],
    [' 800,1234 ', '800,1234\u202fnm', wavelength, 800.1234e-9],
    ['1 030', '1 030\u202fnm', wavelength, 1030e-9],
    ['1.030,5 nm', '1.030,5 nm', wavelength, 1030.5e-9],
    ['0.8 µm', '0.8 µm', wavelength, 800e-9],
    ['1', '1\u202fwave', designPhase, 2 * Math.PI],
    ['0.4', '0.4\u202fwaves', designPhase, 0.8 * Math.PI],
    ['π', 'π', designPhase, Math.PI],
    ['1.5', '1.5', typedIndex, 1.5],
  ] as const)('"%s" then reads "%s"', (typed, reads, input, value) => {
    const { text, calls, type, fire } = open(input);
    type(typed);
    expect(text.value).toBe(reads);
    fire('blur');
    expectClose(calls[0]![0], value, { relative: 1e-15, absolute: 0 });
    expect(calls).toHaveLength(1);
  });

  it('says which value the page goes on with, typed or from elsewhere, while it cannot take the text', () => {
    const { field, type, problem } = open(wavelength);
    type('5 kg');
    expect(problem()).toMatch(/belongs here\. 1030\snm still counts\.$/);
    type('0.8 µm');
    expect(problem()).toBe('');
    type('9 nm');
    expect(problem()).toMatch(/^Wavelength of 9\snm is not possible.* 800\snm still counts\.$/);
    field.update(515e-9);
    expect(problem()).toBe('');
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

  it('follows another usual span with slider and steps; what may be typed stays the same', () => {
    const { field, calls, press, type } = open(workpieceZ);
    const slider = field.element.querySelector<HTMLInputElement>('input[type=range]')!;
    const slide = (place: string) => {
      slider.value = place;
      slider.dispatchEvent(new slider.ownerDocument.defaultView!.Event('input'));
    };
    field.respan!(-0.02, 0.02);
    expect([slider.getAttribute('max'), slider.getAttribute('aria-valuetext')]).toEqual(['400', '0\u202fmm']);
    slide('400');
    expect(calls.at(-1)![0]).toBe(0.02);
    field.update(0);
    press('ArrowUp');
    expectClose(calls.at(-1)![0], 0.2e-3, { relative: 1e-12, source: '1 % of half the span' });
    type('90 mm');
    expect(calls.at(-1)![0]).toBe(0.09);
    // Ends beyond the range are taken as far as it goes; a span without extent changes nothing.
    field.respan!(-7, 7);
    field.respan!(1, 2);
    slide(slider.getAttribute('max')!);
    expect(calls.at(-1)![0]).toBe(0.1);
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
