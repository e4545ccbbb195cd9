import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import type { FileSource } from '../../../lib/design/savedInputs.ts';
import { type History, record, startHistory, undo } from '../../../lib/graph/history.ts';
import { applyPatch, type DesignState, initialState, type Patch } from '../../../lib/graph/state.ts';
import { Problem } from '../../../lib/problem.ts';
import { readDesign } from '../../../notebooks/keeping/readDesign.ts';
import { restoreHistory, saveHistory } from '../../../notebooks/keeping/savedHistory.ts';
import { readSavedFileAgain } from '../../../notebooks/measuredFiles.ts';
import { fixture } from './designText.ts';

const opened = readDesign(fixture('design-v2.json'), 'design-v2.json');
const set = (history: History, patch: Patch) =>
  record(history, applyPatch(designGraph, history.present, patch), true);
const take = (history: History, state: Omit<DesignState, 'revision'>) =>
  record(history, { ...state, revision: history.present.revision + 1 }, true);

/** Typed, a file opened with pictures, typed on, a picture taken out, renamed, and one step back. */
function work(): History {
  let history = set(startHistory(initialState(designGraph)), { 'laser.wavelength': 515e-9 });
  history = take(history, { ...opened, inputs: { ...designGraph.initial, ...opened.inputs } });
  history = set(history, { 'laser.beamDiameter': 3e-3, 'plate.stop': 'open' });
  history = set(history, { 'laser.beamImage': null });
  history = take(history, { ...history.present, name: 'Funnel 2' });
  return undo(history);
}

const history = work();
const { saved, files } = saveHistory(history);
const bytes = new Map(files.map((file) => [file.sha256, file.bytes]));
const source: FileSource = { bytesOf: (hash) => bytes.get(hash), read: readSavedFileAgain };
const plain = () => JSON.parse(JSON.stringify(saved));
const withoutRevisions = ({ past, present, future }: History) =>
  [...past, present, ...future].map(({ inputs, name = '', about = '' }) => ({ inputs, name, about }));

describe('a kept history', () => {
  it('comes back with every state, name and file, and where it stood', () => {
    const again = restoreHistory(plain(), source);
    expect(withoutRevisions(again)).toEqual(withoutRevisions(history));
    expect([again.past.length, again.future.length, again.open]).toEqual([4, 1, false]);
    expect(again.present.name).toBe('Rain-gauge funnel');
    expect(undo(again).present.inputs['laser.beamImage']).toEqual(opened.inputs['laser.beamImage']);
  });

  it('holds what changed from step to step, and each file once', () => {
    expect(saved.steps[1]!.inputs).toEqual({ 'laser.wavelength': { value: 515e-9, unit: 'm' } });
    expect(Object.keys(saved.steps[3]!.inputs).sort()).toEqual(['laser.beamDiameter', 'plate.stop']);
    expect(saved.steps[5]).toEqual({ inputs: {}, name: 'Funnel 2' });
    expect(bytes.size).toBe(2);
  });

  it('a thousand steps take no more room than a picture', () => {
    let long = startHistory(initialState(designGraph));
    for (let i = 0; i < 1000; i++) long = set(long, { 'laser.beamDiameter': (3 + i / 1000) * 1e-3 });
    expect(JSON.stringify(saveHistory(long).saved).length).toBeLessThan(100_000);
  });

  it('keeps ids that this program does not know', () => {
    const data = plain();
    data.steps[4].inputs['later.thing'] = { value: 1, unit: 'm' };
    const { present } = restoreHistory(data, source);
    expect(present.kept?.inputs).toEqual({ 'later.thing': { value: 1, unit: 'm' } });
  });

  it('comes back without undo where a former state cannot be read', () => {
    const data = plain();
    data.steps[1].inputs['laser.wavelength'].value = 5;
    const again = restoreHistory(data, source);
    expect(again.past).toEqual([]);
    expect(withoutRevisions(again)).toEqual([withoutRevisions(history)[4]]);
  });

  it.each([
    ['null', null],
    ['a list', []],
    ['without steps', { ...plain(), steps: [] }],
    ['of another version', { ...plain(), version: 2 }],
    ['standing beyond its end', { ...plain(), at: 6 }],
    [
      'with a present value out of range',
      { ...plain(), steps: [{ inputs: { 'laser.wavelength': { value: 5, unit: 'm' } } }], at: 0 },
    ],
  ])('%s: a Problem', (_name, data) => {
    expect(() => restoreHistory(data, source)).toThrow(Problem);
  });

  it('without the bytes of a picture that the present design needs: a Problem that names it', () => {
    const present = undo(history);
    const kept = saveHistory(present).saved;
    expect(() => restoreHistory(kept, { ...source, bytesOf: () => undefined })).toThrow(/"beam\.png"/);
  });
});
