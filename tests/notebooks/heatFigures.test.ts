import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import type { ChoicesSpec } from '../../notebooks/choicesSpec.ts';
import { variationsTable } from '../../notebooks/heatFigures.ts';
import { readValues } from '../../notebooks/prose.ts';
import { expectClose } from '../close.ts';

/** A quick field, so that earlier lines count. */
const quick: Patch = { 'scan.fieldWidth': 1e-3, 'scan.fieldHeight': 0.3e-3, 'scan.speed': 1 };

function engineOf(patch: Patch) {
  const { inputs } = applyPatch(designGraph, initialState(designGraph), { ...quick, ...patch });
  return createEngine(designGraph, inputs);
}

function tableOf(patch: Patch): ChoicesSpec {
  const engine = engineOf(patch);
  const read = readValues(
    variationsTable.from,
    (quantity: Quantity) => engine.evaluate([quantity.id])[quantity.id]!,
  );
  if (!('values' in read)) throw new Error(read.problem.message);
  return variationsTable.view(read.values);
}

const riseOf = (patch: Patch) => {
  const outcome = engineOf(patch).evaluate(['heat.rise'])['heat.rise'] as { value: number };
  return outcome.value;
};

describe('the list of other settings', () => {
  it('promises what the design then shows', () => {
    const table = tableOf({ 'laser.maxPower': 1000, 'scan.maxSpeed': 100 });
    expect(table.rows.map(({ key }) => key)).not.toContain('interlaceOne');
    expect(table.rows.filter(({ chosen }) => chosen).map(({ key }) => key)).toEqual(['today']);
    for (const { cells, patch, key } of table.rows) {
      const after = riseOf({ 'laser.maxPower': 1000, 'scan.maxSpeed': 100, ...patch });
      // Cells hold three digits.
      expectClose(Number.parseFloat(cells[0]!), after, { relative: 6e-3, source: String(key) });
    }
  });

  it('offers neighbours in turn where lines are interlaced, and nothing out of range', () => {
    const table = tableOf({ 'scan.interlacing': 4, 'scan.lineSpacing': 6e-3, 'scan.fieldHeight': 50e-3 });
    const keys = table.rows.map(({ key }) => key);
    expect(keys).toContain('interlaceOne');
    expect(keys).not.toContain('interlaceFour');
    expect(keys).not.toContain('linesDouble');
  });

  it('its summary names the coolest', () => {
    const table = tableOf({});
    const rises = table.rows.map(({ cells }) => Number.parseFloat(cells[0]!));
    const coolest = table.rows[rises.indexOf(Math.min(...rises))]!;
    expect(table.summary).toContain(`Least here: ${coolest.name}`);
  });
});
