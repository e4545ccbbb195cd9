import type { ComparedRow, Comparison } from '../lib/studies/compare.ts';
import { percentText } from './shortTexts.ts';

/** Less than this part of a number is what sums of binary fractions leave, and no change. */
const dust = 1e-9;

/** "+12 %", "−3.1 %"; nothing where there is none to tell. */
export function changeText(change: number | undefined): string {
  if (change === undefined || !Number.isFinite(change) || Math.abs(change) < dust) return '';
  // Beyond three times a factor is easier to grasp than a percentage.
  if (change > 2) return `× ${change < 999 ? (change + 1).toPrecision(3) : Math.round(change + 1)}`;
  return `${change > 0 ? '+' : '\u2212'}${percentText(Math.abs(change), 2)}`;
}

/** How many of the numbers of a document differ, and what is not compared. */
export function comparisonSaid({ results, same, heavy }: Comparison, title: string): string {
  const all = results.length + same;
  const counted =
    all === 0
      ? `‘${title}’ shows no numbers that can be compared at once.`
      : results.length === 0
        ? `None of the ${all} numbers of ‘${title}’ differs.`
        : `${results.length} of the ${all} numbers of ‘${title}’ ${results.length === 1 ? 'differs' : 'differ'}.`;
  if (heavy.length === 0) return counted;
  const left = heavy.length === 1 ? 'One more takes' : `${heavy.length} more take`;
  return `${counted} ${left} a longer computation.`;
}

/** The comparison as a file: a row a quantity, a column a design. */
export function comparisonColumns(names: readonly string[], rows: readonly ComparedRow[]): string[][] {
  return [['quantity', 'id', ...names], ...rows.map(({ name, id, texts }) => [name, id, ...texts])];
}
