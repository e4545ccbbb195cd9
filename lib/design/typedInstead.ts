import { createEngine } from '../graph/engine.ts';
import type { Graph } from '../graph/graph.ts';
import { hasValue } from '../graph/outcome.ts';
import type { ChoiceInput, Derived, NumberInput } from '../graph/quantity.ts';
import { shownValue } from '../graph/shown.ts';
import { checkInput, type Patch } from '../graph/state.ts';
import { beamDiameter, beamPropagationRatio } from './laser.ts';
import { beamSource, ratioSource, usedBeamDiameter, usedBeamPropagationRatio } from './rawBeam.ts';
import { leftOut } from './spots.ts';
import { usedWaistDistance, waistDistance, waistSource } from './waist.ts';

/** A number that is typed or measured: the choice, what counts, and where it is typed. */
type Measurable = readonly [by: ChoiceInput<string>, used: Derived<number>, typed: NumberInput];

const measurable: readonly Measurable[] = [
  [beamSource as ChoiceInput<string>, usedBeamDiameter, beamDiameter],
  [ratioSource as ChoiceInput<string>, usedBeamPropagationRatio, beamPropagationRatio],
  [waistSource as ChoiceInput<string>, usedWaistDistance, waistDistance],
];

/** A design without its files, and in words what took the place of what they measured. */
export interface WithoutFiles {
  readonly patch: Patch;
  readonly words: readonly string[];
  /** Ids of the numbers that count as typed now, and whether they were measured or had been typed before. */
  readonly typed: readonly { readonly id: string; readonly measured: boolean }[];
}

/** What to set so that a design does without the files it was measured from: their numbers as if typed. */
export function typedInstead(graph: Graph, inputs: Patch): WithoutFiles {
  const engine = createEngine(graph, inputs);
  const patch: Record<string, unknown> = {};
  const words: string[] = [];
  const typedNow: { readonly id: string; readonly measured: boolean }[] = [];
  for (const [by, used, typed] of measurable.filter(([choice]) => inputs[choice.id] !== 'typed')) {
    const outcome = engine.evaluate([used.id])[used.id]!;
    const value = hasValue(outcome) && allows(typed, outcome.value) ? outcome.value : undefined;
    patch[by.id] = 'typed';
    if (value !== undefined) patch[typed.id] = value;
    const shown = shownValue(typed, { value: value ?? inputs[typed.id] });
    const why = value === undefined ? ', since nothing that can be typed was measured' : '';
    words.push(`${typed.name} ${shown}${why}`);
    typedNow.push({ id: typed.id, measured: value !== undefined });
  }
  for (const quantity of graph.order) {
    if (quantity.kind === 'file' && inputs[quantity.id] !== null) patch[quantity.id] = null;
    if (quantity.kind === 'list' && quantity.of.some(({ kind }) => kind === 'file')) patch[quantity.id] = [];
  }
  // Lines of a table that is not there.
  patch[leftOut.id] = leftOut.initial;
  return { patch, words, typed: typedNow };
}

function allows(input: NumberInput, value: unknown): boolean {
  try {
    checkInput(input, value);
    return true;
  } catch {
    return false;
  }
}
