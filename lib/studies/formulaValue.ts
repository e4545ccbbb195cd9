import { Problem } from '../problem.ts';
import { formulaConstants, formulaFunctions } from './formulaFunctions.ts';
import { quotedPart } from './formulaProblem.ts';
import { type FormulaComparison, type FormulaNode, type FormulaOperator, namesIn } from './formulaSyntax.ts';

/** What a formula is evaluated with: its text, for problems, and the values of its names in SI. */
export interface FormulaValues {
  readonly text: string;
  valueOf(id: string): number;
  /** Which of these ids is an input that the person can change. */
  inputAmong?(ids: readonly string[]): string | undefined;
}

/**
 * The value of a formula in SI: one step a node, of two branches the chosen one only. Throws `impossible`, naming the
 * part, where something is divided by 0, a root or logarithm does not exist, or a part grows beyond 1e308.
 */
export function evaluateFormula(node: FormulaNode, values: FormulaValues): number {
  const value = valueOfNode(node, values);
  if (!Number.isFinite(value))
    throw refused(node, Number.isNaN(value) ? 'has no value' : 'becomes infinite', values);
  return value === 0 ? 0 : value;
}

function valueOfNode(node: FormulaNode, values: FormulaValues): number {
  switch (node.kind) {
    case 'number':
      return node.value;
    case 'name':
      return formulaConstants.get(node.id) ?? values.valueOf(node.id);
    case 'minus':
      return -evaluateFormula(node.of, values);
    case 'compared':
    case 'operation': {
      const left = evaluateFormula(node.left, values);
      const right = evaluateFormula(node.right, values);
      if (node.kind === 'compared') return holds(node.comparison, left, right) ? 1 : 0;
      const refusal = refusalOf(node.operator, left, right, quotedPart(values.text, node.right));
      if (refusal !== undefined) throw refused(node, refusal, values);
      return operate(node.operator, left, right);
    }
    case 'call':
      return valueOfCall(node, values);
  }
}

function valueOfCall(node: Extract<FormulaNode, { kind: 'call' }>, values: FormulaValues): number {
  const [first, ...others] = node.args;
  const x = evaluateFormula(first!, values);
  if (node.name === 'if') return evaluateFormula(others[x === 1 ? 0 : 1]!, values);
  const known = formulaFunctions.get(node.name)!;
  const refusal = known.refuses?.(x);
  if (refusal !== undefined) throw refused(node, `has no value here: ${refusal}`, values);
  return known.value(x, ...others.map((other) => evaluateFormula(other, values)));
}

function operate(operator: FormulaOperator, left: number, right: number): number {
  switch (operator) {
    case '+':
      return left + right;
    case '-':
      return left - right;
    case '*':
      return left * right;
    case '/':
      return left / right;
    case '^':
      return left ** right;
  }
}

function refusalOf(
  operator: FormulaOperator,
  left: number,
  right: number,
  divisor: string,
): string | undefined {
  if (operator === '/' && right === 0) return `divides by 0: ${divisor} is 0 here`;
  if (operator !== '^') return undefined;
  if (left === 0 && right < 0) return 'divides by 0: a negative power of 0 does not exist';
  if (left < 0 && !Number.isInteger(right))
    return 'is a broken power of a negative number, which does not exist';
  return undefined;
}

function holds(comparison: FormulaComparison, left: number, right: number): boolean {
  switch (comparison) {
    case '<':
      return left < right;
    case '<=':
      return left <= right;
    case '>':
      return left > right;
    case '>=':
      return left >= right;
    case '==':
      return left === right;
  }
}

/** The sentence may stand far from the formula: it quotes the part, and leaves its place to the parts of the problem. */
function refused(node: FormulaNode, refusal: string, { text, inputAmong }: FormulaValues): Problem {
  const input = inputAmong?.(namesIn(node).map(({ id }) => id));
  const next = `change ${input ?? 'the design'} or the formula`;
  return new Problem('impossible', `${quotedPart(text, node)} ${refusal}; ${next}.`, {
    value: text.slice(node.from, node.to),
    character: node.from + 1,
    ...(input === undefined ? {} : { input }),
  });
}
