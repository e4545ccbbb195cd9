import fc from 'fast-check';
import { expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import type { NumberInput } from '../../lib/graph/quantity.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { solve } from '../../lib/studies/solve.ts';
import type { Move, Solution, SolveRequest, Want } from '../../lib/studies/solveRequest.ts';

/** Numbers along the beam path, and quick results that depend on some of them. */
const movable = [
  'expander.magnification',
  'laser.beamDiameter',
  'laser.pulseEnergy',
  'laser.repetitionRate',
  'laser.wavelength',
  'lens.focalLength',
  'plate.apertureDiameter',
  'plate.stepDiameter',
].map((id) => designGraph.quantities.get(id) as NumberInput);
const results = [
  'explain.axisCurvatureInFocus',
  'explain.axisIrradianceInFocus',
  'focus.radius',
  'focus.rayleighLength',
  'laser.averagePower',
  'match.stepRatio',
  'match.stopRatio',
  'plate.beamDiameter',
  'plate.transmission',
];

const share = fc.double({ min: 0, max: 1, noNaN: true });

function moveOf(input: NumberInput): fc.Arbitrary<Move> {
  const { id, range, initial } = input;
  const low = Math.max(range.min, initial / 5);
  const high = Math.min(range.max, initial * 5);
  const at = (part: number) => low * (high / low) ** part;
  const ends = fc
    .tuple(share, share)
    .map(([a, b]) => ({ id, from: at(Math.min(a, b)), to: at(Math.max(a, b)) }));
  const list = fc
    .array(share, { minLength: 1, maxLength: 3 })
    .map((parts) => ({ id, values: parts.map(at) }));
  return fc.oneof({ weight: 3, arbitrary: ends }, list);
}

/** A want near what the initial design has, or far from it. */
function wantOf(id: string): fc.Arbitrary<Want> {
  const today = createEngine(designGraph).evaluate([id])[id] as { readonly value: number };
  return fc
    .tuple(fc.constantFrom('value', 'atLeast', 'atMost', 'between'), share)
    .map(([kind, part]): Want => {
      const value = today.value * 4 ** (2 * part - 1);
      if (kind !== 'between') return { id, kind: kind as 'value', value };
      return { id, kind, low: Math.min(value, 1.1 * value), high: Math.max(value, 1.1 * value) };
    });
}

const requests: fc.Arbitrary<SolveRequest> = fc.record({
  wants: fc.subarray(results, { minLength: 1, maxLength: 2 }).chain((ids) => fc.tuple(...ids.map(wantOf))),
  moves: fc
    .subarray(movable, { minLength: 1, maxLength: 3 })
    .chain((inputs) => fc.tuple(...inputs.map(moveOf))),
});

/** Whether the values meet the wants as near as each must be met. */
function meets(wants: readonly Want[], values: Solution['values']): boolean {
  return wants.every((want) => {
    const value = values[want.id]!;
    if (want.kind === 'value') return Math.abs(value - want.value) <= 1e-6 * Math.abs(want.value);
    const [low, high] = want.kind === 'between' ? [want.low, want.high] : [want.value, want.value];
    const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
    return (
      (want.kind === 'atMost' || value >= low - slack) && (want.kind === 'atLeast' || value <= high + slack)
    );
  });
}

it('200 random requests: no input leaves its limits or list, and every value is that of the design proposed', () => {
  let met = 0;
  const reasons = new Map<string, number>();
  const property = fc.property(requests, (request) => {
    const result = solve(designGraph, designGraph.initial, request);
    const again = solve(designGraph, designGraph.initial, request);
    expect(again).toEqual(result);
    const proposed = result.patch ? [result as Solution, ...result.others] : [];
    for (const { patch, values } of proposed) {
      for (const move of request.moves) {
        const value = patch[move.id] as number;
        if ('values' in move) expect(move.values).toContain(value);
        else expect(value >= move.from! && value <= move.to!, `${move.id} ${value}`).toBe(true);
      }
      const { inputs } = applyPatch(designGraph, initialState(designGraph), patch);
      const ids = request.wants.map(({ id }) => id);
      const outcomes = createEngine(designGraph, inputs).evaluate(ids);
      for (const id of ids) expect(outcomes[id]).toMatchObject({ value: values[id] });
      expect(meets(request.wants, values)).toBe(result.met);
    }
    expect(result.blocked === undefined).toBe(result.met);
    met += result.met ? 1 : 0;
    const reason = result.blocked?.reason ?? 'met';
    reasons.set(reason, (reasons.get(reason) ?? 0) + 1);
  });
  fc.assert(property, { seed: 8, numRuns: 200 });
  console.log(`requests: 200, ${[...reasons].map(([reason, count]) => `${reason} ${count}`).join(', ')}`);
  // Both answers were drawn often.
  expect(Math.min(met, 200 - met)).toBeGreaterThan(30);
});

/** Shares of the ways between limits, and of the lists, at which a design is hidden. */
const hidden = fc.tuple(requests, fc.array(share, { minLength: 3, maxLength: 3 }));

it('what a design within the limits has is found again, in 200 random requests', () => {
  let found = 0;
  const property = fc.property(hidden, ([{ wants, moves }, parts]) => {
    const values = moves.map((move, i) =>
      'values' in move
        ? move.values[Math.floor(parts[i]! * (move.values.length - 1e-9))]
        : move.from! + (move.to! - move.from!) * parts[i]!,
    );
    const inputs = {
      ...designGraph.initial,
      ...Object.fromEntries(moves.map(({ id }, i) => [id, values[i]])),
    };
    const ids = wants.map(({ id }) => id);
    const outcomes = Object.values(createEngine(designGraph, inputs).evaluate(ids));
    if (!outcomes.every(hasValue)) return;
    const there = ids.map((id, i): Want => {
      const value = outcomes[i]!.value as number;
      const half = 0.01 * Math.abs(value);
      const exact = parts[2]! < 0.5;
      return exact
        ? { id, kind: 'value', value }
        : { id, kind: 'between', low: value - half, high: value + half };
    });
    const result = solve(designGraph, designGraph.initial, { wants: there, moves });
    found += 1;
    expect(result.missed).toEqual([]);
    expect(result.met).toBe(true);
  });
  fc.assert(property, { seed: 8, numRuns: 200 });
  console.log(`hidden designs found: ${found}`);
  expect(found).toBeGreaterThan(150);
});
