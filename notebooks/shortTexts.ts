import { formatReadable } from '../lib/graph/units.ts';

/** Numbers in sentences that are no quantities of their own, in the units that people of the trade use; SI in. */
export const fluenceText = (value: number, digits = 3) => formatReadable(value, 'J/m^2', 'J/cm^2', digits);
export const angleText = (value: number, digits = 3) => formatReadable(value, 'rad', 'deg', digits);
export const percentText = (part: number, digits = 3) => formatReadable(part, '1', '%', digits);
export const lengthText = (value: number, digits = 3) => formatReadable(value, 'm', 'um', digits);
export const speedText = (value: number, digits = 3) => formatReadable(value, 'm/s', 'm/s', digits);
export const rateText = (value: number, digits = 3) => formatReadable(value, 'm^2/s', 'mm^2/s', digits);
export const timeText = (value: number, digits = 3) => formatReadable(value, 's', 'auto:s', digits);
export const energyText = (value: number, digits = 3) => formatReadable(value, 'J', 'uJ', digits);

/** "a", "a and b", "a, b and c". */
export function listed(texts: readonly string[]): string {
  return texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`;
}

/** "second", "third", "4th", "21st". */
export function ordinal(n: number): string {
  if (n === 2) return 'second';
  if (n === 3) return 'third';
  const end = n % 100 > 10 && n % 100 < 14 ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th');
  return `${n}${end}`;
}
