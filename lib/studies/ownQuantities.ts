import { derived } from '../graph/define.ts';
import { createGraph, type Graph } from '../graph/graph.ts';
import { type Derived, isInput, type Quantity } from '../graph/quantity.ts';
import type { OwnLine } from '../graph/studies.ts';
import { Problem } from '../problem.ts';
import { parseFormula } from './formulaParser.ts';
import { formulaProblem, quoted } from './formulaProblem.ts';
import { type FormulaNode, namesIn } from './formulaSyntax.ts';
import { formulaTex } from './formulaTex.ts';
import { evaluateFormula } from './formulaValue.ts';
import { idsIn, type ReadFormula, readFormula } from './ownFormula.ts';
import { checkLine, circlesAmong, type OwnProblem } from './ownLines.ts';
import { ownUnit } from './ownUnit.ts';

/** What the lines of a person come to: quantities in the order of the lines, and the lines that are not right. */
export interface OwnQuantities {
  readonly quantities: readonly Derived<number>[];
  readonly problems: readonly OwnProblem[];
}

/**
 * Quantities of the person's own over those of a graph. A line with a problem makes no quantity, nor does one that uses it;
 * all others do. Lines may stand in any order. Throws nothing for bad lines: `problems` holds what is wrong.
 */
export function ownQuantities(graph: Graph, lines: readonly OwnLine[]): OwnQuantities {
  const problems: OwnProblem[] = [];
  const made = new Map<string, Derived<number>>();
  const known = new Map<string, Quantity>(graph.quantities);
  const drafts = new Map<string, Draft>();
  const attempt = (line: number, { id }: OwnLine, work: () => void) => {
    try {
      work();
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      problems.push({ line, id: String(id), problem: error });
    }
  };
  lines.forEach((line, i) => {
    attempt(i, line, () => {
      checkLine(line, i, (id) => graph.quantities.has(id) || drafts.has(id));
      drafts.set(line.id, { line, number: i, node: undefined });
      drafts.set(line.id, { line, number: i, node: parseFormula(line.formula) });
    });
  });
  const circles = circlesIn(drafts);
  for (const { line, number } of inOrder(drafts)) {
    attempt(number, line, () => {
      refuseCircle(line, drafts.get(line.id)!.node!, circles.get(line.id));
      refuseBroken(line, drafts, made);
      const quantity = ownQuantity(line, readFormula(line.formula, known));
      made.set(line.id, quantity);
      known.set(line.id, quantity);
    });
  }
  const quantities = [...drafts.keys()].flatMap((id) => made.get(id) ?? []);
  return { quantities, problems: problems.sort((a, b) => a.line - b.line) };
}

/** A line whose id is good; without a tree where its formula cannot be read. */
interface Draft {
  readonly line: OwnLine;
  readonly number: number;
  readonly node: FormulaNode | undefined;
}

/** Lines that can be read, each after those that it uses; circles are cut anywhere. */
function inOrder(drafts: ReadonlyMap<string, Draft>): Draft[] {
  const order = new Set<Draft>();
  const seen = new Set<string>();
  const visit = (id: string): void => {
    const draft = drafts.get(id);
    if (!draft?.node || seen.has(id)) return;
    seen.add(id);
    idsIn(draft.node).forEach(visit);
    order.add(draft);
  };
  for (const id of drafts.keys()) visit(id);
  return [...order];
}

function circlesIn(drafts: ReadonlyMap<string, Draft>): Map<string, readonly string[]> {
  return circlesAmong(new Map([...drafts].map(([id, { node }]) => [id, node ? idsIn(node) : []])));
}

function refuseCircle({ formula }: OwnLine, node: FormulaNode, chain: readonly string[] | undefined): void {
  if (!chain) return;
  const name = namesIn(node).find(({ id }) => id === chain[1])!;
  const shown = chain.length > 9 ? [...chain.slice(0, 4), '…', ...chain.slice(-4)] : chain;
  const sentence = `stands ${quoted(name.id)}, which leads back to this line: ${shown.join(' → ')}. A quantity cannot follow from itself; take one of them out.`;
  throw formulaProblem(formula, name, sentence, 'impossible');
}

/** What rests on a line with a mistake has none of its own. */
function refuseBroken(
  { id, formula }: OwnLine,
  drafts: ReadonlyMap<string, Draft>,
  made: ReadonlyMap<string, unknown>,
): void {
  const name = namesIn(drafts.get(id)!.node!).find((one) => drafts.has(one.id) && !made.has(one.id));
  if (!name) return;
  const sentence = `stands ${quoted(name.id)}, which has a mistake of its own; correct that line first.`;
  throw formulaProblem(formula, name, sentence, 'absent');
}

function ownQuantity(line: OwnLine, { node, named, powers }: ReadFormula): Derived<number> {
  const { id, name, formula, about = '' } = line;
  const symbols = new Map(named.map((quantity) => [quantity.id, quantity.symbol]));
  const input = new Set(named.filter(isInput).map((quantity) => quantity.id));
  const inputAmong = (ids: readonly string[]) => ids.find((one) => input.has(one));
  return derived<Record<string, Quantity>, number>({
    id,
    name: name.trim(),
    symbol: `\\text{${symbolText(name.trim(), id)}}`,
    ...ownUnit(powers, line.display, named),
    about: about.trim() || `Own quantity, worked out by the formula ${formula.trim()}.`,
    from: Object.fromEntries(named.map((quantity) => [quantity.id, quantity])),
    compute: (values) => {
      return evaluateFormula(node, {
        text: formula,
        valueOf: (one) => singleNumber(values[one], one),
        inputAmong,
      });
    },
    formula: formulaTex(node, (one) => symbols.get(one)!),
    source: 'own',
  });
}

/** The name where TeX reads all of it as plain letters, else the last part of the id. */
function symbolText(name: string, id: string): string {
  return /^[\p{Script=Latin}\d ,.()-]+$/u.test(name) ? name : id.slice('own.'.length);
}

function singleNumber(value: unknown, id: string): number {
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  const what = value === null ? 'has no value here' : 'is no single number';
  throw new Problem('impossible', `${quoted(id)} ${what}, and a formula needs one; use another quantity.`, {
    value: id,
  });
}

/**
 * A graph with own quantities beside those it has; engine, variation and charts take it like any other. Throws
 * `impossible` where an id is taken already.
 */
export function extendGraph(graph: Graph, own: readonly Quantity[]): Graph {
  const taken = own.find(
    ({ id }, i) => graph.quantities.has(id) || own.findIndex((one) => one.id === id) < i,
  );
  if (taken) {
    throw new Problem('impossible', `The name ${quoted(taken.id)} is taken already; choose another.`, {
      value: taken.id,
    });
  }
  return createGraph([...graph.order, ...own]);
}
