import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine, type Engine } from '../../lib/graph/engine.ts';
import { hasValue, valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, type DesignState, initialState } from '../../lib/graph/state.ts';
import type { ChoiceRow } from '../../notebooks/choicesSpec.ts';
import { documents } from '../../notebooks/contents.ts';
import type { ChoicesBlock, RowsBlock } from '../../notebooks/document.ts';
import { readFileAsPatch } from '../../notebooks/measuredFiles.ts';
import { addProfiles } from '../../notebooks/profileFiles.ts';
import { readValues } from '../../notebooks/prose.ts';
import { long } from '../cases.ts';
import { expectClose } from '../close.ts';
import { linkDesigns } from './linkDesigns.ts';

const initial = initialState(designGraph);
const profile = (name: string) => {
  const bytes = readFileSync(new URL('../../data/measured/lecture-table-profile.csv', import.meta.url));
  return readFileAsPatch('spot.measuredProfile', bytes, name)['spot.measuredProfile'] as never;
};
const profiles = addProfiles(
  [
    { profile: profile('one.csv'), z: 0 },
    { profile: profile('two.csv'), z: 50e-6 },
  ],
  initial.inputs,
);
const withProfiles: readonly [string, Readonly<Record<string, unknown>>] = ['two profiles', profiles];
/** Lists are searched for, seconds a row: the long tests take some more designs, and all rows of these. */
const quick = /^initial|^cold-plate|^a table of spots$|^two profiles/;
const more = /^seeded \d{2}|^seeded [3-9]/;
const tried = [...linkDesigns, withProfiles]
  .filter(([name]) => (long ? !more.test(name) : quick.test(name)))
  .map(([name, patch]) => {
    const state = applyPatch(designGraph, initial, patch);
    return { name, state, engine: createEngine(designGraph, state.inputs) };
  });

type Lists = ChoicesBlock | RowsBlock;
const lists = documents.flatMap(({ id, blocks }) =>
  blocks.flatMap((block) =>
    block.kind === 'choices' || block.kind === 'rows' ? [[`${id}/${block.id}`, block] as const] : [],
  ),
);

/** What the list shows; undefined where it stands nowhere. */
function shown<B extends Lists>(block: B, engine: Engine): ReturnType<B['view']> | undefined {
  const outcomeOf = ({ id }: { readonly id: string }) => engine.evaluate([id])[id]!;
  if (!(block.needs ?? []).every((one) => hasValue(outcomeOf(one)))) return undefined;
  const read = readValues(block.from, outcomeOf);
  return 'values' in read ? (block.view(read.values) as ReturnType<B['view']>) : undefined;
}

const keyOf = ({ key, name }: ChoiceRow) => key ?? name;
const value = (engine: Engine, id: string) => valueOrThrow<never>(engine.evaluate([id])[id] as never);
const number = (engine: Engine, id: string): number => value(engine, id);

/** The engine after a row was taken. */
function after(state: DesignState, row: ChoiceRow): Engine {
  return createEngine(designGraph, applyPatch(designGraph, state, row.patch).inputs);
}

/** First and last of a list; in the long tests all, in the designs that the quick ones try. */
const some = <T>(rows: readonly T[], name: string): readonly T[] =>
  (long && quick.test(name)) || rows.length < 3 ? rows : [rows[0]!, rows.at(-1)!];

/** What a row promises besides that it is then the chosen one. */
const promises: Readonly<Record<string, (row: ChoiceRow, then: Engine, before: Engine) => void>> = {
  'through-focus/planes-table': (row, then) =>
    expect(row.cells[0]!.replace(', uneven', '')).toBe(value(then, 'spot.kind')),
  'set-up-sheet/seen-table': (row, then) => expect(row.cells[0]).toBe(value(then, 'spot.kind')),
  'through-focus/measured-profiles': (row, then) =>
    expect((value(then, 'spot.measuredProfile') as { name: string }).name).toBe(row.name),
  'threshold/handbook': (row, then) =>
    expect(row.does).toContain(
      `${number(then, 'threshold.fluence') / 1e4} J/cm²`.replace(' ', row.does.match(/\d(\s)J/)![1]!),
    ),
  'grooves/engraving-turns': (row, then) =>
    expect(row.name).toMatch(new RegExp(`^${Math.round((number(then, 'scan.hatchAngle') * 180) / Math.PI)}`)),
  'throughput/heat-variations': (row, then, before) => {
    const promised = (value(before, 'heat.variations') as { change: string; rise: number }[]).find(
      ({ change }) => change === row.key,
    )!;
    const [today] = value(then, 'heat.variations') as { change: string; rise: number }[];
    expectClose(today!.rise, promised.rise, { relative: 1e-6, source: 'what the row said' });
  },
};

describe('lists whose rows set inputs', () => {
  it('have a check each of what their rows promise', () => {
    const found = lists.flatMap(([key, { kind }]) => (kind === 'choices' ? [key] : []));
    expect(Object.keys(promises).sort()).toEqual(found.sort());
  });

  it.each(lists)('%s: rows come true', { timeout: 900_000 }, (key, block) => {
    let taken = 0;
    for (const { name, state, engine } of tried) {
      if (block.kind === 'rows') {
        taken += leaveOutRows(block, name, state, engine);
        continue;
      }
      const spec = shown(block, engine);
      for (const row of some(spec?.rows ?? [], name)) {
        const then = after(state, row);
        const again = shown(block, then);
        if (key !== 'throughput/heat-variations')
          expect(
            again?.rows.filter(({ chosen }) => chosen).map(keyOf),
            `${name}: ${row.does}`,
          ).toContainEqual(keyOf(row));
        promises[key]!(row, then, engine);
        taken += 1;
      }
    }
    expect(taken, 'rows tried').toBeGreaterThan(1);
  });
});

/** Each of some rows is left out for the first reason, and taken back in; how many were tried. */
function leaveOutRows(block: RowsBlock, name: string, state: DesignState, engine: Engine): number {
  const spec = shown(block, engine);
  const rows = some(spec?.rows ?? [], name);
  for (const row of rows) {
    const [reason] = Object.keys(spec!.reasons);
    const out = applyPatch(designGraph, state, row.patch(reason));
    const find = (inputs: DesignState['inputs']) =>
      shown(block, createEngine(designGraph, inputs))!.rows.find(({ name }) => name === row.name)!;
    expect(find(out.inputs).reason).toBe(reason);
    expect(
      find(applyPatch(designGraph, out, find(out.inputs).patch(undefined)).inputs).reason,
    ).toBeUndefined();
  }
  return rows.length;
}
