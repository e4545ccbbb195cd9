import type { Graph } from '../../lib/graph/graph.ts';
import type { Outcome } from '../../lib/graph/outcome.ts';
import { isInput, type Quantity } from '../../lib/graph/quantity.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { noStudies, type Studies } from '../../lib/graph/studies.ts';
import type { Told } from '../paper/writtenValue.ts';

type Outcomes = Readonly<Record<string, Outcome>>;

/** A design and what was worked out for it; a rationale is written from this alone. */
export interface ToldDesign extends Told {
  readonly graph: Graph;
  readonly design: Omit<DesignState, 'revision'>;
  readonly studies: Studies;
  readonly alternatives: readonly ToldAlternative[];
}

/** An alternative that was kept, and what was worked out for it. */
export interface ToldAlternative extends Told {
  readonly name: string;
  readonly about: string;
}

/** Binds outcomes by id to a design, and those of the alternatives in their order. */
export function toldDesign(
  graph: Graph,
  design: Omit<DesignState, 'revision'>,
  outcomes: Outcomes,
  ofAlternatives: readonly Outcomes[] = [],
): ToldDesign {
  const { studies = noStudies, inputs } = design;
  return {
    graph,
    design,
    studies,
    ...told(inputs, outcomes),
    alternatives: studies.alternatives.slice(0, ofAlternatives.length).map((one, i) => ({
      name: one.name,
      about: one.about,
      ...told({ ...graph.initial, ...one.inputs }, ofAlternatives[i]!),
    })),
  };
}

function told(inputs: Readonly<Record<string, unknown>>, outcomes: Outcomes): Told {
  return {
    inputs,
    outcomeOf: (quantity: Quantity): Outcome => {
      if (quantity.kind === 'constant') return { value: quantity.value };
      if (isInput(quantity))
        return { value: Object.hasOwn(inputs, quantity.id) ? inputs[quantity.id] : quantity.initial };
      return outcomes[quantity.id] ?? notAsked(quantity);
    },
  };
}

/** What nobody asked for is not there, and never a number. */
function notAsked({ id, name }: Quantity): Outcome {
  const message = `${name.charAt(0).toUpperCase()}${name.slice(1)} was not worked out.`;
  return { problem: { kind: 'absent', message, parts: {}, at: id } };
}
