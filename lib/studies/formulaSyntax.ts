/** A place in the text of a formula, characters counted from 0; `to` is behind the last. */
export interface FormulaSpan {
  readonly from: number;
  readonly to: number;
}

export type FormulaOperator = '+' | '-' | '*' | '/' | '^';
export type FormulaComparison = '<' | '<=' | '>' | '>=' | '==';

/** A number with the unit behind it, `''` where there is none; `value` is in the SI unit of that kind. */
export interface FormulaNumber extends FormulaSpan {
  readonly kind: 'number';
  readonly value: number;
  readonly digits: string;
  readonly unit: string;
}

/** The id of a quantity, or one of the constants. */
export interface FormulaName extends FormulaSpan {
  readonly kind: 'name';
  readonly id: string;
}

export interface FormulaMinus extends FormulaSpan {
  readonly kind: 'minus';
  readonly of: FormulaNode;
}

export interface FormulaOperation extends FormulaSpan {
  readonly kind: 'operation';
  readonly operator: FormulaOperator;
  readonly left: FormulaNode;
  readonly right: FormulaNode;
}

/** Stands only as the first argument of `if`. */
export interface FormulaCompared extends FormulaSpan {
  readonly kind: 'compared';
  readonly comparison: FormulaComparison;
  readonly left: FormulaNode;
  readonly right: FormulaNode;
}

/** One of the functions with its arguments, or `if`. */
export interface FormulaCall extends FormulaSpan {
  readonly kind: 'call';
  readonly name: string;
  readonly args: readonly FormulaNode[];
}

/** A formula as a tree; spans point into its text and take in the brackets around a part. */
export type FormulaNode =
  | FormulaNumber
  | FormulaName
  | FormulaMinus
  | FormulaOperation
  | FormulaCompared
  | FormulaCall;

/** Longest text, most parts and deepest nesting of a formula: beyond these it is refused. */
export const formulaLimits = { characters: 500, nodes: 200, depth: 32 } as const;

/** What a node is made of, in the order in which it is written. */
export function partsOf(node: FormulaNode): readonly FormulaNode[] {
  if (node.kind === 'minus') return [node.of];
  if (node.kind === 'call') return node.args;
  return node.kind === 'number' || node.kind === 'name' ? [] : [node.left, node.right];
}

/** All nodes that are names of quantities or constants, first to last, each as often as it stands there. */
export function namesIn(node: FormulaNode): readonly FormulaName[] {
  return node.kind === 'name' ? [node] : partsOf(node).flatMap(namesIn);
}
