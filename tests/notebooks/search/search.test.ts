import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { documents } from '../../../notebooks/contents.ts';
import { generalCautions } from '../../../notebooks/generalCautions.ts';
import { lessons } from '../../../notebooks/lessons/lessons.ts';
import { cautionCalls, cautionsAddress } from '../../../notebooks/search/cautionEntries.ts';
import { plainTex, searchEntries } from '../../../notebooks/search/searchEntries.ts';
import { createSearch } from '../../../notebooks/search/searchIndex.ts';
import { words } from '../../../notebooks/words/words.ts';

const entries = searchEntries({
  documents,
  quantities: designGraph.quantities.values(),
  words,
  lessons,
  lectures: [{ id: 'half-a-wave', title: 'Why half a wave in the middle makes a flat spot' }],
});
const find = createSearch(entries);
const names = (typed: string) => find(typed).flatMap(({ entries }) => entries.map(({ name }) => name));
const keys = (typed: string) => find(typed).flatMap(({ entries }) => entries.map(({ key }) => key));

describe('what can be found', () => {
  it('is everything there is, each once and each leading somewhere', () => {
    expect(new Set(entries.map(({ key }) => key)).size).toBe(entries.length);
    for (const { key, to, quantity, name } of entries) {
      expect([to, quantity].filter((way) => way !== undefined).length, key).toBe(1);
      expect(name.trim(), key).not.toBe('');
    }
    const count = (kind: string) => entries.filter((entry) => entry.kind === kind).length;
    expect(count('document')).toBe(documents.length);
    expect(count('number')).toBe(designGraph.quantities.size);
    expect(count('word')).toBe(words.length);
    expect(count('lesson')).toBe(lessons.length);
    expect(count('part')).toBeGreaterThan(150);
  });

  it('holds each caution once, and all cautions before any setting', () => {
    const cautions = entries.filter(({ kind }) => kind === 'caution');
    expect(cautions.filter(({ to }) => to === cautionsAddress).length).toBe(generalCautions.length);
    const names = cautions.map(({ name, beside, to }) => `${name}, ${beside}${to === cautionsAddress}`);
    expect(new Set(names).size).toBe(names.length);
    for (const about of Object.keys(cautionCalls))
      expect(generalCautions.map(([title]) => title)).toContain(about);
    const shown = documents.flatMap(({ blocks }) => blocks.filter(({ kind }) => kind === 'caution'));
    for (const { id } of shown)
      expect(
        cautions.some(({ to }) => to!.endsWith(`/${id}`)),
        id,
      ).toBe(true);
  });

  it('leads to blocks that there are', () => {
    const blocks = new Set(documents.flatMap(({ id, blocks }) => blocks.map((block) => `${id}/${block.id}`)));
    for (const { kind, to } of entries)
      if (kind === 'part' || (kind === 'caution' && to !== cautionsAddress))
        expect(blocks.has(to!), to).toBe(true);
  });
});

describe('the search', () => {
  it('puts what is called like that first', () => {
    for (const [typed, key] of [
      ['Rayleigh length', 'words/rayleigh-length'],
      ['through the focus', 'through-focus'],
      ['ripples', 'ripples'],
      ['laser.pulseDuration', 'number laser.pulseDuration'],
      ['write-up', 'write-up'],
      ['the middle makes a flat spot', 'lectures/half-a-wave'],
    ] as const)
      expect(keys(typed)[0], typed).toBe(key);
  });

  it('finds every document by its title, every word by its name, every number by its id', () => {
    for (const { id, title } of documents) expect(keys(title), title).toContain(id);
    for (const { id, word } of words) expect(keys(word), word).toContain(`words/${id}`);
    for (const id of ['spot.width', 'match.stepRatio', 'heat.rise', 'scaleUp.timePerSquareMetre'])
      expect(keys(id), id).toContain(`number ${id}`);
  });

  it('does not mind order, beginnings, a wrong letter or the other English', () => {
    expect(keys('length rayleigh')[0]).toBe('words/rayleigh-length');
    expect(keys('rayl')).toContain('words/rayleigh-length');
    expect(keys('raleigh lenght')).toContain('words/rayleigh-length');
    expect(keys('polarization')).toContain('words/polarisation');
    expect(keys('treshold fluence')).toContain('words/threshold');
    expect(keys('kerf taper')).toContain('words/taper');
  });

  it('knows symbols, Greek ones and raised digits', () => {
    expect(keys('κ')).toContain('words/step-ratio');
    expect(keys('kappa')).toContain('words/step-ratio');
    expect(keys('m2')).toContain('words/propagation-ratio');
    expect(keys('M²')).toContain('words/propagation-ratio');
    expect(keys('FWHM')[0]).toBe('words/full-width');
    expect(keys('d4σ')).toContain('words/d4-sigma');
    expect(plainTex('\\kappa_\\text{dark}').trim()).toBe('kappa dark');
  });

  it('finds what is written as one word, with a slip, or in a heading of the ways', () => {
    for (const [typed, key] of [
      ['flattop', 'words/flat-top'],
      ['flat top', 'words/flat-top'],
      ['fluense', 'words/fluence'],
      ['new in the lab', 'reading/newcomer'],
      ['I am new in the lab', 'reading/newcomer'],
      ['where do i start', 'reading/newcomer'],
      ['Where do I begin?', 'reading/newcomer'],
      ['beginner', 'reading/newcomer'],
      ['where to begin', 'reading'],
      ['teaching', 'reading/lecturer'],
      ['lazer', 'words/laser-class'],
      ['tophat', 'words/flat-top'],
    ] as const)
      expect(keys(typed)[0], typed).toBe(key);
    expect(names('where can I start')).toContain('I am new in the lab');
  });

  it('leads from a material, and from any other way of a choice, to its input', () => {
    const of = (typed: string) => find(typed)[0]!.entries[0]!;
    for (const material of ['copper', 'stainless steel', 'silicon', 'tungsten'])
      expect(of(material), material).toMatchObject({ name: material, quantity: 'workpiece.material' });
    expect(of('steel').quantity).toBe('workpiece.material');
    const ways = find('fused silica').find(({ kind }) => kind === 'option')!;
    expect(ways.entries[0]!.quantity).toBe('plate.glass');
  });

  it('puts pages before numbers where both are called so, and what is called so before what only holds it', () => {
    const order = (typed: string) => find(typed).map(({ kind }) => kind);
    for (const typed of ['ripples', 'threshold', 'plate', 'beam', 'fluence']) {
      const kinds = order(typed);
      expect(kinds.indexOf('document'), typed).toBeGreaterThanOrEqual(0);
      expect(kinds.indexOf('document'), typed).toBeLessThan(kinds.indexOf('number'));
    }
    expect(keys('pulse duration').slice(0, 1)).toEqual(['words/pulse-duration']);
    expect(find('pulse duration').find(({ kind }) => kind === 'number')!.entries[0]!.quantity).toBe(
      'laser.pulseDuration',
    );
    expect(keys('M2')[0]).toBe('words/propagation-ratio');
    expect(keys('plate')[0]).toBe('words/plate');
  });

  it('leads to the cautions first from whatever people call a danger', () => {
    for (const typed of [
      ...['goggles', 'safety glasses', 'glasses', 'Safety', 'eye protection', 'eyes', 'danger', 'class 4'],
      ...['X-ray', 'xrays', 'fumes', 'fire', 'burnt skin', 'smoke', 'dust', 'risk', 'radiation', 'food'],
    ]) {
      const [group] = find(typed);
      expect(group?.kind, typed).toBe('caution');
      expect(group!.entries[0]!.to, typed).toBe(cautionsAddress);
    }
    expect(find('fume')[0]!.entries[0]!.name).toBe('Fume and nanoparticles');
    expect(find('x-rays')[0]!.entries[0]!.name).toBe('X-rays');
    // While one still types, or types wrongly.
    for (const typed of ['gogg', 'gogles', 'eyewaer']) expect(find(typed)[0]!.kind, typed).toBe('caution');
    for (const typed of ['glass of the plate', 'alignment', 'spot diameter', 'fluence', 'first'])
      expect(find(typed)[0]!.kind, typed).not.toBe('caution');
  });

  it('finds other words when there is nothing that holds all of them', () => {
    expect(names('flat-top unicorn')).toContain('Flat-top');
  });

  it('finds nothing for nothing, and says nothing of what is not there', () => {
    for (const typed of ['', '   ', '***', 'zzqqxx', '\\', '('.repeat(50)]) expect(names(typed)).toEqual([]);
  });

  it('gives a few of each kind and says how many more there are', () => {
    const groups = find('fluence');
    for (const { entries, more } of groups) {
      expect(entries.length).toBeLessThanOrEqual(6);
      if (more > 0) expect(entries.length).toBe(6);
    }
    expect(groups.some(({ more }) => more > 0)).toBe(true);
    expect(new Set(groups.map(({ kind }) => kind)).size).toBe(groups.length);
  });
});
