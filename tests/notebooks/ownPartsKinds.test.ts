import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import type { PartKind } from '../../lib/design/ownParts.ts';
import { readPartsFile } from '../../lib/design/ownPartsFile.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import { openList } from '../../notebooks/page/controls/ownPartsFiles.ts';
import { keepingSentence } from '../../notebooks/page/controls/ownPartsForm.ts';
import { openOwnParts } from './openOwnParts.ts';

const start = initialState(designGraph);
const today = (patch: Patch = {}) => applyPatch(designGraph, start, patch).inputs;

describe('own parts: plates', () => {
  it('a designed plate becomes a made one, in the list and in the design, in one step', async () => {
    const { keep, chosen, inputs, steps, find, undo, set } = openOwnParts('plate');
    await keep('Half wave');
    expect([chosen(), inputs()['plate.source'], steps()]).toEqual(['Half wave', 'made', 1]);
    expect(find('.own-parts-note').textContent).toBe('height for 0.5 waves at 1030 nm');
    set({ 'laser.wavelength': 515e-9 });
    expect(chosen()).toBe('Half wave');
    undo();
    undo();
    expect([chosen(), inputs()['plate.source']]).toEqual(['not from your list', 'designed']);
  });

  it('keeps the stop only where its edge is said to be the stop', async () => {
    const { keep, find, set, chosen } = openOwnParts('plate');
    const tick = find<HTMLInputElement>('input[type=checkbox]');
    const label = tick.parentElement!;
    expect(label.textContent).toBe('Its own edge is the stop, 14\u202fmm wide: keep that with it');
    await keep('Loose');
    set({ 'plate.apertureDiameter': 20e-3 });
    expect(chosen()).toBe('Loose');
    set({ 'plate.stepDiameter': 9e-3 });
    tick.checked = true;
    await keep('Edged');
    set({ 'plate.apertureDiameter': 21e-3 });
    expect(chosen()).toBe('not from your list');
    set({ 'plate.stop': 'open' });
    expect(label.hidden).toBe(true);
  });

  it('whose height cannot be worked out is not kept', async () => {
    const { keep, set, store, problem } = openOwnParts('plate');
    set({ 'plate.glass': 'typed', 'plate.typedIndex': 1.001 });
    await keep('A');
    expect([problem(), store.value()]).toEqual([expect.stringContaining('Made step height of'), []]);
  });

  it.each<[PartKind, Patch, string]>([
    ['lens', {}, ''],
    ['expander', {}, ''],
    [
      'expander',
      { 'expander.kind': 'lenses' },
      'The distances to the laser’s waist and to the plate belong to the table and are not kept.',
    ],
    ['plate', { 'plate.source': 'made' }, ''],
    [
      'plate',
      {},
      'Designed for 0.5\u202fwaves at 1030\u202fnm, this plate is kept, and used from then on, as made with a step of 1144\u202fnm: a real plate does not change with the laser.',
    ],
    [
      'plate',
      { 'plate.source': 'made', 'plate.glass': 'typed', 'laser.wavelength': 515e-9 },
      'Its typed refractive index belongs to 515\u202fnm.',
    ],
    [
      'plate',
      { 'plate.glass': 'typed' },
      'Designed for 0.5\u202fwaves at 1030\u202fnm, this plate is kept, and used from then on, as made with a step of 1144\u202fnm: a real plate does not change with the laser. Its typed refractive index belongs to 1030\u202fnm.',
    ],
  ])('%s with %j: "%s"', (kind, patch, sentence) => {
    expect(keepingSentence(kind, today(patch))).toBe(sentence);
  });

  it('says why a height is unknown before one tries to keep it', () => {
    const inputs = { ...start.inputs, 'laser.wavelength': 20e-6 };
    expect(keepingSentence('plate', inputs)).toMatch(/index of .* is known from .* type the index\.$/);
  });
});

describe('own parts: files', () => {
  it('saves the whole list as it can be opened again', async () => {
    const { keep, press, saved, store, status } = openOwnParts('lens');
    await keep('A', 'drawer 3');
    await press('Save the list to a file');
    expect(saved[0]![0]).toBe('stepwell-parts.json');
    expect(readPartsFile(saved[0]![1], 'x').parts).toEqual(store.value());
    expect(status()).toBe('The list was saved as stepwell-parts.json.');
  });

  it('opens a list, says what became of each part, and leaves what is there', () => {
    const { store } = openOwnParts('lens');
    const table = (...rows: string[]) => ['name;focal length (mm);maker', ...rows].join('\n');
    expect(openList('lens', store, 'own.csv', table('A;100;', 'B;160;'))).toBe(
      '‘own.csv’: added ‘A’, ‘B’. Left out as unknown: column ‘maker’.',
    );
    expect(openList('lens', store, 'own.TXT', table('A;100;', 'B;200;'))).toBe(
      '‘own.TXT’: nothing new. Already in the list: ‘A’. Left out, since the list has other values under that name: ‘B’. Left out as unknown: column ‘maker’.',
    );
    expect(() => openList('lens', store, 'own.json', '{')).toThrow(/'own\.json' is not a list of parts/);
    expect(store.value().map(({ values }) => values['lens.focalLength'])).toEqual([0.1, 0.16]);
  });

  it('shows what is wrong with a chosen file', async () => {
    const { find, problem, status } = openOwnParts('lens');
    const picker = find<HTMLInputElement>('input[type=file]');
    Object.defineProperty(picker, 'files', { value: [{ name: 'own.json', text: async () => 'no list' }] });
    picker.dispatchEvent(new picker.ownerDocument.defaultView!.Event('change'));
    await new Promise((resolve) => setTimeout(resolve));
    expect([problem(), status()]).toEqual([expect.stringContaining("'own.json' is not a list of parts"), '']);
  });
});
