import type { UnitOf } from './quantity.ts';
import { formatQuantity, formatReadable } from './units.ts';

/**
 * What a value is that is no single number, in a few words that are true of any such value: the numbers of a record
 * with their units, the size of a grid or list, else the names of its parts.
 */
export function structureText(value: object, unit: UnitOf<unknown>): string {
  if (ArrayBuffer.isView(value)) return `${(value as Float64Array).length} numbers`;
  if (Array.isArray(value)) return listText(value);
  const fields = Object.entries(value);
  if (typeof unit === 'object') return recordText(fields, unit as Readonly<Record<string, unknown>>);
  const { columns, rows } = value as { columns?: unknown; rows?: unknown };
  if (typeof columns === 'number' && typeof rows === 'number') return `${columns} × ${rows} values`;
  return partsText(fields);
}

/** "outerEdge" → "outer edge". */
function inWords(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

function namesOf(fields: readonly (readonly [string, unknown])[]): string {
  return fields.map(([name]) => inWords(name)).join(', ');
}

function partsText(fields: readonly (readonly [string, unknown])[]): string {
  return `parts: ${namesOf(fields)}`;
}

function listText(items: readonly unknown[]): string {
  const [first] = items;
  if (typeof first === 'number')
    return items.map((item) => formatQuantity(item as number, '1', '1')).join(', ');
  const names = typeof first === 'object' && first !== null ? ` (${namesOf(Object.entries(first))})` : '';
  return `${items.length} entries${names}`;
}

/** Numbers of a record; an estimate, `{ value, uncertainty }`, counts by its value. */
function recordText(
  fields: readonly (readonly [string, unknown])[],
  units: Readonly<Record<string, unknown>>,
): string {
  const numbers = fields.flatMap(([name, held]) => {
    const estimate = held as { readonly value?: unknown } | null;
    const inner = typeof held === 'object' && typeof estimate?.value === 'number';
    const unit = inner ? (units[name] as { readonly value: string }).value : units[name];
    const number = inner ? estimate.value : held;
    if (typeof number !== 'number' || typeof unit !== 'string') return [];
    return [`${inWords(name)} ${formatReadable(number, unit, unit)}`];
  });
  return numbers.length > 0 ? numbers.join(', ') : partsText(fields);
}
