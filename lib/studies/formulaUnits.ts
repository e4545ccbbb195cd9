import { formulaConstants, formulaFunctions, type UnitRule } from './formulaFunctions.ts';
import { formulaProblem, quotedPart } from './formulaProblem.ts';
import { type FormulaNode, type FormulaOperation, partsOf } from './formulaSyntax.ts';
import { evaluateFormula } from './formulaValue.ts';
import { type Fraction, fraction, fractionOf } from './fraction.ts';
import {
  anglePowers,
  areModest,
  bareKindWords,
  combinePowers,
  isPure,
  kindWords,
  noPowers,
  powersOfUnit,
  raisePowers,
  samePowers,
  type UnitPowers,
} from './unitPowers.ts';

/** Denominators of powers go up to here: square, cube and their roots' roots. */
const mostUnder = 12;

/** A formula with the powers of base units that each of its names has. */
interface Place {
  readonly text: string;
  readonly unitOf: (name: Extract<FormulaNode, { kind: 'name' }>) => string;
}

/**
 * Powers of the base units that the value of a formula has. `unitOf` gives the unit of a quantity and throws where there is
 * none. Throws `impossible` at the first part whose units do not fit: a length added to a fluence, the sine of a length.
 */
export function powersOfFormula(node: FormulaNode, place: Place): UnitPowers {
  const powers = powersOfNode(node, place);
  if (areModest(powers)) return powers;
  const sentence = `${quotedPart(place.text, node)} has powers of units beyond 60 or of less than 1/60; divide earlier.`;
  throw formulaProblem(place.text, node, sentence, 'impossible');
}

function powersOfNode(node: FormulaNode, place: Place): UnitPowers {
  switch (node.kind) {
    case 'number':
      return powersOfUnit(node.unit);
    case 'name':
      return formulaConstants.has(node.id) ? noPowers : powersOfUnit(place.unitOf(node));
    case 'minus':
      return powersOfFormula(node.of, place);
    case 'operation':
      return powersOfOperation(node, place);
    case 'compared':
      return commonPowers(partsOf(node), 'compared', node, place);
    case 'call':
      return powersOfCall(formulaFunctions.get(node.name)!.units, node, place);
  }
}

function powersOfOperation(node: FormulaOperation, place: Place): UnitPowers {
  const { operator, left, right } = node;
  if (operator === '+' || operator === '-') {
    const doing = operator === '+' ? 'added' : 'subtracted';
    return commonPowers([left, right], doing, node, place);
  }
  const base = powersOfFormula(left, place);
  const other = powersOfFormula(right, place);
  if (operator === '^') return powersOfPower(node, base, other, place);
  return combinePowers(base, other, operator === '*' ? 1 : -1);
}

/** One kind for all of them; an angle beside pure numbers makes an angle. */
function commonPowers(
  nodes: readonly FormulaNode[],
  doing: string,
  whole: FormulaNode,
  place: Place,
): UnitPowers {
  const all = nodes.map((node) => powersOfFormula(node, place));
  const other = all.findIndex((powers) => !samePowers(powers, all[0]!));
  if (other === -1) return all.find((powers) => powers.some(({ over }) => over !== 0)) ?? noPowers;
  const [first, second] = [all[0]!, all[other]!];
  const sides = `${bareKindWords(first)} and ${bareKindWords(second)} cannot be ${doing}`;
  const which = `${quotedPart(place.text, nodes[0]!)} is ${kindWords(first)}, ${quotedPart(place.text, nodes[other]!)} is ${kindWords(second)}`;
  throw formulaProblem(place.text, whole, `${sides}: ${which}.`, 'impossible');
}

function powersOfPower(
  node: FormulaOperation,
  base: UnitPowers,
  exponent: UnitPowers,
  place: Place,
): UnitPowers {
  if (!isPure(exponent)) throw notPure(node.right, exponent, 'an exponent', place);
  if (isPure(base)) return noPowers;
  return raisePowers(base, fixedExponent(node, base, place));
}

/** What has a unit is raised to a fixed power, or its unit would not be fixed either. */
function fixedExponent({ left, right }: FormulaOperation, base: UnitPowers, { text }: Place): Fraction {
  const isFixed = (node: FormulaNode): boolean =>
    (node.kind === 'number' && node.unit === '') ||
    (partsOf(node).length > 0 && partsOf(node).every(isFixed));
  const start = `${quotedPart(text, left)} is ${kindWords(base)}, which only a fixed power such as 2 or 1/2 gives a unit`;
  if (!isFixed(right))
    throw formulaProblem(text, right, `${start}; divide by a value of its kind first.`, 'impossible');
  const value = evaluateFormula(right, { text, valueOf: () => 0 });
  const found = fractionOf(value, mostUnder);
  if (found && Math.abs(found.over) <= 60) return found;
  const what = `${quotedPart(text, right)} is no such power (whole numbers up to 60, or fractions with a denominator up to ${mostUnder})`;
  throw formulaProblem(text, right, `${start}; ${what}.`, 'impossible');
}

function powersOfCall(
  units: UnitRule,
  node: Extract<FormulaNode, { kind: 'call' }>,
  place: Place,
): UnitPowers {
  const { args, name } = node;
  switch (units) {
    case 'same':
      return commonPowers(args, `taken together by ${name}`, node, place);
    case 'direction':
      commonPowers(args, `taken together by ${name}`, node, place);
      return anglePowers;
    case 'half':
    case 'third':
      return raisePowers(powersOfFormula(args[0]!, place), fraction(1, units === 'half' ? 2 : 3));
    case 'choice':
      powersOfFormula(args[0]!, place);
      return commonPowers(args.slice(1), 'the two results of one if', node, place);
    default: {
      const powers = powersOfFormula(args[0]!, place);
      if (!isPure(powers)) throw notPure(args[0]!, powers, name, place);
      return units === 'toAngle' ? anglePowers : noPowers;
    }
  }
}

function notPure(node: FormulaNode, powers: UnitPowers, taker: string, { text }: Place) {
  const sentence = `${quotedPart(text, node)} is ${kindWords(powers)}, but ${taker} needs a pure number; divide by a value of its kind first.`;
  return formulaProblem(text, node, sentence, 'impossible');
}
