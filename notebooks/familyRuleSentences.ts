import { searchedRange } from '../lib/design/family.ts';
import { verdict } from '../lib/design/familyRule.ts';
import type { ValueOf } from '../lib/graph/quantity.ts';
import { formatNumber, formatQuantity } from '../lib/graph/units.ts';
import type { FlatTopGap } from '../lib/optics/familyRule.ts';
import { type Phrase, phrase, says } from './prose.ts';

type Verdict = ValueOf<typeof verdict>;

/** The planes a count holds for: the range asked for, or what is left of it where the formulas end. */
export function within({ from, to }: { readonly from: number; readonly to: number }, range: number): Phrase {
  if (from > -range || to < range)
    return `between ${place(from)} and ${place(to)} Rayleigh lengths from the focus (as far as the formulas hold)`;
  return phrase`within ${searchedRange} Rayleigh ${range === 1 ? 'length' : 'lengths'} of the focus`;
}

/** ζ to a thousandth. */
const place = (defocus: number): string => formatNumber(Math.round(defocus * 1000) / 1000 + 0);
const percent = (part: number): string => formatQuantity(part, '1', '%', 2);
const times = (ratio: number): string => formatNumber(ratio, 3);
/** Half a per cent apart counts as equal. */
const equal = (ratio: number): boolean => ratio < 1.005;

/** Two flat-tops compared: "equally wide and high", "4.5 % apart in width and 13 % in height". */
function comparison({ widthRatio, heightRatio }: FlatTopGap): string {
  if (equal(widthRatio) && equal(heightRatio)) return 'equally wide and high';
  const width = equal(widthRatio) ? 'equally wide' : `${percent(widthRatio - 1)} apart in width`;
  const height = equal(heightRatio) ? 'equally high' : `${percent(heightRatio - 1)} apart in height`;
  return `${width} and ${height}`;
}

/** The ring between two: "a ring with a dip of 64 %". */
function ringOf({ kinds, largestDip }: FlatTopGap): string {
  return `a ${kinds.includes('ring') ? 'ring' : 'shallow ring'} with a dip of ${percent(largestDip)}`;
}

/** The largest ratio among gaps. */
const largest = (gaps: readonly FlatTopGap[], key: 'widthRatio' | 'heightRatio'): number =>
  Math.max(...gaps.map((gap) => gap[key]));

/** What lies between neighbours that are no pair, and by how much those differ at most. */
function elsewhere(gaps: readonly FlatTopGap[]): string {
  const most = (key: 'widthRatio' | 'heightRatio') => times(largest(gaps, key));
  const rings = gaps.filter(({ ringBetween }) => ringBetween).length;
  const between =
    rings === gaps.length
      ? 'rings between'
      : rings === 0
        ? 'peaked profiles between'
        : 'rings between some and peaked profiles between others';
  if (equal(largest(gaps, 'widthRatio')) && equal(largest(gaps, 'heightRatio')))
    return `in place alone, equally wide and high, with ${between}`;
  return `by factors of up to ${most('widthRatio')} in width and ${most('heightRatio')} in height (each in the middle of its stretch along z), with ${between}`;
}

const isPair = ({ alike, ringBetween }: FlatTopGap): boolean => alike && ringBetween;
const unlikeness = ({ widthRatio, heightRatio }: FlatTopGap): number => Math.max(widthRatio, heightRatio);
function sayThree({ count, run, gaps }: Verdict, where: Phrase): Phrase {
  const row = gaps.findIndex((_, i) => gaps.slice(i, i + run - 1).every(isPair));
  const pairs = gaps.slice(row, row + run - 1);
  const dips = pairs.map(({ largestDip }) => percent(largestDip)).join(', ');
  return phrase`Reproduced: ${where} there are ${String(count)} flat-tops, ${String(run)} of them in a row with rings between; neighbours there differ by at most ${percent(largest(pairs, 'widthRatio') - 1)} in width and ${percent(largest(pairs, 'heightRatio') - 1)} in height, and the rings dip by ${dips}.`;
}

function sayPart({ count, gaps }: Verdict, where: Phrase): Phrase {
  const pairs = gaps.filter(isPair);
  const [best] = [...pairs].sort((a, b) => unlikeness(a) - unlikeness(b));
  const others = gaps.filter((gap) => !isPair(gap));
  const who =
    pairs.length === 1 ? 'Two neighbours do' : `${pairs.length} pairs of neighbours do, the most alike`;
  return phrase`Reproduced in part: ${where} there are ${String(count)} flat-tops, but no three in a row that differ a little with rings between. ${who}: ${comparison(best!)}, around ${ringOf(best!)}. Elsewhere neighbours differ ${elsewhere(others)}.`;
}

function sayNone({ count, gaps }: Verdict, where: Phrase): Phrase {
  if (count === 0) return phrase`Not reproduced: ${where} there is no flat-top.`;
  if (count === 1)
    return phrase`Not reproduced: ${where} there is one flat-top only; the rule speaks of at least three.`;
  return phrase`Not reproduced: ${where} there are only two flat-tops; they differ ${elsewhere(gaps)}.`;
}

/** The rule of thumb (common practice, no source), judged on the family of this design. */
export const familyRuleSaid = says({ verdict, range: searchedRange }, ({ verdict, range }) => {
  const where = within(verdict, range);
  const { reading, gaps, count } = verdict;
  switch (reading) {
    case 'three alike':
      return sayThree(verdict, where);
    case 'pair among more':
      return sayPart(verdict, where);
    case 'pair alone':
      return phrase`Not reproduced: ${where} there are only two flat-tops, ${comparison(gaps[0]!)}, around ${ringOf(gaps[0]!)}; the rule speaks of at least three.`;
    case 'number only':
      return phrase`Not reproduced: ${where} there are ${String(count)} flat-tops, as many as the rule asks for, but no two neighbours that differ a little with a ring between. Neighbours differ ${elsewhere(gaps)}.`;
    case 'none':
      return sayNone(verdict, where);
  }
});

/** Kinds along z, in order. */
export const familyOrderSaid = says({ verdict, range: searchedRange }, ({ verdict, range }) => {
  const where = within(verdict, range);
  const { order } = verdict;
  if (!order.includes(','))
    return phrase`Everywhere ${where} the profile is ${order === 'peaked' ? 'peaked' : `a ${order}`}.`;
  return phrase`Along the beam, ${where}, the profile is in turn: ${order} (a shallow ring beside a ring counted as part of it).`;
});

/** How the dip runs along z between neighbouring flat-tops. */
export const dipRunSaid = says({ verdict, range: searchedRange }, ({ verdict, range }) => {
  const { gaps, flatTops } = verdict;
  const where = within(verdict, range);
  if (gaps.length === 0) return phrase`There are no two flat-tops ${where} between which a dip could run.`;
  const rises = gaps.flatMap(({ largestDip, largestDipAt }, i) =>
    largestDip < 0.05
      ? []
      : [
          `${percent(largestDip)} at ζ = ${place(largestDipAt)} between the flat-tops at ${place(flatTops[i]!.defocus)} and ${place(flatTops[i + 1]!.defocus)}`,
        ],
  );
  if (rises.length === 0)
    return phrase`Between neighbouring flat-tops ${where} the dip stays below 5\u202f%: the profiles there are peaked.`;
  const rest = rises.length < gaps.length ? ' Between the others it stays below 5\u202f%.' : '';
  return phrase`Along z, ${where}, the dip rises to ${rises.join(', to ')}, and falls again on both sides.${rest}`;
});
