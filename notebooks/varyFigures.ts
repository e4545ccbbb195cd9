import type { Derived } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { formatUnit } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import type { VariedResult } from '../lib/studies/vary.ts';
import type { AxisSpec, FigureSpec, MarkSpec, SeriesRole, SeriesSpec } from './document.ts';
import { listed } from './shortTexts.ts';
import {
  type ChartUnit,
  chartUnit,
  holdsToday,
  numberAxis,
  placeText,
  todayOf,
  type Varied,
} from './varied.ts';
import type { VaryAxis } from './varyForm.ts';
import { lineSaid, mapSaid, todaySaid, variedTitle } from './varyWords.ts';

/** Curves that one chart tells apart. */
const roles: readonly SeriesRole[] = ['main', 'second', 'third', 'reference'];
/** Values whose highest is as many times their lowest stand on a logarithmic scale. */
const wide = 300;

interface Line {
  readonly result: Derived<number>;
  readonly column: VariedResult;
}

/** Charts of what was varied: lines over one number, a map over two; none where the first axis is no number. */
export function variedFigures(varied: Varied): readonly FigureSpec[] {
  const { axes, results } = varied.plan;
  const [x, y] = axes;
  if (!numberAxis(x)) return [];
  const lines = results.map((result, i) => ({ result, column: varied.columns[i]! }));
  if (y && numberAxis(y)) return lines.map((line) => mapFigure(varied, [x, y], line));
  if (y) return lines.flatMap((line) => familyFigures(varied, x, y, line));
  return groupsOf(lines).map((group) => lineFigure(varied, x, group));
}

/** Results in one unit share a chart, as many as it tells apart. */
function groupsOf(lines: readonly Line[]): readonly (readonly Line[])[] {
  const groups: Line[][] = [];
  for (const line of lines) {
    const unitOf = ({ result }: Line) => result.display ?? String(result.unit);
    const group = groups.find((one) => unitOf(one[0]!) === unitOf(line) && one.length < roles.length);
    if (group) group.push(line);
    else groups.push([line]);
  }
  return groups;
}

function lineFigure(varied: Varied, axis: VaryAxis, lines: readonly Line[]): FigureSpec {
  const unit = chartUnit(
    lines[0]!.result,
    lines.flatMap(({ column }) => column.values),
  );
  const names = lines.map(({ result }) => result.name);
  const curves = lines.map(({ result, column }) => ({ label: result.name, values: column.values }));
  const said = lines.map(({ result, column }) => lineSaid(result, axis, column));
  return chartOf(varied, axis, curves, {
    unit,
    title: variedTitle(names, [axis]),
    label: listed(names),
    summary: [
      ...said,
      todaySaid(
        varied,
        lines.map(({ result }) => result),
      ),
    ].join(' '),
  });
}

/** One curve for each way of a choice. */
function familyFigures(varied: Varied, x: VaryAxis, ways: VaryAxis, { result, column }: Line): FigureSpec[] {
  const unit = chartUnit(result, column.values);
  const columns = ways.values.map((way, i) => {
    const values = column.values.slice(i * x.values.length, (i + 1) * x.values.length);
    const { problem } = column;
    return {
      label: placeText(ways, way),
      values,
      column: { id: column.id, values, ...(problem === undefined ? {} : { problem }) },
    };
  });
  const parts = Array.from({ length: Math.ceil(columns.length / roles.length) }, (_, i) =>
    columns.slice(i * roles.length, (i + 1) * roles.length),
  );
  return parts.map((part) => {
    const said = part.map(({ label, column }) => `${label}: ${lineSaid(result, x, column)}`);
    return chartOf(varied, x, part, {
      unit,
      title: variedTitle([result.name], [x, ways]),
      label: result.name,
      summary: [...said, todaySaid(varied, [result])].join(' '),
    });
  });
}

interface ChartWords {
  readonly unit: ChartUnit;
  readonly title: string;
  readonly label: string;
  readonly summary: string;
}

function chartOf(
  varied: Varied,
  axis: VaryAxis,
  curves: readonly { readonly label: string; readonly values: readonly (number | undefined)[] }[],
  { unit, title, label, summary }: ChartWords,
): FigureSpec {
  const x = axisSpec(axis);
  const series = curves.map(({ label, values }, i): SeriesSpec => {
    return {
      label,
      role: roles[i]!,
      x: x.column,
      y: Float64Array.from(values, unit.of),
    };
  });
  const marks: MarkSpec[] = holdsToday(axis, varied.inputs)
    ? [
        {
          kind: 'vertical',
          x: x.today(varied),
          label: `today, ${placeText(axis, varied.inputs[axis.input.id])}`,
          role: 'today',
        },
      ]
    : [];
  const scale = { label, unit: formatUnit(unit.unit) };
  const y = { ...scale, ...domainOf(series.flatMap(({ y }) => [...y])) };
  return { title, x: x.spec, y, series, marks, summary };
}

function axisSpec(axis: VaryAxis) {
  const { input, values } = numberAxis(axis)!;
  const unit = chartUnit(input, values);
  const column = Float64Array.from(values, unit.of);
  const spec: AxisSpec = {
    label: input.name,
    unit: formatUnit(unit.unit),
    domain: [column[0]!, column.at(-1)!],
    ...(axis.by === 'factors' ? { logarithmic: true } : {}),
  };
  return { spec, column, today: ({ inputs }: Varied) => unit.of(inputs[input.id] as number) };
}

/** Room for the values: from 0 where that costs little, logarithmic where they span powers of ten. */
export function domainOf(values: readonly number[]): Pick<AxisSpec, 'domain' | 'logarithmic'> {
  const finite = values.filter(Number.isFinite);
  if (finite.length === 0) return { domain: [0, 1] };
  const [low, high] = [Math.min(...finite), Math.max(...finite)];
  if (low > 0 && high / low > wide) return { domain: [low / 1.2, high * 1.2], logarithmic: true };
  if (low >= 0 && low < high / 2) return { domain: [0, niceEnd(high * 1.03)] };
  const room = 0.06 * (high - low) || 0.05 * Math.abs(high) || 1;
  return { domain: [low - room, high + room] };
}

function mapFigure(
  varied: Varied,
  axes: readonly [VaryAxis, VaryAxis],
  { result, column }: Line,
): FigureSpec {
  const unit = chartUnit(result, column.values);
  const [x, y] = axes.map((axis) => axisSpec({ ...axis, by: 'steps' })) as [
    ReturnType<typeof axisSpec>,
    ReturnType<typeof axisSpec>,
  ];
  const values = Float64Array.from(column.values, unit.of);
  const finite = [...values].filter(Number.isFinite);
  const [low, high] = finite.length === 0 ? [0, 1] : [Math.min(...finite), Math.max(...finite)];
  const logarithmic = low > 0 && high / low > wide;
  const inside = axes.every((axis) => holdsToday(axis, varied.inputs));
  const value = todayOf(varied, result);
  return {
    title: variedTitle([result.name], axes),
    x: x.spec,
    y: y.spec,
    series: [],
    marks: inside
      ? [
          {
            kind: 'point',
            x: x.today(varied),
            y: y.today(varied),
            label: value === undefined ? 'today' : `today, ${shownValue(result, { value })}`,
            role: 'today',
          },
        ]
      : [],
    map: {
      columns: x.column.length,
      rows: y.column.length,
      values,
      range: low < high ? [low, high] : [low - (Math.abs(low) || 1), low],
      ...(logarithmic ? { logarithmic } : {}),
      label: result.name,
      unit: formatUnit(unit.unit),
    },
    summary: `${mapSaid(result, axes, column)} ${todaySaid(varied, [result])}`,
  };
}
