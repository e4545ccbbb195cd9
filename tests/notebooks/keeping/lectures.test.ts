import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { writeDesignFile } from '../../../lib/design/designFile.ts';
import { record, startHistory } from '../../../lib/graph/history.ts';
import { originalOf } from '../../../lib/graph/originals.ts';
import { type DesignState, initialState, sameDesign } from '../../../lib/graph/state.ts';
import { type Lecture, noStudies } from '../../../lib/graph/studies.ts';
import { Problem } from '../../../lib/problem.ts';
import { readLink, writeLink } from '../../../notebooks/keeping/designLink.ts';
import { readDesign } from '../../../notebooks/keeping/readDesign.ts';
import { restoreHistory, saveHistory } from '../../../notebooks/keeping/savedHistory.ts';
import { readFileAsPatch, readSavedFileAgain } from '../../../notebooks/measuredFiles.ts';
import { tableLecture } from '../../lectures.ts';
import { here } from '../runCommand.ts';
import { fixture } from './designText.ts';

const start = initialState(designGraph);
const holding = (lectures: readonly Lecture[]): DesignState => ({
  ...start,
  studies: { ...noStudies, lectures },
});
const state = holding([tableLecture]);
const encode = (text: string) => new TextEncoder().encode(text);
const text = writeDesignFile(designGraph, state);
const again = (design: DesignState) => readDesign(encode(writeDesignFile(designGraph, design)), 'a.json');

describe('lectures', () => {
  it('come back from a file', () => {
    const read = again(state);
    expect(read.studies!.lectures).toEqual([tableLecture]);
    expect(writeDesignFile(designGraph, { ...read, inputs: { ...start.inputs, ...read.inputs } })).toBe(text);
  });

  it('come back from a link and from a kept history', async () => {
    expect((await readLink((await writeLink(state)).text)).studies!.lectures).toEqual([tableLecture]);
    const { saved } = saveHistory(record(startHistory(start), { ...state, revision: 1 }, true));
    const kept = restoreHistory(JSON.parse(JSON.stringify(saved)), {
      bytesOf: () => undefined,
      read: readSavedFileAgain,
    });
    expect(kept.present.studies!.lectures).toEqual([tableLecture]);
  });

  it('set inputs in the units of their quantities', () => {
    const content = JSON.parse(text);
    const { sets } = content.studies.lectures[0].steps[1];
    expect(sets).toEqual({
      'laser.beamDiameter': { value: 6e-3, unit: 'm' },
      'plate.stop': { choice: 'open' },
    });
    sets['laser.beamDiameter'] = { value: 6, unit: 'mm' };
    const [lecture] = readDesign(encode(JSON.stringify(content)), 'a.json').studies!.lectures;
    expect(lecture!.steps[1]!.sets).toEqual({ 'laser.beamDiameter': 6e-3, 'plate.stop': 'open' });
  });

  it('keep what a later program sets', () => {
    const content = JSON.parse(text);
    const later = { 'later.thing': { value: 3, unit: 'm' } };
    Object.assign(content.studies.lectures[0].steps[1].sets, later);
    const read = readDesign(encode(JSON.stringify(content)), 'a.json');
    expect(read.studies!.lectures[0]!.steps[1]!.kept).toEqual(later);
    const written = JSON.parse(writeDesignFile(designGraph, read)).studies.lectures[0].steps[1].sets;
    expect(written).toMatchObject({ ...later, 'plate.stop': { choice: 'open' } });
  });

  it('travel with a file that a step sets, and without it where a link would be too long', async () => {
    const bytes = new Uint8Array(readFileSync(here('data/measured/rain-gauge-beam.png')));
    const sets = readFileAsPatch('laser.beamImage', bytes, 'beam.png');
    const design = holding([{ ...tableLecture, steps: [{ ...tableLecture.steps[1]!, sets }] }]);
    const fromFile = again(design).studies!.lectures[0]!.steps[0]!.sets!;
    expect(originalOf(fromFile['laser.beamImage'])!.name).toBe('beam.png');
    const { text: link, leftOut } = await writeLink(design);
    expect(leftOut).toMatch(/^A link holds 8 kB at most/);
    const fromLink = (await readLink(link)).studies!.lectures[0]!.steps[0]!.sets!;
    expect(Object.keys(fromLink)).not.toContain('laser.beamImage');
  });

  it('make a design another one, by whatever differs in them', () => {
    expect(sameDesign(state, holding([structuredClone(tableLecture)]))).toBe(true);
    const [first, second, third] = tableLecture.steps as [never, Lecture['steps'][number], never];
    const others: readonly Lecture[] = [
      { ...tableLecture, title: 'Another' },
      { ...tableLecture, steps: [first, third] },
      {
        ...tableLecture,
        steps: [first, { ...second, sets: { ...second.sets, 'plate.stop': 'round' } }, third],
      },
      { ...tableLecture, steps: [first, { ...second, sets: { 'plate.stop': 'open' } }, third] },
      { ...tableLecture, steps: [first, { ...second, notes: 'Slowly.' }, third] },
    ];
    for (const other of others)
      expect(sameDesign(state, holding([other])), JSON.stringify(other)).toBe(false);
    expect(sameDesign(state, start)).toBe(false);
  });

  it('open from the fixtures of version 5; version 4 had none', async () => {
    expect(readDesign(fixture('design-v5.json'), 'a.json').studies!.lectures).toEqual([tableLecture]);
    expect(readDesign(fixture('design-v4.json'), 'a.json').studies!.lectures).toEqual([]);
    const linked = async (version: number) =>
      (await readLink(fixture(`link-v${version}.txt`).toString('utf8').trim())).studies!.lectures;
    expect(await linked(5)).toEqual([tableLecture]);
    expect(await linked(4)).toEqual([]);
  });
});

describe('damaged lectures are refused in a sentence', () => {
  const [step] = tableLecture.steps;
  const holdingStep = (fields: object) => ({ ...tableLecture, steps: [{ ...step, ...fields }] });
  const ask = (fields: object) => holdingStep({ ask: { question: 'Why?', options: [], from: 0, ...fields } });
  it.each<[string, unknown, RegExp]>([
    ['a list for a lecture', [[]], /lectures/],
    ['an id that an address cannot hold', [{ ...tableLecture, id: 'a/b' }], /lectures.*lecture1.*belongs/],
    [
      'the id of one that comes with the program',
      [{ ...tableLecture, id: 'half-a-wave' }],
      /id in .* is the text "half-a-wave", where a name such as "lecture1" belongs/,
    ],
    ['one id twice', [tableLecture, tableLecture], /Two lectures have the id ‘lecture1’/],
    ['too many', Array(21).fill(tableLecture), /21 lectures are too many; up to 20/],
    [
      'too many steps',
      [{ ...tableLecture, steps: Array(61).fill(step) }],
      /61 steps of ‘Two beams .*up to 60/,
    ],
    [
      'one step twice',
      [{ ...tableLecture, steps: [step, step] }],
      /Two steps of ‘Two beams.* the id ‘step1’/,
    ],
    ['a step without an id', [holdingStep({ id: '' })], /id in .* a word of letters and digits belongs/],
    [
      'too many pieces',
      [holdingStep({ pieces: Array(31).fill({ kind: 'text', text: '' }) })],
      /31 pieces of the step ‘What the plate does’ are too many; up to 30/,
    ],
    ['a strange piece', [holdingStep({ pieces: [{ kind: 'program' }] })], /pieces/],
    [
      'a value that is not possible',
      [holdingStep({ sets: { 'laser.wavelength': { value: -1, unit: 'm' } } })],
      /at laser\.wavelength of the step ‘What the plate does’: Wavelength of −1\sm is not possible/,
    ],
    ['a list for what is set', [holdingStep({ sets: [] })], /sets/],
    ['endless minutes', [holdingStep({ minutes: 1e9 })], /minutes in .* a time of 0 to 240 minutes/],
    ['minutes before it begins', [holdingStep({ minutes: -1 })], /a time of 0 to 240 minutes/],
    ['a book for notes', [holdingStep({ notes: 'x'.repeat(20_001) })], /notes/],
    ['a number for a question', [ask({ question: 3 })], /question/],
    ['more options than number keys', [ask({ options: Array(10).fill('a') })], /10 options of the step/],
    ['pieces withheld from before the first', [ask({ from: -1 })], /from in .*a whole number from 0 on/],
    ['pieces withheld from between two', [ask({ from: 0.5 })], /from in/],
  ])('%s', (_words, lectures, says) => {
    const content = JSON.parse(text);
    content.studies.lectures = JSON.parse(
      JSON.stringify(lectures, (key, value) => (key === 'sets' && 'plate.stop' in value ? undefined : value)),
    );
    const read = () => readDesign(encode(JSON.stringify(content)), 'a.json');
    expect(read).toThrow(Problem);
    expect(read).toThrow(says);
    expect(read).not.toThrow(/undefined|\[object|Invalid|Expected|[Rr]eceived/);
  });
});
