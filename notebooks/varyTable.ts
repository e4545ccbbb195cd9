import { shownValue } from '../lib/graph/shown.ts';
import { placeText, type Varied } from './varied.ts';

/** The numbers of what was varied: columns by name, and a row for each place, as shown. */
export interface VariedRows {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export function variedRows({ plan, columns }: Varied): VariedRows {
  const { axes, results } = plan;
  const places = axes.reduce((product, { values }) => product * values.length, 1);
  const rows = Array.from({ length: places }, (_, place) => {
    let rest = place;
    const where = axes.map((axis) => {
      const text = placeText(axis, axis.values[rest % axis.values.length]);
      rest = Math.floor(rest / axis.values.length);
      return text;
    });
    const what = results.map((result, i) => {
      const value = columns[i]!.values[place];
      return value === undefined ? '—' : shownValue(result, { value });
    });
    return [...where, ...what];
  });
  return { columns: [...axes.map(({ input }) => input.name), ...results.map(({ name }) => name)], rows };
}
