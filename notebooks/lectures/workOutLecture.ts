import { createEngine, type Engine } from '../../lib/graph/engine.ts';
import type { Graph } from '../../lib/graph/graph.ts';
import type { Outcome } from '../../lib/graph/outcome.ts';
import { isInput, type Quantity, type Report } from '../../lib/graph/quantity.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import type { Lecture, LectureStep } from '../../lib/graph/studies.ts';
import { Problem } from '../../lib/problem.ts';
import { vary } from '../../lib/studies/vary.ts';
import { blockQuantities } from '../blockQuantities.ts';
import { conditionHolds } from '../condition.ts';
import type { OwnContent } from '../ownBlocks.ts';
import { ownProse } from '../ownProse.ts';
import { slotQuantities } from '../prose.ts';
import { idsRead } from '../rationale/rationaleIds.ts';
import { type ToldDesign, toldDesign } from '../rationale/told.ts';
import type { Varied } from '../varied.ts';
import { overOf } from '../varyForm.ts';
import { preparedDesign } from './giving.ts';
import { stepContents } from './lectureContents.ts';

/** A step with all that is told of it, worked out for the design that it begins with. */
export interface ToldStep {
  readonly step: LectureStep;
  readonly told: ToldDesign;
  readonly pieces: readonly ToldPiece[];
  /** Why what the step sets could not be set. */
  readonly problem?: string;
}

/** A piece, and its numbers where it is a chart of its own. */
export interface ToldPiece {
  readonly content: OwnContent;
  readonly varied?: Varied;
}

/** Works out every step of a lecture over a design, one after the other. `report` hears how far it is. */
export function workOutLecture(
  graph: Graph,
  design: DesignState,
  lecture: Lecture,
  report: Report = () => {},
): readonly ToldStep[] {
  const engine = createEngine(graph, { ...graph.initial, ...design.inputs });
  const count = Math.max(1, lecture.steps.length);
  return lecture.steps.map((step, place) => {
    const told = workOutStep(graph, design, step, { engine, name: `${lecture.id}-${place + 1}` });
    report((place + 1) / count);
    return told;
  });
}

interface StepWork {
  readonly engine: Engine;
  /** What ids of its blocks begin with. */
  readonly name: string;
}

function workOutStep(graph: Graph, design: DesignState, step: LectureStep, work: StepWork): ToldStep {
  const prepared = preparedDesign(graph, design, step);
  const inputs = { ...graph.initial, ...prepared.design.inputs };
  const contents = stepContents(graph, step, (place) => `${work.name}-${place + 1}`);
  const read = quantitiesOf(graph, step, contents, inputs);
  work.engine.setInputs(inputs);
  const outcomes = work.engine.evaluate(idsRead(read, inputs));
  return {
    step,
    told: toldDesign(graph, { ...prepared.design, inputs }, outcomes),
    pieces: contents.map((content) => ({ content, ...variedOf(graph, content, inputs, outcomes) })),
    ...(prepared.problem !== undefined && { problem: prepared.problem }),
  };
}

/** Quantities that a step shows, asks about, sets or tells the lecturer of. */
function quantitiesOf(
  graph: Graph,
  { ask, notes }: LectureStep,
  contents: readonly OwnContent[],
  inputs: DesignState['inputs'],
): Quantity[] {
  const texts = [ask?.question ?? '', notes ?? ''].map((text) => ownProse(graph, text));
  const shown = contents.flatMap((content): readonly Quantity[] => {
    if (content.kind === 'chart') return content.plan.results;
    if (content.kind === 'problem') return [];
    const { block } = content;
    if (block.when !== undefined && !conditionHolds(block.when, inputs)) return [];
    return [...blockQuantities(block), ...(block.needs ?? [])];
  });
  // The copy tells which inputs are others than in the step before.
  const set = [...graph.quantities.values()].filter(isInput);
  return [...new Set([...shown, ...set, ...texts.flatMap(({ slots }) => slots.flatMap(slotQuantities))])];
}

function variedOf(
  graph: Graph,
  content: OwnContent,
  inputs: DesignState['inputs'],
  today: Readonly<Record<string, Outcome>>,
): { readonly varied?: Varied } {
  if (content.kind !== 'chart') return {};
  const { plan } = content;
  try {
    const columns = vary(
      graph,
      inputs,
      overOf(plan),
      plan.results.map(({ id }) => id),
    );
    return { varied: { plan, columns, inputs, today } };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return {};
  }
}
