import { formulaConstants, formulaFunctions } from './formulaFunctions.ts';
import { formulaProblem, quoted, unexpected } from './formulaProblem.ts';
import { type FormulaReader, formulaReader } from './formulaReader.ts';
import type { FormulaComparison, FormulaNode, FormulaOperator } from './formulaSyntax.ts';
import { nearestNames } from './nearestNames.ts';

/** How strongly a sign holds what stands on both sides of it. */
const strengths: ReadonlyMap<string, number> = new Map([
  ['+', 1],
  ['-', 1],
  ['*', 2],
  ['/', 2],
  ['^', 4],
]);
/** −2^2 is −4, and 2^−3 may be written: a minus sign holds more than a product and less than a power. */
const minusStrength = 3;
const comparisons: ReadonlySet<string | undefined> = new Set(['<', '<=', '>', '>=', '==']);
const operand = "a number, a quantity, a function or '('";
const signExpected = 'one of + − * / ^';

/**
 * Reads a formula to a tree (a Pratt parser: each sign binds by its strength; ^ from right to left). Throws `unreadable`
 * at the first character that does not fit, and where the formula is longer, larger or deeper than `formulaLimits`.
 * Ids are not looked up here.
 */
export function parseFormula(text: string): FormulaNode {
  const reader = formulaReader(text);
  const node = readSum(reader, 0);
  if (comparisons.has(reader.sign())) throw misplacedComparison(reader);
  if (reader.peek().kind !== 'end') throw wrongFollower(reader, `${signExpected} or the end`);
  return node;
}

function readSum(reader: FormulaReader, strength: number): FormulaNode {
  return reader.deeper(() => {
    let left = readOperand(reader);
    for (let next = strengthOf(reader); next !== undefined && next > strength; next = strengthOf(reader)) {
      left = readOperation(reader, left, next);
    }
    return left;
  });
}

function strengthOf(reader: FormulaReader): number | undefined {
  return strengths.get(reader.sign() ?? '');
}

function readOperation(reader: FormulaReader, left: FormulaNode, strength: number): FormulaNode {
  const operator = reader.sign() as FormulaOperator;
  if (operator === '^') refuseUnitPower(reader, left);
  reader.take();
  const right = readSum(reader, operator === '^' ? strength - 1 : strength);
  return reader.node({ kind: 'operation', operator, left, right, from: left.from, to: right.to });
}

/** 3 um ^ 2 may be 3 µm² or 9 µm²; nobody can tell. */
function refuseUnitPower(reader: FormulaReader, base: FormulaNode): void {
  if (base.kind !== 'number' || base.unit === '' || reader.text[base.from] === '(') return;
  const number = reader.text.slice(base.from, base.to);
  const sentence = `a power follows ${quoted(number)}; write (${number})^… where the number is raised as well, and the power close to the unit, as in 3 um^2, where the unit alone is.`;
  throw formulaProblem(reader.text, reader.peek(), sentence);
}

function readOperand(reader: FormulaReader): FormulaNode {
  const token = reader.peek();
  if (token.kind === 'number') {
    reader.take();
    return reader.node(token);
  }
  if (token.kind === 'name') return readName(reader);
  const { from } = token;
  switch (reader.sign()) {
    case '(':
      return readBrackets(reader);
    case '-': {
      reader.take();
      const of = readSum(reader, minusStrength);
      return reader.node({ kind: 'minus', of, from, to: of.to });
    }
    case '+':
      reader.take();
      return readSum(reader, minusStrength);
    default:
      throw unexpected(reader.text, token, operand);
  }
}

function readBrackets(reader: FormulaReader): FormulaNode {
  const { from } = reader.take();
  const inside = readSum(reader, 0);
  if (comparisons.has(reader.sign())) throw misplacedComparison(reader);
  const { to } = closeBracket(reader, `${signExpected} or ')'`);
  return { ...inside, from, to };
}

function closeBracket(reader: FormulaReader, expected: string) {
  if (reader.sign() !== ')') throw wrongFollower(reader, expected);
  return reader.take();
}

function readName(reader: FormulaReader): FormulaNode {
  const token = reader.take();
  if (token.kind !== 'name') throw unexpected(reader.text, token, operand);
  const { id, from, to } = token;
  if (reader.sign() === '(' && !formulaConstants.has(id)) return readCall(reader, id, from);
  if (formulaFunctions.has(id)) throw unexpected(reader.text, reader.peek(), `'(' behind ${id}`);
  return reader.node({ kind: 'name', id, from, to });
}

function readCall(reader: FormulaReader, name: string, from: number): FormulaNode {
  const known = formulaFunctions.get(name);
  if (!known) throw unknownFunction(reader, name, from);
  reader.take();
  const args = [known.units === 'choice' ? readComparison(reader) : readSum(reader, 0)];
  while (reader.sign() === ',') {
    reader.take();
    args.push(readSum(reader, 0));
  }
  if (comparisons.has(reader.sign())) throw misplacedComparison(reader);
  const { to } = closeBracket(reader, `${signExpected}, ',' or ')'`);
  const [fewest, most] = known.takes;
  if (args.length < fewest || args.length > most) throw wrongCount(reader, name, args.length, { from, to });
  return reader.node({ kind: 'call', name, args, from, to });
}

function readComparison(reader: FormulaReader): FormulaNode {
  const left = readSum(reader, 0);
  const comparison = reader.sign();
  if (!comparisons.has(comparison)) throw wrongFollower(reader, 'one of < <= > >= ==');
  reader.take();
  const right = readSum(reader, 0);
  if (comparisons.has(reader.sign())) {
    const sentence =
      'a second comparison follows; one if compares two values, a further if may stand inside it.';
    throw formulaProblem(reader.text, reader.peek(), sentence);
  }
  const parts = { comparison: comparison as FormulaComparison, left, right };
  return reader.node({ kind: 'compared', ...parts, from: left.from, to: right.to });
}

function misplacedComparison(reader: FormulaReader) {
  const sentence = `stands ${quoted(reader.sign()!)}; values are compared only at the start of if, as in 'if(a < b, x, y)'.`;
  return formulaProblem(reader.text, reader.peek(), sentence);
}

/** Two values side by side want a sign between them; a word behind a plain number may be meant as its unit. */
function wrongFollower(reader: FormulaReader, expected: string) {
  const [last, next] = [reader.taken(), reader.peek()];
  const meantUnit =
    last?.kind === 'number' && last.unit === '' && next.kind === 'name' && !next.id.includes('.');
  if (!meantUnit) return unexpected(reader.text, next, expected);
  const sentence = `stands ${quoted(next.id)}, which is no unit here, where ${expected} is expected.`;
  return formulaProblem(reader.text, next, sentence);
}

function unknownFunction(reader: FormulaReader, name: string, from: number) {
  const near = nearestNames(name, [...formulaFunctions.keys()], 2);
  const meant = near.length > 0 ? ` Did you mean ${near.join(' or ')}?` : '';
  const sentence = `stands ${quoted(name)} with a bracket, which is no function.${meant} There are ${[...formulaFunctions.keys()].join(', ')}.`;
  return formulaProblem(reader.text, { from, to: from + name.length }, sentence);
}

function wrongCount(
  reader: FormulaReader,
  name: string,
  count: number,
  span: { readonly from: number; readonly to: number },
) {
  const [fewest, most] = formulaFunctions.get(name)!.takes;
  const wanted = fewest === most ? `${fewest}` : `${fewest} or more`;
  const sentence = `${name} has ${count} value${count === 1 ? '' : 's'} in its brackets, where ${wanted} belong${wanted === '1' ? 's' : ''}.`;
  return formulaProblem(reader.text, span, sentence);
}
