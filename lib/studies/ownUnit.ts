import type { Quantity } from '../graph/quantity.ts';
import { formatUnit, isKnownUnit, prefixed } from '../graph/units.ts';
import { normaliseQuantityText } from '../graph/unitText.ts';
import { Problem } from '../problem.ts';
import { quoted } from './formulaProblem.ts';
import {
  exactUnitText,
  kindWords,
  powersOfUnit,
  samePowers,
  type UnitPowers,
  unitTextOf,
} from './unitPowers.ts';

/** SI unit of a result, and the unit that it is shown in. */
export interface OwnUnit {
  readonly unit: string;
  readonly display: string;
}

const longestUnit = 40;

/**
 * Units of a result with these powers. A chosen display must be of its kind, where an angle is a pure number and the other
 * way round: what the person chooses decides. Without one it is shown as the first of the quantities `named` with this unit
 * is, pure numbers plainly. Throws `impossible` for a display that is no unit or does not fit, and for powers that no unit has.
 */
export function ownUnit(
  powers: UnitPowers,
  display: string | undefined,
  named: readonly Quantity[],
): OwnUnit {
  const plain = unitTextOf(powers);
  if (plain === undefined) {
    const sentence = `The result is ${kindWords(powers)}, which no unit here has; raise it to a power or divide, so that whole powers remain.`;
    throw new Problem('impossible', sentence);
  }
  if (display === undefined || display.trim() === '')
    return { unit: plain, display: usualDisplay(plain, named) };
  return chosenUnit(powers, plain, display.trim());
}

function chosenUnit(powers: UnitPowers, plain: string, display: string): OwnUnit {
  const automatic = display.startsWith('auto:');
  const text = normaliseQuantityText(automatic ? display.slice(5) : display.slice(0, longestUnit));
  const known = automatic ? prefixed.includes(text) : text !== 'none' && isKnownUnit(text);
  if (!known || display.length > longestUnit) {
    const next = `use one such as ${formatUnit(usualDisplay(plain, []).replace('auto:', '')) || '%'}`;
    throw new Problem('impossible', `The unit ${quoted(display)} is not known; ${next}.`, { value: display });
  }
  const chosen = powersOfUnit(text);
  if (!samePowers(chosen, powers)) {
    const sentence = `The result is ${kindWords(powers)} and cannot be shown in ${quoted(display)}, the unit of ${kindWords(chosen)}.`;
    throw new Problem('impossible', sentence, { value: display });
  }
  return { unit: exactUnitText(chosen) ?? plain, display: automatic ? `auto:${text}` : text };
}

/** Units of the trade where those of the SI are not in use. */
const trade: Readonly<Record<string, string>> = { 'J/m^2': 'J/cm^2', 'W/m^2': 'W/cm^2' };

function usualDisplay(unit: string, named: readonly Quantity[]): string {
  // Of pure numbers each is shown in its own way: a ratio of shares need not be one.
  const like = named.find((quantity) => quantity.unit === unit && unit !== '1');
  return like?.display ?? trade[unit] ?? (prefixed.includes(unit) ? `auto:${unit}` : unit);
}
