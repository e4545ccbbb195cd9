import type { Graph } from '../lib/graph/graph.ts';
import type { Quantity } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { formatQuantity } from '../lib/graph/units.ts';
import type { Comparison } from '../lib/studies/compare.ts';
import type {
  AtLimit,
  Blocked,
  Missed,
  Solution,
  SolveRequest,
  SolveResult,
  Want,
} from '../lib/studies/solveRequest.ts';
import { listed, percentText } from './shortTexts.ts';

/** Digits beyond which two numbers that look alike are told as they are. */
const mostDigits = 9;

const nameIn = (graph: Graph, id: string) => graph.quantities.get(id)!.name;
const sentenceCase = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** A value as every place shows it. */
export function valueText(graph: Graph, id: string, value: unknown): string {
  return shownValue(graph.quantities.get(id)!, { value });
}

/** Two numbers of a quantity with as many digits as tell them apart. */
export function apart(quantity: Quantity, one: number, other: number): readonly [string, string] {
  const unit = typeof quantity.unit === 'string' ? quantity.unit : '1';
  const show = (value: number, digits: number) =>
    formatQuantity(value, unit, quantity.display ?? unit, digits);
  let digits = quantity.digits ?? 4;
  while (digits < mostDigits && show(one, digits) === show(other, digits)) digits += 1;
  return [show(one, digits), show(other, digits)];
}

/** What is wanted, behind the name of the quantity: "1.05", "at least 60 µm", "from 0.9 to 1.1". */
export function wantText(graph: Graph, want: Want): string {
  const show = (value: number) => valueText(graph, want.id, value);
  if (want.kind === 'between') return `from ${show(want.low)} to ${show(want.high)}`;
  const word = { value: '', atLeast: 'at least ', atMost: 'at most ' }[want.kind];
  return word + show(want.value);
}

const designs = (count: number) => `${count} ${count === 1 ? 'design' : 'designs'}`;

/** What came of looking, in one or two sentences. */
export function solvedSaid({ met, others, tried, complete }: SolveResult): string {
  if (!met && complete)
    return `Nothing within what may change gives what is wanted; ${designs(tried)} ${tried === 1 ? 'was' : 'were'} tried.`;
  if (!met)
    return `Not found in ${designs(tried)}. The search stops there, so that there may still be one: narrower limits, or fewer inputs, help.`;
  const cut = complete ? '' : ' The search was cut short there, so that there may be more.';
  const more =
    others.length === 0
      ? ''
      : ` There ${others.length === 1 ? 'is one other solution' : `are ${others.length} other solutions`}; the one nearest to today’s design stands first.`;
  return `Found, after ${designs(tried)}.${more}${cut}`;
}

/** Inputs of a solution that differ from today's. */
export function changesOf(solution: Solution, inputs: Readonly<Record<string, unknown>>): readonly string[] {
  return Object.keys(solution.patch).filter((id) => !Object.is(solution.patch[id], inputs[id]));
}

/** A solution in a few words, to tell it from others. */
export function solutionText(
  graph: Graph,
  solution: Solution,
  inputs: Readonly<Record<string, unknown>>,
): string {
  const changed = changesOf(solution, inputs);
  const changes = changed.map((id) => `${nameIn(graph, id)} ${valueText(graph, id, solution.patch[id])}`);
  const part = solution.part === undefined ? [] : [solution.part];
  const all = [...part, ...changes];
  return all.length === 0 ? 'today’s design as it is' : listed(all);
}

/** How far off the nearest design is. */
export function missedSaid(graph: Graph, missed: readonly Missed[]): string {
  if (missed.length === 0) return '';
  const told = missed.map(({ id, wanted, reached, factor }) => {
    const quantity = graph.quantities.get(id)!;
    const [shown, asked] = apart(quantity, reached, wanted);
    return `${quantity.name} ${shown} instead of ${asked}${awayText(factor)}`;
  });
  return `The nearest that was found gives ${listed(told)}.`;
}

/** How far off, where that says more than the two numbers. */
function awayText(factor: number | undefined): string {
  if (factor === undefined || Math.abs(factor - 1) < 5e-4) return '';
  // Beyond a factor of three nobody thinks in per cent.
  if (factor > 3) return `, ${Number(factor.toPrecision(3))} times as much`;
  if (factor < 1 / 3) return `, a factor of ${Number((1 / factor).toPrecision(3))} less`;
  return `, ${percentText(Math.abs(factor - 1), 2)} ${factor > 1 ? 'more' : 'less'}`;
}

/** What stands in the way, and what to do about it. */
export function blockedSaid(
  graph: Graph,
  request: SolveRequest,
  blocked: Blocked,
  inputs: Readonly<Record<string, unknown>>,
): string {
  const nameOf = (index: number) => nameIn(graph, request.wants[index]!.id);
  switch (blocked.reason) {
    case 'problem': {
      const part = `${blocked.part < 0.995 ? percentText(blocked.part, 2) : 'all'} of the designs tried`;
      const input = blocked.input === undefined ? undefined : graph.quantities.get(blocked.input)?.name;
      const next = input === undefined ? '' : ` Let ${input} change too, or choose other limits.`;
      return `What stands in the way: ${part} have no value. ${blocked.problem.message}${next}`;
    }
    case 'limits': {
      const ends = blocked.limits.map((limit) => atLimitText(graph, limit));
      const first = `What stands in the way: ${nameOf(blocked.want)} would come nearer beyond the limits; ${listed(ends)}.`;
      if (!blocked.beyond) return `${first} Further limits may help, if they are possible on your table.`;
      return `${first} With further limits it is met: ${solutionText(graph, blocked.beyond, inputs)}.`;
    }
    case 'gap': {
      const show = (value: number) => valueText(graph, request.wants[blocked.want]!.id, value);
      return `What stands in the way: ${nameOf(blocked.want)} jumps over what is wanted. The nearest on either side are ${show(blocked.below)} and ${show(blocked.above)}; let another input change, or add values to the list.`;
    }
    case 'reach': {
      const show = (value: number) => valueText(graph, request.wants[blocked.want]!.id, value);
      return `What stands in the way: ${nameOf(blocked.want)} was found from ${show(blocked.low)} to ${show(blocked.high)} and turns round before it gets to what is wanted. Other inputs have to change.`;
    }
    case 'unmoved':
      return `What stands in the way: nothing that may change enters ${nameOf(blocked.want)}. Choose other inputs; its own are listed where you open the number.`;
    case 'contradiction': {
      const names = blocked.wants.map(nameOf);
      const together = names.length === 2 ? 'not both together' : 'not all together';
      return `What stands in the way: ${listed(names)} can each be had alone, but ${together}. Give up one, widen a bound, or let more inputs change.`;
    }
  }
}

function atLimitText(graph: Graph, { id, end, value }: AtLimit): string {
  return `${nameIn(graph, id)} stands at the ${end === 'from' ? 'lower' : 'upper'} limit, ${valueText(graph, id, value)}`;
}

/** Inputs of a solution that stand at an end of what was allowed. */
export function atLimitsSaid(graph: Graph, limits: readonly AtLimit[]): string {
  if (limits.length === 0) return '';
  return `${sentenceCase(listed(limits.map((limit) => atLimitText(graph, limit))))}.`;
}

/** What else a proposal changes in a document. */
export function consequencesSaid({ results, same, heavy }: Comparison, title: string): string {
  const all = results.length + same;
  const left =
    heavy.length === 0
      ? ''
      : ` ${heavy.length === 1 ? 'One more takes' : `${heavy.length} more take`} a longer computation.`;
  if (all === 0) return `‘${title}’ shows no numbers that can be worked out at once.${left}`;
  if (results.length === 0) return `None of the ${all} numbers of ‘${title}’ would change.${left}`;
  return `${results.length} of the ${all} numbers of ‘${title}’ would change.${left}`;
}
