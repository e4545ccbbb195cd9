import { expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';

const degree = Math.PI / 180;

function outcomeOf(id: string, patch: Patch) {
  const { inputs } = applyPatch(designGraph, initialState(designGraph), patch);
  return createEngine(designGraph, inputs).evaluate([id])[id]!;
}

const notes = (patch: Patch) =>
  ['ripples.fieldParts', 'unshaped.ripples.fieldParts', 'ripples.insideByWidth'].map((id) => {
    const outcome = outcomeOf(id, patch);
    return hasValue(outcome) ? outcome.note : outcome.problem.message;
  });

it('a spot on a tilted surface says where it leaves its plane by more than a quarter of a Rayleigh length', () => {
  expect(notes({})).toEqual([undefined, undefined, undefined]);
  // A focus of 6.6 µm has a Rayleigh length of 131 µm: 30° moves its edge by 4 µm.
  expect(notes({ 'workpiece.incidence': 30 * degree })).toEqual([undefined, undefined, undefined]);
  // Of 1.6 µm: 8 µm, the shaped spot of 2.2 to 3 µm at 75° by more.
  const tight = { 'lens.focalLength': 25e-3, 'workpiece.incidence': 75 * degree };
  for (const note of notes(tight)) expect(note).toMatch(/leaves the plane by ± [\d.]+ Rayleigh lengths/);
});

it.each([
  [{ 'ripples.windowHigh': 2000 }, /does not lie above the lower one/, 'ripples.windowHigh'],
  [{ 'ripples.pulsesHigh': 5 }, /are fewer than the fewest/, 'ripples.pulsesHigh'],
])('bounds that leave nothing between them: %j', (patch, message, input) => {
  const outcome = outcomeOf('ripples.fieldParts', patch);
  expect(outcome).toMatchObject({
    problem: { kind: 'impossible', message: expect.stringMatching(message), parts: { input } },
  });
});
