import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { beamDiameter, wavelength } from '../../lib/design/laser.ts';
import { createDrafts, draftText, knownDrafts } from '../../notebooks/page/controls/drafts.ts';
import { createNumberField } from '../../notebooks/page/controls/numberField.ts';
import { createLive } from '../../notebooks/page/live.ts';

const id = beamDiameter.id;
const draft = (text: string, input = id, unit = 'mm') => ({ input, text, unit });

/** Two fields of one input on a page, as the panel and the trace have them. */
function open(before: readonly ReturnType<typeof draft>[] = []) {
  const live = createLive(designGraph);
  const drafts = createDrafts(live);
  drafts.restore(before);
  const told: string[] = [];
  drafts.onChange((input) => told.push(input));
  const { document, window } = parseHTML('<html><body></body></html>');
  const make = () => {
    const set = (value: number) => live.set({ [id]: value });
    const field = createNumberField(document, beamDiameter, set, drafts);
    document.body.append(field.element);
    drafts.onChange((input) => input === id && field.recall!());
    live.onState(({ inputs }) => field.update(inputs[id]));
    const text = field.element.querySelector<HTMLInputElement>('input[type=text]')!;
    return {
      field,
      text,
      waiting: () => field.element.querySelector('.field-waiting')!.textContent,
      type: (typed: string) => {
        text.value = typed;
        text.dispatchEvent(new window.Event('input'));
      },
      press: (key: string) =>
        text.dispatchEvent(Object.assign(new window.Event('keydown', { cancelable: true }), { key })),
    };
  };
  return { live, drafts, told, first: make(), second: make() };
}

describe('what is typed and not taken', () => {
  it('is kept with each key, and changes nothing', () => {
    const { live, drafts, told, first } = open();
    const before = live.state();
    first.type('4');
    first.type('4.2');
    expect(drafts.all()).toEqual([draft('4.2')]);
    expect(told).toEqual([id, id]);
    expect(live.state()).toBe(before);
  });

  it.each([
    ['Enter', '4.2', '4.2\u202fmm', 4.2e-3],
    ['Escape', '4.2', '5\u202fmm', 5e-3],
    ['Enter', '5.0', '5.0\u202fmm', 5e-3],
  ])('falls with %s after %s', (key, typed, reads, value) => {
    const { live, drafts, first, second } = open();
    first.type(typed);
    expect(second.text.value).toBe(typed);
    first.press(key);
    expect(drafts.all()).toEqual([]);
    expect(first.text.value).toBe(reads);
    expect(live.state().inputs[id]).toBe(value);
    expect(second.waiting()).toBe('');
    expect(Number.parseFloat(second.text.value)).toBe(value * 1e3);
  });

  it('stays where it cannot be taken, and falls when it is emptied or the value changes from elsewhere', () => {
    const { live, drafts, first } = open();
    first.type('5 kg');
    first.press('Enter');
    expect(drafts.of(id)).toEqual(draft('5 kg'));
    expect(first.text.getAttribute('aria-invalid')).toBe('true');
    first.type('');
    expect([drafts.of(id), first.text.value]).toEqual([undefined, '']);
    first.type('4');
    live.set({ [wavelength.id]: 515e-9 });
    expect(drafts.of(id)).toEqual(draft('4'));
    live.set({ [id]: 3e-3 });
    expect([drafts.of(id), first.text.value]).toEqual([undefined, '3\u202fmm']);
  });

  it('that came back stands in the field and says that it does not count', () => {
    const { live, drafts, first } = open([draft('4.2')]);
    first.field.update(5e-3);
    expect(first.text.value).toBe('4.2');
    expect(first.waiting()).toBe('Not taken yet: Enter takes it, Escape brings back 5\u202fmm.');
    expect(live.state().inputs[id]).toBe(5e-3);
    first.press('Enter');
    expect(live.state().inputs[id]).toBe(4.2e-3);
    expect([first.waiting(), drafts.all().length]).toEqual(['', 0]);
  });

  it('that is restored later, or no more, reaches fields that are there', () => {
    const { drafts, first, second } = open();
    drafts.restore([draft('9 kg')]);
    expect([first.text.value, second.text.value]).toEqual(['9 kg', '9 kg']);
    drafts.restore([]);
    expect([first.text.value, first.waiting()]).toEqual(['5\u202fmm', '']);
  });
});

describe('drafts of another day', () => {
  it.each([
    ['4.2', 'mm', '4.2'],
    ['4.2', 'um', '4.2\u202fµm'],
    ['4.2 nm', 'um', '4.2 nm'],
    ['4..2', 'um', '4..2'],
    ['abc', 'um', 'abc'],
  ])('%s in %s reads %s in a field of mm', (text, unit, reads) => {
    expect(draftText(beamDiameter, draft(text, id, unit))).toBe(reads);
  });

  it('are left out where nothing takes them', () => {
    const good = draft('4');
    const strange = [null, 7, {}, draft('1', 'later.thing'), draft('1', 'plate.stop'), { ...good, text: 4 }];
    expect(knownDrafts(designGraph, [...strange, good])).toEqual([good]);
    for (const data of [undefined, null, 'x', {}]) expect(knownDrafts(designGraph, data)).toEqual([]);
  });
});
