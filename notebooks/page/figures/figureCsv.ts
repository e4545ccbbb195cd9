import { quoted } from '../../csvText.ts';
import type { FigureSpec } from '../../document.ts';
import { withUnit } from './text.ts';

interface Column {
  readonly name: string;
  readonly unit: string;
  readonly values: ArrayLike<number>;
  readonly words?: readonly string[];
}

/**
 * The numbers of a figure as CSV (RFC 4180, twelve significant digits: what comes after is the dust of binary sums). Curves that share their x share its column; a band has a
 * column for each of its sides; a map is x, y, value, a row for each point. What is not a number is left empty.
 */
export function figureCsv(spec: FigureSpec): string {
  const drawn = () => [...(spec.map ? mapColumns(spec) : []), ...seriesColumns(spec)];
  const columns = namedApart(spec.data ?? drawn());
  const count = Math.max(0, ...columns.map(({ values }) => values.length));
  const lines = [columns.map(({ name, unit }) => quoted(withUnit(name, unit))).join(',')];
  for (let row = 0; row < count; row++)
    lines.push(columns.map(({ values, words }) => cell(words?.[row] ?? values[row])).join(','));
  return `${lines.join('\r\n')}\r\n`;
}

/** Rows of texts as CSV (RFC 4180). */
export function rowsCsv(rows: readonly (readonly string[])[]): string {
  return `${rows.map((row) => row.map(quoted).join(',')).join('\r\n')}\r\n`;
}

function seriesColumns({ series, map, x: xAxis, y: yAxis }: FigureSpec): Column[] {
  const columns: Column[] = [];
  let last: Float64Array | undefined;
  for (const { label, x, y, y2 } of series) {
    if (!last || !sameValues(last, x)) {
      // Beside a map or another x, the column says whose x it is.
      const name = map || last ? `${xAxis.label}, ${label}` : xAxis.label;
      columns.push({ name, unit: xAxis.unit, values: x });
    }
    last = x;
    columns.push({ name: `${label}${y2 ? ', one side' : ''}`, unit: yAxis.unit, values: y });
    if (y2) columns.push({ name: `${label}, other side`, unit: yAxis.unit, values: y2 });
  }
  return columns;
}

function mapColumns({ map, x, y }: FigureSpec): Column[] {
  const { columns, rows, values, perValue = 1, label, unit, mirrored } = map!;
  // The mirror image brings no numbers of its own.
  const up: readonly [number, number] = mirrored ? [(y.domain[0] + y.domain[1]) / 2, y.domain[1]] : y.domain;
  const along = ([low, high]: readonly [number, number], index: number, count: number) =>
    count > 1 ? low + ((high - low) * index) / (count - 1) : low;
  const xs = Float64Array.from(values, (_, index) => along(x.domain, index % columns, columns));
  const ys = Float64Array.from(values, (_, index) => along(up, Math.floor(index / columns), rows));
  return [
    { name: x.label, unit: x.unit, values: xs },
    { name: y.label, unit: y.unit, values: ys },
    { name: label, unit, values: perValue === 1 ? values : values.map((value) => value * perValue) },
  ];
}

/** A number behind a name that an earlier column has: programs that read tables tell columns by their names. */
function namedApart(columns: readonly Column[]): Column[] {
  const counts = new Map<string, number>();
  return columns.map((column) => {
    const count = (counts.get(column.name) ?? 0) + 1;
    counts.set(column.name, count);
    return count === 1 ? column : { ...column, name: `${column.name}, ${count}` };
  });
}

function sameValues(a: Float64Array, b: Float64Array): boolean {
  return a === b || (a.length === b.length && a.every((value, index) => Object.is(value, b[index])));
}

function cell(value: number | string | undefined): string {
  if (typeof value === 'string') return quoted(value);
  return value === undefined || Number.isNaN(value) ? '' : String(Number(value.toPrecision(12)));
}
