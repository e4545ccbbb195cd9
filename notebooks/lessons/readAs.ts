import { formatNumber, isKnownUnit, parseQuantity, toUnit, withUnit } from '../../lib/graph/units.ts';
import { splitQuantityText } from '../../lib/graph/unitText.ts';
import type { AxisSpec } from '../document.ts';
import type { NumberTask, Task } from './lesson.ts';
import type { Answer } from './nearness.ts';

/** Digits of a typed number as it was read; a place on a chart has fewer. */
const typedDigits = 8;
const placeDigits = 4;

/** A place along an axis, as it is written. */
export const placeWritten = (place: number, axis: Pick<AxisSpec, 'unit'>): string =>
  withUnit(formatNumber(place, placeDigits), axis.unit);

/** How an answer was understood: the number that was read, or the place that was marked; nothing for a choice. */
export function readAs(task: Task, given: Answer, axis?: AxisSpec): string | undefined {
  if (task.kind === 'mark' && typeof given === 'number' && axis)
    return `You marked ${placeWritten(given, axis)}.`;
  if (task.kind !== 'number' || typeof given !== 'string') return undefined;
  // One comma alone is the decimal mark; several part groups of three.
  const comma = /^[^.,]*,[^.,]*$/.test(given) ? '; a comma stands for the decimal point' : '';
  return `Read as ${numberRead(task, given)}${comma}.`;
}

/** In the unit that was typed, so that a mistaken separator or prefix shows. */
function numberRead({ unit, display }: NumberTask, text: string): string {
  const typed = splitQuantityText(text).unit;
  const shown = typed !== '' && isKnownUnit(typed) ? typed : display;
  return withUnit(
    formatNumber(toUnit(parseQuantity(text, unit, { bare: display }), unit, shown), typedDigits),
    shown,
  );
}
