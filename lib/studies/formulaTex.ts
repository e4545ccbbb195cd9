import { formatUnit } from '../graph/units.ts';
import type { FormulaComparison, FormulaNode, FormulaOperation } from './formulaSyntax.ts';

/** TeX of the symbol of a quantity, by its id. */
export type SymbolOf = (id: string) => string;

const named: Readonly<Record<string, string>> = {
  exp: '\\exp',
  ln: '\\ln',
  log10: '\\log_{10}',
  sin: '\\sin',
  cos: '\\cos',
  tan: '\\tan',
  asin: '\\arcsin',
  acos: '\\arccos',
  atan: '\\arctan',
  min: '\\min',
  max: '\\max',
};

const comparisonSigns: Readonly<Record<FormulaComparison, string>> = {
  '<': '<',
  '<=': '\\le',
  '>': '>',
  '>=': '\\ge',
  '==': '=',
};

/** TeX of a formula with the symbols of its quantities: `2\sqrt{\ln\left(\frac{F_\text{peak}}{F_\text{th}}\right)}`. */
export function formulaTex(node: FormulaNode, symbolOf: SymbolOf): string {
  switch (node.kind) {
    case 'number':
      return numberTex(node.digits, node.unit);
    case 'name':
      return node.id === 'pi' ? '\\pi' : node.id === 'e' ? '\\mathrm{e}' : symbolOf(node.id);
    case 'minus':
      return `-${heldTex(node.of, 2, symbolOf)}`;
    case 'compared': {
      const [left, right] = [node.left, node.right].map((side) => formulaTex(side, symbolOf));
      return `${left} ${comparisonSigns[node.comparison]} ${right}`;
    }
    case 'operation':
      return operationTex(node, symbolOf);
    case 'call':
      return callTex(
        node.name,
        node.args.map((arg) => formulaTex(arg, symbolOf)),
      );
  }
}

function operationTex({ operator, left, right }: FormulaOperation, symbolOf: SymbolOf): string {
  switch (operator) {
    case '+':
      return `${heldTex(left, 1, symbolOf)} + ${heldTex(right, 2, symbolOf)}`;
    case '-':
      return `${heldTex(left, 1, symbolOf)} - ${heldTex(right, 2, symbolOf)}`;
    case '*':
      return `${heldTex(left, 2, symbolOf)} \\cdot ${heldTex(right, 3, symbolOf)}`;
    case '/':
      return `\\frac{${formulaTex(left, symbolOf)}}{${formulaTex(right, symbolOf)}}`;
    case '^':
      return `{${heldTex(left, 4, symbolOf)}}^{${formulaTex(right, symbolOf)}}`;
  }
}

/** In brackets where it holds together less than its place asks for: 1 sum, 2 product, 3 factor, 4 base of a power. */
function heldTex(node: FormulaNode, needed: number, symbolOf: SymbolOf): string {
  const tex = formulaTex(node, symbolOf);
  return holdOf(node, tex) < needed ? `\\left(${tex}\\right)` : tex;
}

function holdOf(node: FormulaNode, tex: string): number {
  switch (node.kind) {
    case 'number':
      return node.unit === '' && /^[\d.]+$/.test(tex) ? 4 : 3;
    case 'name':
      return isSingleSymbol(tex) ? 4 : 1;
    case 'operation':
      return { '+': 1, '-': 1, '*': 2, '/': 3, '^': 3 }[node.operator];
    case 'call':
      return /^\\(left|begin|sqrt)/.test(tex) ? 4 : 3;
    default:
      return 1;
  }
}

/** Symbols such as R/w or 2a are more than one letter with its marks. */
function isSingleSymbol(tex: string): boolean {
  const bare = tex.replace(/\{(?:[^{}]|\{(?:[^{}]|\{[^{}]*\})*\})*\}/g, '');
  return !/[-+/=]|\\,|^\d/.test(bare);
}

function callTex(name: string, args: readonly string[]): string {
  const [first = '', second = '', third = ''] = args;
  const all = args.join(',\\, ');
  if (name === 'sqrt') return `\\sqrt{${first}}`;
  if (name === 'cbrt') return `\\sqrt[3]{${first}}`;
  if (name === 'abs') return `\\left|${first}\\right|`;
  if (name === 'floor') return `\\left\\lfloor ${first}\\right\\rfloor`;
  if (name === 'ceil') return `\\left\\lceil ${first}\\right\\rceil`;
  if (name === 'if') {
    return `\\begin{cases} ${second} & \\text{if } ${first} \\\\ ${third} & \\text{else} \\end{cases}`;
  }
  return `${named[name] ?? `\\operatorname{${name}}`}\\left(${all}\\right)`;
}

/** 3 µm as `3\,\mathrm{\mu m}`; a power of ten is written as one. */
function numberTex(digits: string, unit: string): string {
  const [mantissa = '', exponent] = digits.replace('+', '').split(/e/i);
  const power = exponent === undefined ? '' : `10^{${Number(exponent)}}`;
  const number = power === '' ? mantissa : mantissa === '1' ? power : `${mantissa}\\cdot ${power}`;
  if (unit === '') return number;
  return unit === 'deg' ? `${number}^{\\circ}` : `${number}\\,\\mathrm{${unitTex(unit)}}`;
}

function unitTex(unit: string): string {
  return formatUnit(unit)
    .replaceAll(' ', '\\,')
    .replace(/[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+/g, (raised) => `^{${raised.normalize('NFKC').replace('−', '-')}}`)
    .replaceAll('µ', '\\mu ')
    .replaceAll('·', '\\cdot ')
    .replaceAll('°', '{}^{\\circ}')
    .replaceAll('π', '\\pi ')
    .replaceAll('%', '\\%');
}
