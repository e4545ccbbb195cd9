import { formulaProblem, unexpected } from './formulaProblem.ts';
import { type FormulaNode, formulaLimits } from './formulaSyntax.ts';
import { type FormulaToken, formulaTokens } from './formulaTokens.ts';

/** Tokens of a formula, read one after the other, with the counts that bound the work. */
export interface FormulaReader {
  readonly text: string;
  /** The token that comes next; the end again and again once it is reached. */
  peek(): FormulaToken;
  take(): FormulaToken;
  /** The token taken last. */
  taken(): FormulaToken | undefined;
  /** The sign that comes next, undefined where it is none. */
  sign(): string | undefined;
  /** Takes a sign that must stand here; `expected` says so where it does not. */
  takeSign(sign: string, expected: string): FormulaToken;
  /** Counts a node; throws beyond 200. */
  node(node: FormulaNode): FormulaNode;
  /** Reads something one level deeper; throws beyond 32. */
  deeper<T>(read: () => T): T;
}

/** Throws `unreadable` for text that cannot be cut into tokens. */
export function formulaReader(text: string): FormulaReader {
  const tokens = formulaTokens(text);
  let at = 0;
  let nodes = 0;
  let depth = 0;
  const peek = () => tokens[at]!;
  const take = () => (peek().kind === 'end' ? peek() : tokens[at++]!);
  return {
    text,
    peek,
    take,
    taken: () => tokens[at - 1],
    sign: () => signOf(peek()),
    takeSign(sign, expected) {
      if (signOf(peek()) !== sign) throw unexpected(text, peek(), expected);
      return take();
    },
    node(node) {
      nodes += 1;
      if (nodes > formulaLimits.nodes) throw tooMuch(text, node, `${formulaLimits.nodes} parts`);
      return node;
    },
    deeper(read) {
      depth += 1;
      if (depth > formulaLimits.depth) throw tooMuch(text, peek(), `${formulaLimits.depth} levels`);
      const result = read();
      depth -= 1;
      return result;
    },
  };
}

function signOf(token: FormulaToken): string | undefined {
  return token.kind === 'sign' ? token.sign : undefined;
}

function tooMuch(text: string, span: { from: number; to: number }, limit: string) {
  const sentence = `the formula grows beyond ${limit}; give a part of it a name of its own and use that.`;
  return formulaProblem(text, span, sentence);
}
