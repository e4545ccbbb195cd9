import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { writeDesignFile } from '../../../lib/design/designFile.ts';
import { mostAlternatives } from '../../../lib/design/savedStudies.ts';
import { record, startHistory, undo } from '../../../lib/graph/history.ts';
import { applyPatch, type DesignState, initialState, sameDesign } from '../../../lib/graph/state.ts';
import { noStudies, type Studies } from '../../../lib/graph/studies.ts';
import { readLink, writeLink } from '../../../notebooks/keeping/designLink.ts';
import { readDesign } from '../../../notebooks/keeping/readDesign.ts';
import { restoreHistory, saveHistory } from '../../../notebooks/keeping/savedHistory.ts';
import { readFileAsPatch, readSavedFileAgain } from '../../../notebooks/measuredFiles.ts';
import { here } from '../runCommand.ts';
import { fixture } from './designText.ts';

const start = initialState(designGraph);
const bytes = new Uint8Array(readFileSync(here('data/measured/rain-gauge-caustic.csv')));
const measured = applyPatch(
  designGraph,
  start,
  readFileAsPatch('laser.causticTable', bytes, 'rain-gauge-caustic.csv'),
);
const studies: Studies = {
  ...noStudies,
  alternatives: [
    { name: 'As measured', about: 'Größer ½', inputs: measured.inputs },
    { name: 'Open', about: '', inputs: { ...start.inputs, 'plate.stop': 'open', 'lens.focalLength': 0.08 } },
  ],
  requirements: [
    { id: 'match.stepRatio', unit: '1', atLeast: 1, atMost: 1.1, reason: 'even lines' },
    { id: 'later.number', unit: 'J/m^2', atMost: 3, reason: '' },
  ],
};
const state: DesignState = { ...start, studies };

const textOf = (design: DesignState) => new TextEncoder().encode(writeDesignFile(designGraph, design));
const withStudies = (text: string, change: (studies: Record<string, unknown>) => void) => {
  const content = JSON.parse(text);
  change(content.studies);
  return () => readDesign(new TextEncoder().encode(JSON.stringify(content)), 'a.json');
};

/** What can be compared: files are read anew. */
const plain = ({ alternatives, requirements }: Studies) => ({
  alternatives: alternatives.map(({ name, about, inputs }) => ({ name, about, inputs: { ...inputs } })),
  requirements,
});

describe('alternatives and requirements', () => {
  it('come back from a file, each with its files and units', () => {
    const read = readDesign(textOf(state), 'a.json');
    expect(plain(read.studies!)).toEqual(plain(studies));
    expect(writeDesignFile(designGraph, { ...read, inputs: { ...start.inputs, ...read.inputs } })).toBe(
      new TextDecoder().decode(textOf(state)),
    );
  });

  it('come back from a link', async () => {
    const { text, leftOut } = await writeLink(state);
    expect(leftOut).toBe('');
    expect(plain((await readLink(text)).studies!)).toEqual(plain(studies));
  });

  it('travel without their files where a link would be too long', async () => {
    const picture = new Uint8Array(readFileSync(here('data/measured/rain-gauge-beam.png')));
    const { inputs } = applyPatch(
      designGraph,
      measured,
      readFileAsPatch('laser.beamImage', picture, 'beam.png'),
    );
    const { text, leftOut } = await writeLink({
      ...start,
      studies: { ...studies, alternatives: [{ name: 'Pictured', about: '', inputs }] },
    });
    expect(leftOut).toMatch(/^A link holds 8 kB at most/);
    const [alternative] = (await readLink(text)).studies!.alternatives;
    expect(alternative!.inputs['laser.beamImage']).toBe(null);
    expect(alternative!.inputs['laser.beamSource']).toBe('typed');
  });

  it('come back from a kept history, step by step', () => {
    const kept = undo(record(record(startHistory(start), state, true), { ...start, revision: 2 }, true));
    const { saved, files } = saveHistory(kept);
    const source = {
      bytesOf: (hash: string) => files.find(({ sha256 }) => sha256 === hash)?.bytes,
      read: readSavedFileAgain,
    };
    const again = restoreHistory(JSON.parse(JSON.stringify(saved)), source);
    expect(plain(again.present.studies!)).toEqual(plain(studies));
    expect(again.past[0]!.studies ?? noStudies).toEqual(noStudies);
    expect(again.future[0]!.studies ?? noStudies).toEqual(noStudies);
  });

  it('make a design another one', () => {
    expect(sameDesign(state, { ...state })).toBe(true);
    expect(sameDesign(state, start)).toBe(false);
    const other = { ...studies, requirements: [{ ...studies.requirements[0]!, atMost: 1.2 }] };
    expect(sameDesign(state, { ...state, studies: other })).toBe(false);
    const renamed = studies.alternatives.map((one, i) => (i === 0 ? { ...one, name: 'B' } : one));
    expect(sameDesign(state, { ...state, studies: { ...studies, alternatives: renamed } })).toBe(false);
  });

  it('open from the fixture of version 3', () => {
    const { studies: read } = readDesign(fixture('design-v3.json'), 'design-v3.json');
    expect(read!.alternatives.map(({ name, inputs }) => [name, inputs['plate.stop']])).toEqual([
      ['No stop', 'open'],
    ]);
    expect(read!.requirements).toEqual([
      { id: 'match.stepRatio', unit: '1', atLeast: 1, atMost: 1.1, reason: 'Even from line to line' },
    ]);
  });
});

describe('damaged alternatives and requirements', () => {
  const text = new TextDecoder().decode(textOf(state));
  it.each([
    [
      'a value that is not allowed',
      withStudies(text, (saved) => {
        const [first] = saved['alternatives'] as { inputs: Record<string, unknown> }[];
        first!.inputs['laser.wavelength'] = { value: -1, unit: 'm' };
      }),
      /'a\.json', at laser\.wavelength of the alternative ‘As measured’: Wavelength of −1\sm is not possible/,
    ],
    [
      'a unit that does not fit',
      withStudies(text, (saved) => {
        saved['requirements'] = [{ id: 'match.stepRatio', unit: 'kg', atMost: 1 }];
      }),
      /at match\.stepRatio: This requirement is given in 'kg', which is no unit for it/,
    ],
    [
      'no bound',
      withStudies(text, (saved) => {
        saved['requirements'] = [{ id: 'match.stepRatio', unit: '1' }];
      }),
      /gives neither atLeast nor atMost/,
    ],
    [
      'more than a page shows',
      withStudies(text, (saved) => {
        saved['alternatives'] = Array.from({ length: mostAlternatives + 1 }, () => ({
          name: 'x',
          inputs: {},
        }));
      }),
      /21 alternatives are too many; up to 20 are kept/,
    ],
    [
      'a list for a name',
      withStudies(text, (saved) => {
        saved['alternatives'] = [{ name: [], inputs: {} }];
      }),
      /studies/,
    ],
  ])('%s: refused in a sentence', (_words, read, says) => {
    expect(read).toThrow(says);
  });

  it('bounds in another unit are read in that of the quantity', () => {
    const read = withStudies(text, (saved) => {
      saved['requirements'] = [{ id: 'focus.rayleighLength', unit: 'um', atLeast: 150, reason: 'room' }];
    })();
    expect(read.studies!.requirements[0]).toMatchObject({ unit: 'm', reason: 'room' });
    expect(read.studies!.requirements[0]!.atLeast).toBeCloseTo(150e-6, 15);
  });
});
