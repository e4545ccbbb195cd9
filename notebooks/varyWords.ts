import type { Derived } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { formatNumber } from '../lib/graph/units.ts';
import type { VariedResult } from '../lib/studies/vary.ts';
import { listed } from './shortTexts.ts';
import { holdsToday, placeText, todayOf, type Varied } from './varied.ts';
import type { VaryAxis } from './varyForm.ts';

const sentenceCase = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** "1 % more → 2 % less"; of an input at 0 the change is counted in its usual span. */
export function influenceSaid(strength: number, today: unknown): string {
  const size = Number(Math.abs(strength).toPrecision(2));
  const more = today === 0 ? '1\u202f% of its usual span more' : '1\u202f% more';
  const shown = size < 1e-3 ? 'less than 0.001' : formatNumber(size);
  return `${more} → ${shown}\u202f% ${strength > 0 ? 'more' : 'less'}`;
}

/** "spot width over magnification", "… over magnification and focal length". */
export function variedTitle(names: readonly string[], axes: readonly VaryAxis[]): string {
  return sentenceCase(`${listed(names)} over ${listed(axes.map(({ input }) => input.name))}`);
}

/** How a result runs along an input; `column` holds its values in the order of the axis. */
export function lineSaid(result: Derived<number>, axis: VaryAxis, column: VariedResult): string {
  const show = (value: number) => shownValue(result, { value });
  const at = (i: number) => placeText(axis, axis.values[i]);
  const places = column.values.flatMap((value, i) => (value === undefined ? [] : [{ value, i }]));
  const first = places[0];
  const last = places.at(-1);
  if (!first || !last)
    return `${sentenceCase(result.name)} has no value anywhere here: ${column.problem ?? ''}`;
  // By what is read: below that, machines differ.
  const steps = places
    .slice(1)
    .map(({ value }, i) => (show(value) === show(places[i]!.value) ? 0 : value - places[i]!.value));
  const low = places.reduce((least, one) => (one.value < least.value ? one : least));
  const high = places.reduce((most, one) => (one.value > most.value ? one : most));
  const gaps = gapsSaid(column);
  if (show(low.value) === show(high.value))
    return `${sentenceCase(result.name)} stays at ${show(first.value)}.${gaps}`;
  const ends = `from ${show(first.value)} at ${at(first.i)} to ${show(last.value)} at ${at(last.i)}`;
  const numbers = axis.input.kind === 'number';
  if (numbers && steps.every((step) => step >= 0))
    return `${sentenceCase(result.name)} rises ${ends}.${gaps}`;
  if (numbers && steps.every((step) => step <= 0))
    return `${sentenceCase(result.name)} falls ${ends}.${gaps}`;
  const where = ({ value }: { value: number }) =>
    whereSaid(
      places.filter((one) => show(one.value) === show(value)).map(({ i }) => i),
      at,
      numbers,
    );
  return `Of the ${places.length} values worked out, ${result.name} is lowest with ${show(low.value)} ${where(low)} and highest with ${show(high.value)} ${where(high)}.${gaps}`;
}

/** The lowest and the highest place of a result over two inputs, the first axis moving fastest. */
export function mapSaid(
  result: Derived<number>,
  axes: readonly [VaryAxis, VaryAxis],
  column: VariedResult,
): string {
  const show = (value: number) => shownValue(result, { value });
  const places = column.values.flatMap((value, i) => (value === undefined ? [] : [{ value, i }]));
  if (places.length === 0)
    return `${sentenceCase(result.name)} has no value anywhere here: ${column.problem ?? ''}`;
  const [x, y] = axes;
  const at = (i: number) => {
    const [along, up] = [i % x.values.length, Math.floor(i / x.values.length)];
    return `${x.input.name} ${placeText(x, x.values[along])} and ${y.input.name} ${placeText(y, y.values[up])}`;
  };
  const low = places.reduce((least, one) => (one.value < least.value ? one : least));
  const high = places.reduce((most, one) => (one.value > most.value ? one : most));
  if (show(low.value) === show(high.value))
    return `${sentenceCase(result.name)} stays at ${show(low.value)}.${gapsSaid(column)}`;
  const where = ({ value }: { value: number }) => {
    const same = places.filter((one) => show(one.value) === show(value));
    return `${same.length > 1 ? 'among other places ' : ''}at ${at(same[0]!.i)}`;
  };
  const between = `The colours run between the ${x.values.length} by ${y.values.length} places worked out.`;
  return `Of the ${places.length} places worked out, ${result.name} is lowest with ${show(low.value)} ${where(low)}, and highest with ${show(high.value)} ${where(high)}. ${between}${gapsSaid(column)}`;
}

/**
 * All places where an end is read, in the order of the axis, so that no machine's last digit decides among them: a level part
 * of a curve has two ends.
 */
function whereSaid(places: readonly number[], at: (i: number) => string, numbers: boolean): string {
  const [first, last] = [places[0]!, places.at(-1)!];
  if (places.length === 1) return `at ${at(first)}`;
  if (places.length === 2 || !numbers) return `at ${listed(places.map(at))}`;
  if (last - first === places.length - 1) return `from ${at(first)} to ${at(last)}`;
  return `in several places (first at ${at(first)}, last at ${at(last)})`;
}

function gapsSaid({ values, problem }: VariedResult): string {
  const without = values.filter((value) => value === undefined).length;
  if (without === 0) return '';
  return ` At ${without} of the ${values.length} places it has no value, at the first of them because: ${problem ?? ''}`;
}

/** Where today's design stands on a chart, and what it has there. */
export function todaySaid(varied: Varied, results: readonly Derived<number>[]): string {
  const { axes } = varied.plan;
  const outside = axes.filter((axis) => !holdsToday(axis, varied.inputs));
  const stands = listed(
    axes.map((axis) => `${axis.input.name} is ${placeText(axis, varied.inputs[axis.input.id])}`),
  );
  const given = results.map((result) => {
    const value = todayOf(varied, result);
    return value === undefined
      ? `no value of ${result.name}`
      : `${result.name} ${shownValue(result, { value })}`;
  });
  const beyond = outside.length === 0 ? '' : ', outside what is shown';
  return `Today ${stands}${beyond}, with ${listed(given)}.`;
}
