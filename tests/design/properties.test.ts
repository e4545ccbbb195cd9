import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { descendantsOf } from '../../lib/graph/descendants.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue, type Outcome } from '../../lib/graph/outcome.ts';
import { isInput } from '../../lib/graph/quantity.ts';
import { cases } from '../cases.ts';
import { allowedDesigns, allowedSpots, measuredDesigns, usualDesigns } from './inputs.ts';

const ids = [...designGraph.quantities.keys()];
/** What takes most of the time is asked of one design in five, or at full counts in twelve: heavy quantities, predictions for what is measured, and what follows. */
const slow = designGraph.order.filter(
  (quantity) =>
    quantity.kind === 'derived' &&
    (quantity.heavy !== undefined || /Prediction$/.test(quantity.id) || quantity.id === 'spot.depth'),
);
const slowIds = descendantsOf(
  designGraph,
  slow.map(({ id }) => id),
);
const quickIds = ids.filter((id) => !slowIds.has(id));
const inputIds = new Set(designGraph.order.filter(isInput).map(({ id }) => id));

/** Path to the first number of a value that is not finite; undefined where all are. */
function notFinite(value: unknown, path = ''): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : `${path} = ${value}`;
  if (ArrayBuffer.isView(value)) {
    const bad = (value as Float64Array).findIndex((x) => !Number.isFinite(x));
    return bad < 0 ? undefined : `${path}[${bad}]`;
  }
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, item] of Object.entries(value)) {
    if (key === 'wavefrontRadius') continue; // one over a flat wavefront's curvature is Infinity
    const bad = notFinite(item, `${path}.${key}`);
    if (bad !== undefined) return bad;
  }
  return undefined;
}

function checkOutcome(id: string, outcome: Outcome): void {
  if (hasValue(outcome)) {
    expect(notFinite(outcome.value), id).toBeUndefined();
    return;
  }
  const { kind, message, parts, at } = outcome.problem;
  expect(kind, `${id}: ${message}`).not.toBe('fault');
  expect(message, at).toMatch(/^[A-Z‘'"].{20,}\.$/s);
  expect(message, at).not.toMatch(/NaN|undefined|Infinity|\[object/);
  if (kind === 'impossible' || kind === 'outside') {
    expect(parts.input, `${at}: ${message}`).toBeDefined();
    expect(inputIds, `${at}: ${message}`).toContain(parts.input);
  }
}

describe('every design that the inputs allow', () => {
  for (const [name, designs, least, runs] of [
    ['over the whole ranges', allowedDesigns, 0.02, cases(1500, 200)],
    ['over the whole ranges, workpiece near the focus', allowedSpots, 0.2, cases(1500, 70)],
    ['in the usual spans', usualDesigns, 0.95, cases(1000, 20)],
    ['with measured beams', measuredDesigns, 0.2, cases(400, 20)],
  ] as const) {
    it(`${name}: finite values, or a problem that says what to change`, () => {
      let spots = 0;
      let count = 0;
      let slowest = 0;
      fc.assert(
        fc.property(designs, (design) => {
          const start = performance.now();
          const asked = count++ % cases(12, 5) === 0 ? ids : quickIds;
          const outcomes = createEngine(designGraph, design).evaluate(asked);
          slowest = Math.max(slowest, performance.now() - start);
          for (const id of asked) checkOutcome(id, outcomes[id]!);
          if (!hasValue(outcomes['spot.width']!)) return;
          spots += 1;
          expect(outcomes['spot.secondMomentDiameter'], 'every spot has one').toHaveProperty('value');
        }),
        { seed: 2024, numRuns: runs, endOnFailure: true },
      );
      console.log(`${name}: ${runs} designs, ${spots} with a spot, slowest ${Math.round(slowest)} ms`);
      expect(spots).toBeGreaterThanOrEqual(runs * least);
      // A design takes half a second on average and some tens at worst; 1500 of them want more than the usual limit.
    }, 2_400_000);
  }

  it('ranges searched', () => {
    const rows = designGraph.order.flatMap((quantity) =>
      quantity.kind === 'number'
        ? [`${quantity.id} ${quantity.range.min} … ${quantity.range.max} ${quantity.unit}`]
        : [],
    );
    console.log(rows.join('\n'));
    expect(rows.length).toBeGreaterThan(15);
  });
});
