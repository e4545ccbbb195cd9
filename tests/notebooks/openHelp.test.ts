import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { wavelength } from '../../lib/design/laser.ts';
import { stepDiameter } from '../../lib/design/plate.ts';
import { createNumberField } from '../../notebooks/page/controls/numberField.ts';
import { keepOneHelpOpen } from '../../notebooks/page/controls/openHelp.ts';

// Events on their way down, by which Escape and keys are met, need a browser: tests/browser/readers.spec.ts.
describe('notes behind the question marks', () => {
  function open() {
    const { document, window } = parseHTML('<html><body><p>text</p></body></html>');
    keepOneHelpOpen(document);
    for (const input of [wavelength, stepDiameter])
      document.body.append(createNumberField(document, input, () => {}).element);
    const notes = [...document.querySelectorAll<HTMLDetailsElement>('.field-help')];
    const fire = (target: Element, name: string, extra: object = {}) => {
      const event = Object.assign(
        new window.Event(name, { bubbles: name !== 'toggle', cancelable: true }),
        extra,
      );
      target.dispatchEvent(event);
      return event;
    };
    const press = (i: number) => {
      fire(notes[i]!.querySelector('summary')!, 'click');
      notes[i]!.toggleAttribute('open');
      fire(notes[i]!, 'toggle');
    };
    const isOpen = () => notes.map((note) => note.hasAttribute('open'));
    return { document, press, isOpen, fire };
  }

  it('one at a time', () => {
    const { press, isOpen } = open();
    press(0);
    expect(isOpen()).toEqual([true, false]);
    press(1);
    expect(isOpen()).toEqual([false, true]);
    press(1);
    expect(isOpen()).toEqual([false, false]);
  });

  it('a press elsewhere closes it, one on its own words does not', () => {
    const { document, press, isOpen, fire } = open();
    press(0);
    fire(document.querySelector('.field-help-text')!, 'click');
    expect(isOpen()).toEqual([true, false]);
    fire(document.querySelector('p')!, 'click');
    expect(isOpen()).toEqual([false, false]);
  });
});
