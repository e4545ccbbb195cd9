import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import type { ComparedProfile, ProfileComparisons } from '../../lib/design/profileComparisons.ts';
import { addProfile, fileOf, profilesIn } from '../../lib/design/profileList.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import { Problem } from '../../lib/problem.ts';
import type { ChoicesSpec } from '../../notebooks/choicesSpec.ts';
import type { FigureSpec } from '../../notebooks/document.ts';
import { profilesFigures, profilesTable } from '../../notebooks/profileListBlocks.ts';
import { profilesSaid } from '../../notebooks/profileListSentences.ts';
import { planes, predictedAsMeasured } from '../design/profileFamily.ts';
import { outcomesOf } from './designOutcomes.ts';

type Inputs = Readonly<Record<string, unknown>>;
const change = (inputs: Inputs, patch: Patch) =>
  applyPatch(designGraph, { inputs, revision: 0 }, patch).inputs;
const start = initialState(designGraph).inputs;
/** Given from behind the focus to before it. */
const family = [...planes]
  .reverse()
  .reduce<Inputs>((inputs, z) => change(inputs, addProfile(inputs, predictedAsMeasured(z), z)), start);

/** What a block shows for the inputs. */
function viewOf(block: typeof profilesTable | typeof profilesFigures, inputs: Inputs): unknown {
  const outcomeOf = outcomesOf(inputs);
  const values = Object.entries(block.from).map(([key, { id }]) => {
    const outcome = outcomeOf(id);
    if (!hasValue(outcome)) throw new Error(outcome.problem.message);
    return [key, outcome.value];
  });
  return block.view(Object.fromEntries(values));
}

const tableOf = (inputs: Inputs) => viewOf(profilesTable, inputs) as ChoicesSpec;
const chartsOf = (inputs: Inputs) => viewOf(profilesFigures, inputs) as readonly FigureSpec[];
const names = (inputs: Inputs) => profilesIn(inputs).map((item) => item && fileOf(item).name);

describe('the list of measured profiles', () => {
  const { rows, caption, columns } = tableOf(family);

  it('knows each row again after another is looked at, renamed or moved', () => {
    const keys = rows.map(({ key }) => key);
    expect(new Set(keys).size).toBe(rows.length);
    const looked = change(family, rows[2]!.patch);
    expect(tableOf(looked).rows.map(({ key }) => key)).toEqual(keys);
    const renamed = change(looked, tableOf(looked).rows[2]!.acts!.rename.patch('otherwise'));
    expect(tableOf(renamed).rows.map(({ key }) => key)).toEqual(keys);
    const moved = change(renamed, { 'spot.measuredProfileZ': -1e-3 });
    expect(tableOf(moved).rows.map(({ key }) => key)).toEqual([keys[2], keys[0], keys[1]]);
  });

  it('has a row for each along z, with measured and predicted width and their difference', () => {
    expect(columns).toHaveLength(1 + rows[0]!.cells.length);
    expect(rows.map(({ cells }) => cells[0])).toEqual(['−0.12\u202fmm', '0.055\u202fmm', '0.2\u202fmm']);
    for (const { cells } of rows) {
      expect(cells[1]).toBe(cells[2]);
      expect(cells.slice(3)).toEqual(['0\u202f%', '0\u202f%']);
    }
    expect(rows.map(({ chosen }) => chosen)).toEqual([true, false, false]);
    expect(caption).toMatch(/the settings of the picture or table belong to ‘z = -120 µm’$/);
  });

  it('its rows bring a profile, rename it and take it out, each the one that it names', () => {
    for (const [i, { name, patch, acts }] of rows.entries()) {
      expect(names(change(family, patch))[0]).toBe(name);
      const left = names(change(family, acts!.takeOut.patch));
      expect(left).toHaveLength(2);
      expect(left).not.toContain(name);
      expect(names(change(family, acts!.rename.patch('new')))).toEqual(names(family).with(i, 'new'));
      expect(() => acts!.rename.patch(' ')).toThrow(Problem);
    }
  });

  it('shows a wrong plane as a difference, and says by how much it is wider or narrower', () => {
    const wrong = change(family, { 'spot.measuredProfileZ': planes[2] });
    const row = tableOf(wrong).rows.find(({ chosen }) => chosen)!;
    expect(row.cells[0]).toBe('0.2\u202fmm');
    expect(row.cells[3]).toMatch(/^[+−]\d/);
    expect(Number.parseFloat(row.cells[4]!)).toBeGreaterThan(10);
  });

  it('says why one is not compared, and leaves its numbers out', () => {
    const far = change(family, { 'spot.measuredProfileZ': 0.05 });
    const row = tableOf(far).rows.find(({ chosen }) => chosen)!;
    expect(row.cells.slice(1)).toEqual(['—', '—', '—', '—']);
    expect(row.about).toMatch(/too far from the focus/);
    expect(chartsOf(far)).toHaveLength(2);
  });

  it('names none as looked at where that one was taken out', () => {
    expect(tableOf(change(family, { 'spot.measuredProfile': null })).caption).toBe(
      'Measured profiles along z',
    );
  });
});

describe('the charts beside each other', () => {
  it('are one for each profile along z, all on the same axes', () => {
    const charts = chartsOf(family);
    expect(charts.map(({ title }) => title)).toEqual(
      planes.map((z) => expect.stringContaining(`z = ${z * 1e6} µm, z = `)),
    );
    for (const { x, y, series } of charts) {
      expect([x.domain, y.domain]).toEqual([charts[0]!.x.domain, charts[0]!.y.domain]);
      expect(series.map(({ role }) => role)).toEqual(['second', 'main', 'band']);
      for (const { y: column } of series) expect(Math.max(...column)).toBeLessThan(y.domain[1]);
    }
  });

  it('are none for one profile, which has a figure of its own', () => {
    const one = change(start, addProfile(start, predictedAsMeasured(0)));
    expect(chartsOf(one)).toEqual([]);
    expect(tableOf(one).rows).toHaveLength(1);
  });
});

describe('what is said of all widths', () => {
  const profile = (name: string, width: number) =>
    ({ name, width: width * 1e-5, predictedWidth: 1e-5 }) as ComparedProfile;
  const said = (...compared: ComparedProfile[]) => profilesSaid({ compared, refused: [] });
  const refused = [{ place: 1, name: 'c', why: 'It is too far away.' }];

  it.each([
    [said(profile('a', 1.04)), 'The profile is as wide as predicted to 5\u202f%.'],
    [said(profile('a', 1.02), profile('b', 0.96)), 'Both profiles are as wide as predicted to 5\u202f%.'],
    [
      said(profile('a', 0.8)),
      'The profile is 20\u202f% narrower than predicted. Look first at the z given for it.',
    ],
    [
      said(profile('a', 1), profile('b', 1.12)),
      'Of 2 profiles 1 differs in width by more than 5\u202f%; ‘b’ is 12\u202f% wider than predicted. Look first at the z given for it.',
    ],
    [
      said(profile('a', 1.1), profile('b', 0.7)),
      'Both profiles differ in width by more than 5\u202f%; ‘b’ most: it is 30\u202f% narrower than predicted. Look first at the z given for it.',
    ],
    [
      said(profile('a', 1.1), profile('b', 1.3), profile('d', 1)),
      'Of 3 profiles 2 differ in width by more than 5\u202f%; ‘b’ most: it is 30\u202f% wider than predicted. Look first at the z given for it.',
    ],
    [profilesSaid({ compared: [], refused }), '‘c’ is not compared. It is too far away.'],
    [
      profilesSaid({ compared: [profile('a', 1)], refused } as ProfileComparisons),
      'The profile is as wide as predicted to 5\u202f%. ‘c’ is not compared. It is too far away.',
    ],
  ])('%s', (text, expected) => {
    expect(text.replaceAll('\u00a0', '\u202f')).toBe(expected);
  });
});
