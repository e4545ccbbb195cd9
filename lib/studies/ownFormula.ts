import type { Quantity } from '../graph/quantity.ts';
import { isKnownUnit } from '../graph/units.ts';
import type { Problem } from '../problem.ts';
import { formulaConstants } from './formulaFunctions.ts';
import { parseFormula } from './formulaParser.ts';
import { formulaProblem, quoted } from './formulaProblem.ts';
import { type FormulaName, type FormulaNode, namesIn } from './formulaSyntax.ts';
import { powersOfFormula } from './formulaUnits.ts';
import { nearestNames } from './nearestNames.ts';
import type { UnitPowers } from './unitPowers.ts';

/** A formula whose names are known and whose units fit. */
export interface ReadFormula {
  readonly node: FormulaNode;
  /** The quantities that it names, each once, in the order of their first place. */
  readonly named: readonly Quantity[];
  readonly powers: UnitPowers;
}

/** Ids in a formula, constants left out, each once. */
export function idsIn(node: FormulaNode): string[] {
  return [...new Set(namesIn(node).map(({ id }) => id))].filter((id) => !formulaConstants.has(id));
}

/**
 * Reads a formula over these quantities. Throws a Problem with the number of the character: `unreadable` where the text
 * does not fit, `absent` for an id that there is not, with the nearest, `impossible` where units or values do not fit.
 */
export function readFormula(text: string, quantities: ReadonlyMap<string, Quantity>): ReadFormula {
  const node = parseFormula(text);
  const unitOf = (name: FormulaName) => {
    const quantity = quantities.get(name.id);
    if (!quantity) throw unknownName(text, name, quantities);
    if (!isNumber(quantity)) throw noNumber(text, name, quantity);
    return quantity.unit as string;
  };
  const powers = powersOfFormula(node, { text, unitOf });
  return { node, named: idsIn(node).map((id) => quantities.get(id)!), powers };
}

/** Numbers have one unit; whether a result is a single one or several only its value tells. */
export function isNumber({ kind, unit }: Quantity): boolean {
  const single = kind === 'number' || kind === 'constant' || kind === 'derived';
  return single && typeof unit === 'string' && unit !== 'none';
}

function noNumber(text: string, name: FormulaName, quantity: Quantity): Problem {
  const sentence = `stands ${quoted(name.id)} (${quantity.name}), which is no number; formulas take numbers only.`;
  return formulaProblem(text, name, sentence, 'impossible');
}

function unknownName(text: string, name: FormulaName, quantities: ReadonlyMap<string, Quantity>): Problem {
  const { id } = name;
  if (!id.includes('.') && id.length <= 20 && isKnownUnit(id)) {
    return formulaProblem(
      text,
      name,
      `stands the unit ${quoted(id)} without a number; write 1 ${id}.`,
      'absent',
    );
  }
  const numbers = [...quantities.values()].filter(isNumber).map((quantity) => quantity.id);
  const near = nearestNames(id, [...numbers, ...formulaConstants.keys()], 3);
  const meant = near.length > 0 ? `did you mean ${near.join(', ')}?` : 'ids look like spot.width.';
  return formulaProblem(text, name, `stands ${quoted(id)}, which is no quantity; ${meant}`, 'absent');
}
