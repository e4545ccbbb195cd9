import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { openList } from '../../notebooks/page/controls/ownPartsFiles.ts';
import { openOwnParts } from './openOwnParts.ts';

describe('own parts: keeping and choosing', () => {
  it('begins with one sentence and no list', () => {
    const { find, button, list } = openOwnParts('lens');
    expect(find('.own-parts-note').textContent).toMatch(/^The lenses that you own .* in one go\.$/);
    expect(find<HTMLElement>('.own-parts-choice').hidden).toBe(true);
    expect(list.children).toHaveLength(1);
    expect(button('Save the list to a file').hidden).toBe(true);
    expect(button('Remove from the list').hidden).toBe(true);
  });

  it('keeps today’s lens under a name, and then it is the chosen one', async () => {
    const { keep, chosen, find, status, store, steps, options } = openOwnParts('lens');
    await keep('  Scan lens ', 'drawer 3');
    expect(store.value()).toEqual([
      { kind: 'lens', name: 'Scan lens', note: 'drawer 3', values: { 'lens.focalLength': 0.1 } },
    ]);
    expect([options(), chosen()]).toEqual([['not from your list', 'Scan lens'], 'Scan lens']);
    expect(find('.own-parts-note').textContent).toBe('drawer 3');
    expect(status()).toBe('Kept as ‘Scan lens’.');
    expect(steps()).toBe(0);
  });

  it('says when today’s lens is none of the list, and chooses one in one step', async () => {
    const page = openOwnParts('lens');
    await page.keep('Scan lens');
    page.set({ 'lens.focalLength': 0.16 });
    expect([page.chosen(), page.find('.own-parts-note').textContent]).toEqual(['not from your list', '']);
    await page.keep('F 160');
    page.set({ 'lens.focalLength': 0.2 });
    const before = page.steps();
    await page.choose('F 160');
    expect([page.inputs()['lens.focalLength'], page.chosen(), page.steps()]).toEqual([
      0.16,
      'F 160',
      before + 1,
    ]);
    page.undo();
    expect([page.inputs()['lens.focalLength'], page.chosen()]).toEqual([0.2, 'not from your list']);
  });

  it('the first line of the list is a state and cannot be chosen', async () => {
    const { keep, list } = openOwnParts('lens');
    await keep('A');
    expect(list.children[0]!.hasAttribute('disabled')).toBe(true);
  });

  it('lists the names as a person would sort them, other kinds left out', async () => {
    const { keep, set, options, store } = openOwnParts('lens');
    for (const mm of [160, 75, 100]) {
      set({ 'lens.focalLength': mm / 1000 });
      await keep(`F ${mm}`);
    }
    openList('expander', store, 'x.csv', 'name;magnification\nTwofold;2');
    expect(store.value()).toHaveLength(4);
    expect(options().slice(1)).toEqual(['F 75', 'F 100', 'F 160']);
  });

  it.each([
    ['', /name of the lens is empty/],
    ['scan LENS', /already has the lens ‘Scan lens’/],
  ])('explains the name "%s" and keeps nothing', async (name, says) => {
    const { keep, set, problem, status, store, find } = openOwnParts('lens');
    await keep('Scan lens');
    set({ 'lens.focalLength': 0.16 });
    await keep(name, 'typed');
    expect(problem()).toMatch(says);
    expect([status(), store.value().length]).toEqual(['', 1]);
    const [typed, note] = [...find('form').querySelectorAll<HTMLInputElement>('input[type=text]')];
    expect([typed!.value, note!.value]).toEqual([name, 'typed']);
    expect(find(`#${typed!.getAttribute('aria-describedby')}`).textContent).toBe(problem());
  });

  it('of two equal lenses shows the one that was chosen', async () => {
    const { store, choose, chosen, set, field } = openOwnParts('lens');
    openList('lens', store, 'x.csv', 'name;focal length (mm)\nOld;160\nNew;160');
    set({ 'lens.focalLength': 0.16 });
    expect(chosen()).toBe('Old');
    await choose('New');
    field.refresh();
    expect(chosen()).toBe('New');
  });

  it('says where the browser keeps nothing, and works on', async () => {
    const { keep, chosen, field } = openOwnParts('lens', true);
    await keep('A');
    expect(chosen()).toBe('A');
    expect(field.element.textContent).toContain('until the page closes');
  });
});

describe('own parts: changing and removing', () => {
  it('renames, keeps the note that is there, and leaves the design', async () => {
    const { keep, name, note, chosen, store, status, find, inputs } = openOwnParts('lens');
    await keep('Scan lens', 'drawer 3');
    expect([name.value, note.value, find('button[type=submit]').textContent]).toEqual([
      'Scan lens',
      'drawer 3',
      'Change',
    ]);
    await keep('F  100', 'drawer 4');
    expect([chosen(), status()]).toEqual(['F 100', 'Changed to ‘F 100’.']);
    expect(store.value()).toMatchObject([{ name: 'F 100', note: 'drawer 4' }]);
    expect(inputs()).toBe(designGraph.initial);
  });

  it('does not rename to a name that is taken', async () => {
    const { keep, set, problem, chosen } = openOwnParts('lens');
    await keep('A');
    set({ 'lens.focalLength': 0.16 });
    await keep('B');
    await keep('a');
    expect([problem(), chosen()]).toEqual([expect.stringContaining('already has the lens ‘A’'), 'B']);
  });

  it('removes, leaves the inputs, and puts back with one press', async () => {
    const { keep, press, set, store, status, name, note, inputs, find } = openOwnParts('lens');
    set({ 'lens.focalLength': 0.16 });
    await keep('A', 'drawer 3');
    const before = store.value();
    await press('Remove from the list');
    expect([store.value(), inputs()['lens.focalLength']]).toEqual([[], 0.16]);
    expect(status()).toBe('‘A’ is off the list; the inputs stay. ‘Keep’ puts it back.');
    expect([name.value, note.value, find('button[type=submit]').textContent]).toEqual([
      'A',
      'drawer 3',
      'Keep',
    ]);
    await keep(name.value, note.value);
    expect(store.value()).toEqual(before);
  });

  it('removes one of two equal lenses, and the other is then the chosen one', async () => {
    const { store, set, press, chosen, status } = openOwnParts('lens');
    openList('lens', store, 'x.csv', 'name;focal length (mm)\nOld;160\nNew;160');
    set({ 'lens.focalLength': 0.16 });
    await press('Remove from the list');
    expect([chosen(), status()]).toEqual(['New', '‘Old’ is off the list.']);
  });

  it('leaves what is typed while the design moves on', () => {
    const { name, set } = openOwnParts('lens');
    name.value = 'half a na';
    set({ 'lens.focalLength': 0.16 });
    expect(name.value).toBe('half a na');
  });
});
