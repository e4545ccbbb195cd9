import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { writeDesignFile } from '../../../lib/design/designFile.ts';
import { fileOf, profilesIn, renameProfile, takeOutProfile } from '../../../lib/design/profileList.ts';
import { record, startHistory, undo } from '../../../lib/graph/history.ts';
import { applyPatch, initialState, type Patch } from '../../../lib/graph/state.ts';
import { readLink, writeLink } from '../../../notebooks/keeping/designLink.ts';
import { readDesign } from '../../../notebooks/keeping/readDesign.ts';
import { restoreHistory, saveHistory } from '../../../notebooks/keeping/savedHistory.ts';
import { readFileAsPatch, readSavedFileAgain } from '../../../notebooks/measuredFiles.ts';
import { placeInName } from '../../../notebooks/placeInName.ts';
import { addProfileFiles } from '../../../notebooks/profileFiles.ts';
import { planes, predictedTable } from '../../design/profileFamily.ts';
import { succeed } from '../runCommand.ts';

const encode = (text: string) => new TextEncoder().encode(text);
const start = initialState(designGraph);
const files = planes.map((z) => ({ name: `spot z=${z * 1e3} mm.csv`, bytes: encode(predictedTable(z)) }));
const given = applyPatch(designGraph, start, addProfileFiles(files, start.inputs));
const names = (inputs: Patch) => profilesIn(inputs).map((item) => item && fileOf(item).name);
const text = (inputs: Patch) => writeDesignFile(designGraph, { inputs });

describe('several files given at once', () => {
  it('are taken in one patch, the first in front, in the planes that their names say', () => {
    expect(names(given.inputs)).toEqual(files.map(({ name }) => name));
    const places = profilesIn(given.inputs).map((item) => item!['spot.measuredProfileZ']);
    expect(places).toEqual(planes.map((z) => expect.closeTo(z, 12)));
  });

  it('one alone is placed by its name as well', () => {
    const { name, bytes } = files[1]!;
    const patch = readFileAsPatch('spot.measuredProfile', bytes, name);
    expect(patch['spot.measuredProfilePlane']).toBe('typed');
    expect(patch['spot.measuredProfileZ']).toBeCloseTo(planes[1], 12);
  });

  it('all or none: a damaged one is named, and nothing changes', () => {
    const before = { ...given.inputs };
    const damaged = { name: 'torn.csv', bytes: encode('r (um);fluence (J/m^2)\n0;1\n1;x\n2;1\n') };
    const add = (inputs: Patch) => () => addProfileFiles([files[0]!, damaged], inputs);
    expect(add(given.inputs)).toThrow(/"torn\.csv".*3.*The profiles given before stay as they were\.$/s);
    expect(add(start.inputs)).toThrow(/"torn\.csv".*None of the files was taken\.$/s);
    expect(given.inputs).toEqual(before);
  });

  it.each([
    ['spot z=0.05 mm.csv', 0.05e-3],
    ['Z_-50um.png', -50e-6],
    ['scan z 0,2mm (3).csv', 0.2e-3],
    ['z=−20 µm', -20e-6],
    ['spot.csv', undefined],
    ['gauze5mm.csv', undefined],
    ['z=5.csv', undefined],
    ['z=900 mm.csv', undefined],
  ])('%s lies at %s', (name, z) => {
    expect(placeInName(name)).toEqual(z === undefined ? undefined : expect.closeTo(z, 12));
  });
});

describe('measured profiles in a saved design', () => {
  it('come back from its file, each with its name, plane and bytes', () => {
    const renamed = applyPatch(designGraph, given, renameProfile(given.inputs, 1, 'at the flat-top'));
    const { inputs } = readDesign(encode(text(renamed.inputs)), 'design.json');
    expect(profilesIn(inputs)).toEqual(profilesIn(renamed.inputs));
    expect(names(inputs)[1]).toBe('at the flat-top');
    expect(text(inputs)).toBe(text(renamed.inputs));
  });

  it('a design of before the list opens with its one profile', () => {
    const one = applyPatch(designGraph, start, addProfileFiles([files[1]!], start.inputs));
    const older = JSON.parse(text(one.inputs));
    delete older.inputs['spot.otherProfiles'];
    const { inputs } = readDesign(encode(JSON.stringify(older)), 'older.json');
    const opened = { ...start.inputs, ...inputs };
    expect(names(opened)).toEqual([files[1]!.name]);
    expect(opened).toEqual(one.inputs);
  });

  it.each([
    ['no list', '[]', /at spot\.otherProfiles: .* there stands a list, .*Write it as \{"list":/],
    [
      'a text',
      '{"list": "a"}',
      /at spot\.otherProfiles: .* there stands \{"list":"a"\}, where a list of groups/,
    ],
    [
      'a wrong z',
      (saved: string) => saved.replace('"value": 0.000055', '"value": 7'),
      /further measured profiles, number 1: Z of the measured profile of 7000/,
    ],
    [
      'an unknown part',
      (saved: string) => saved.replace('"spot.measuredScaling": {', '"spot.newer": {'),
      /'spot\.newer' is nothing that this program knows of further measured profiles/,
    ],
    [
      'an unknown hash',
      (saved: string) => saved.replace(/"sha256": "[0-9a-f]{8}/, '"sha256": "00000000'),
      /number 1: Measured profile of the spot names the file "spot z=0\.055 mm\.csv", which was not saved/,
    ],
  ])('%s is refused with its place', (_, damage, says) => {
    const design = JSON.parse(text(given.inputs));
    const list = JSON.stringify(design.inputs['spot.otherProfiles'], null, 1);
    design.inputs['spot.otherProfiles'] = JSON.parse(typeof damage === 'string' ? damage : damage(list));
    expect(() => readDesign(encode(JSON.stringify(design)), 'bad.json')).toThrow(says);
  });

  it('go with a link where they fit, else stay behind', async () => {
    const short = {
      name: 'short.csv',
      bytes: encode('r (um);fluence (J/m^2)\n0;1\n5;1\n10;0\n15;0\n20;0\n'),
    };
    const few = applyPatch(designGraph, start, addProfileFiles([short, short], start.inputs));
    const { text: link, leftOut } = await writeLink(few);
    expect([leftOut, names((await readLink(link)).inputs)]).toEqual(['', ['short.csv', 'short.csv']]);
    const long = await writeLink(given);
    expect(long.leftOut).toMatch(/^A link holds 8 kB/);
    expect(names((await readLink(long.text)).inputs)).toEqual([undefined]);
  });

  it('come back by undo, and from a history that the browser kept', () => {
    const without = applyPatch(designGraph, given, takeOutProfile(given.inputs, 2));
    let history = record(startHistory(start), given, true);
    history = record(history, without, true);
    const { saved, files: kept } = saveHistory(history);
    const bytes = new Map(kept.map((file) => [file.sha256, file.bytes]));
    expect(bytes.size).toBe(3);
    const source = { bytesOf: (hash: string) => bytes.get(hash), read: readSavedFileAgain };
    const again = restoreHistory(JSON.parse(JSON.stringify(saved)), source);
    for (const one of [history, again]) {
      expect(names(one.present.inputs)).toEqual(files.slice(0, 2).map(({ name }) => name));
      expect(profilesIn(undo(one).present.inputs)).toEqual(profilesIn(given.inputs));
      expect(names(undo(undo(one)).present.inputs)).toEqual([undefined]);
    }
  });
});

describe('--measured-profile', () => {
  const tables = Object.fromEntries(planes.map((z, i) => [`${i}.csv`, predictedTable(z)]));
  const several = planes.flatMap((z, i) => ['--measured-profile', `${i}.csv`, '--measured-z', `${z} m`]);
  const evaluate = (argv: readonly string[]) => {
    const get = ['--get', 'spot.profileComparisons,spot.measuredProfileZ'];
    return JSON.parse(succeed(['evaluate', ...argv, ...get], tables));
  };

  it('given several times, each with its z, compares each in its plane; the first is looked at closely', () => {
    const found = evaluate(several);
    const { compared } = found['spot.profileComparisons'].value;
    expect(compared.map(({ name }: { name: string }) => name)).toEqual(['0.csv', '1.csv', '2.csv']);
    for (const { deviation } of compared) expect(deviation).toBeLessThan(1e-6);
    expect(found['spot.measuredProfileZ'].value).toBe(planes[0]);
  });

  it('takes the place of the profiles of a design', () => {
    const design = text(given.inputs);
    tables['design.json'] = design;
    const kept = evaluate(['design.json'])['spot.profileComparisons'].value.compared;
    expect(kept).toHaveLength(3);
    const one = evaluate(['design.json', '--measured-profile', '1.csv'])['spot.profileComparisons'].value;
    expect(one.compared.map(({ name }: { name: string }) => name)).toEqual(['1.csv']);
  });
});
