import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { readSpotFile } from '../../lib/design/spotFile.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import { applyPatch, type DesignState, initialState, type Patch } from '../../lib/graph/state.ts';
import type { RowsBlock } from '../../notebooks/document.ts';
import type { PageContext } from '../../notebooks/page/context.ts';
import { renderRows } from '../../notebooks/page/rowsView.ts';
import type { Watcher } from '../../notebooks/page/watcher.ts';
import { spotRows, spotTableBlocks } from '../../notebooks/spotRowsBlocks.ts';

const text = 'E (µJ);dx (µm);dy (µm);N;z (mm)\n10;20,5;20;1;0\n11;wide;3;1;0\n12;22;22;10;0,05\n13;0;0;1;0\n';
const table = readSpotFile(text, 'spots.csv');
const block = spotTableBlocks.find((one): one is RowsBlock => one.kind === 'rows')!;

describe('the rows of a table of spots', () => {
  it('hold the numbers that were read, in columns that the table has', () => {
    const { columns, rows, summary } = spotRows(table, [], 1e5);
    expect(columns).toEqual(['', 'energy', 'diameter', 'area', 'pulses', 'z', 'counts']);
    expect(rows.map(({ name }) => name)).toEqual(['row 2', 'row 3', 'row 4', 'row 5']);
    expect(rows[0]!.cells.map((cell) => cell.replace(/\s/g, ' '))).toEqual([
      '10 µJ',
      '20.5 × 20 µm',
      '322 µm²',
      '1',
      '0 mm',
    ]);
    expect(rows[1]).toMatchObject({ cells: [], problem: expect.stringMatching(/^Row 3, column dx/) });
    expect(rows[3]!.cells[1]).toBe('no mark');
    expect(summary).toMatch(/^3 of 4 rows count; 1 in error, to be corrected/);
  });

  it('say powers, hollow marks and uncertainties where the table gives them', () => {
    const more = readSpotFile('P (mW);d (µm);di (µm);sd (µm)\n2;20;10;0.5\n3;21;0;0.5\n', 'a.csv');
    const { columns, rows } = spotRows(more, [], 1e3);
    expect(columns.slice(1, 5)).toEqual(['power', 'energy', 'diameter', 'area']);
    expect(rows[0]!.cells.join(' ').replace(/\s/g, ' ')).toBe(
      '2 mW 2 µJ 20 µm, hollow 10 µm 236 µm² ± 15.7 µm²',
    );
  });

  it('are cut short where there are very many, but never those in error or left out', () => {
    const rows = Array.from({ length: 500 }, (_, i) => `${i + 1};${i === 450 ? 'x' : 20}`);
    const long = readSpotFile(`E (µJ);d (µm)\n${rows.join('\n')}\n`, 'long.csv');
    const shown = spotRows(long, [{ 'threshold.leftOutRow': 490, 'threshold.leftOutReason': 'mark' }], 1e5);
    expect(shown.rows).toHaveLength(302);
    expect(shown.rows.slice(-2).map(({ name }) => name)).toEqual(['row 452', 'row 490']);
    expect(shown.summary).toMatch(
      /^498 of 500 rows count; 1 left out; 1 in error.*; 198 more rows are not listed\.$/,
    );
  });
});

/** A page of that block alone over a design that starts with the table. */
function pageOf() {
  const { document, window } = parseHTML('<html><body></body></html>');
  let state: DesignState = applyPatch(designGraph, initialState(designGraph), {
    'threshold.spotTable': table,
  });
  const watchers: [Quantity, Watcher][] = [];
  const tell = ([{ id }, watcher]: [Quantity, Watcher]) => {
    watcher.pending?.();
    watcher.changed?.(createEngine(designGraph, state.inputs).evaluate([id])[id]!);
    watcher.settled?.(state.revision);
  };
  const set = (patch: Patch) => {
    state = applyPatch(designGraph, state, patch);
    watchers.forEach(tell);
  };
  const watch = (quantity: Quantity, watcher: Watcher) => {
    watchers.push([quantity, watcher]);
    tell([quantity, watcher]);
    return () => {};
  };
  const report = (message: string) => expect.fail(message);
  const context = { document, live: { set, watch, state: () => state }, report } as unknown as PageContext;
  document.body.append(renderRows(context, block, []));
  const selects = () => [...document.querySelectorAll('select')];
  const choose = (row: number, value: string) => {
    const select = selects()[row]!;
    select.querySelector<HTMLOptionElement>(`option[value=${value}]`)!.selected = true;
    select.dispatchEvent(new window.Event('change'));
  };
  return { document, selects, choose, inputs: () => state.inputs };
}

describe('the list on the page', () => {
  it('leaves a row out with its reason by one choice, and takes it back', () => {
    const { document, selects, choose, inputs } = pageOf();
    const [first, second] = selects();
    expect(first!.getAttribute('aria-label')).toBe('counts, row 2');
    expect(second!.querySelector('option')!.textContent).toBe('in error');
    choose(1, 'row');
    choose(0, 'outlier');
    expect(inputs()['threshold.leftOut']).toEqual([
      { 'threshold.leftOutRow': 2, 'threshold.leftOutReason': 'outlier' },
      { 'threshold.leftOutRow': 3, 'threshold.leftOutReason': 'row' },
    ]);
    expect(selects()[0]).toBe(first);
    expect(document.querySelectorAll('tr[data-out]')).toHaveLength(2);
    expect(document.querySelector('.choices-summary')!.textContent).toBe('2 of 4 rows count; 2 left out.');
    choose(0, 'in');
    expect(document.querySelectorAll('tr[data-out]')).toHaveLength(1);
    expect(document.querySelector('tr[data-bad] td')!.getAttribute('colspan')).toBe('5');
  });
});
