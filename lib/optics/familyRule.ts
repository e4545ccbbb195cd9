import type { KindInterval } from './family.ts';
import type { ProfileKind } from './profileMetrics.ts';

/** A flat-top of the family by its middle plane. */
export interface FlatTop {
  readonly defocus: number;
  readonly z: number;
  readonly width: number;
  readonly relativePeak: number;
}

/** What lies between two neighbouring flat-tops, and how they compare. */
export interface FlatTopGap {
  /** Kinds between the two, along z; a shallow ring beside a ring counts as part of it. */
  readonly kinds: readonly ProfileKind[];
  /** True where nothing but rings, shallow ones among them, lies between. */
  readonly ringBetween: boolean;
  /** Largest dip between the two and its ζ: from there the dip falls to both flat-tops. */
  readonly largestDip: number;
  readonly largestDipAt: number;
  /** The larger over the smaller of the two, at least 1. */
  readonly widthRatio: number;
  readonly heightRatio: number;
  /** True where neither ratio exceeds the little difference allowed. */
  readonly alike: boolean;
}

/**
 * Which reading of the rule holds: three or more neighbouring flat-tops alike with rings between; only two such among
 * three or more; only two such and no other; three or more of which no neighbours are alike with rings between; none.
 */
export type RuleReading = 'three alike' | 'pair among more' | 'pair alone' | 'number only' | 'none';

export type RuleOutcome = 'reproduced' | 'reproduced in part' | 'not reproduced';

/** The rule of thumb judged on one design. */
export interface RuleVerdict {
  readonly outcome: RuleOutcome;
  readonly reading: RuleReading;
  /** Number of flat-tops in the range searched. */
  readonly count: number;
  /** Flat-tops of the longest row of neighbours alike with rings between; 1 where no two are. */
  readonly run: number;
  /** Kinds along z, a shallow ring beside a ring counted as part of it: "ring, flat-top, peaked". */
  readonly order: string;
  readonly flatTops: readonly FlatTop[];
  /** One fewer than there are flat-tops. */
  readonly gaps: readonly FlatTopGap[];
  /** Range in ζ that was searched. */
  readonly from: number;
  readonly to: number;
}

/** Kinds along z with shallow rings that lean on a ring left out. */
function orderOf(stretches: readonly KindInterval[]): ProfileKind[] {
  return stretches
    .filter(
      ({ kind }, i) =>
        kind !== 'shallow ring' || (stretches[i - 1]?.kind !== 'ring' && stretches[i + 1]?.kind !== 'ring'),
    )
    .map(({ kind }) => kind);
}

const ratioOf = (a: number, b: number): number => Math.max(a / b, b / a);

function gapBetween(
  stretches: readonly KindInterval[],
  first: number,
  next: number,
  little: number,
): FlatTopGap {
  const [one, other] = [stretches[first]!, stretches[next]!];
  const between = stretches.slice(first + 1, next);
  const darkest = between.reduce((a, b) => (b.largestDip > a.largestDip ? b : a));
  const widthRatio = ratioOf(one.width, other.width);
  const heightRatio = ratioOf(one.relativePeak, other.relativePeak);
  return {
    kinds: orderOf(between),
    ringBetween: between.every(({ kind }) => kind === 'ring' || kind === 'shallow ring'),
    largestDip: darkest.largestDip,
    largestDipAt: darkest.largestDipAt,
    widthRatio,
    heightRatio,
    alike: Math.max(widthRatio, heightRatio) <= little,
  };
}

function readingOf(count: number, run: number): RuleReading {
  if (run >= 3) return 'three alike';
  if (run === 2) return count >= 3 ? 'pair among more' : 'pair alone';
  return count >= 3 ? 'number only' : 'none';
}

const outcomes: Readonly<Record<RuleReading, RuleOutcome>> = {
  'three alike': 'reproduced',
  'pair among more': 'reproduced in part',
  'pair alone': 'not reproduced',
  'number only': 'not reproduced',
  none: 'not reproduced',
};

/**
 * Judges the rule "at least three flat-tops that differ a little in width and height, rings of varying depth between"
 * (common practice, no source) on the kinds found along z. `little` is the largest ratio of widths or heights of
 * neighbours that counts as a little, above 1. Reproduced: three or more neighbours alike with rings between. In part:
 * three or more flat-tops, of which only two neighbours are so. Not reproduced: the rest.
 */
export function judgeRule(family: readonly KindInterval[], little: number): RuleVerdict {
  const places = family.flatMap(({ kind }, i) => (kind === 'flat-top' ? [i] : []));
  const gaps = places.slice(1).map((next, i) => gapBetween(family, places[i]!, next, little));
  let run = Math.min(1, places.length);
  let current = run;
  for (const { alike, ringBetween } of gaps) {
    current = alike && ringBetween ? current + 1 : 1;
    run = Math.max(run, current);
  }
  const reading = readingOf(places.length, run);
  return {
    outcome: outcomes[reading],
    reading,
    count: places.length,
    run,
    order: orderOf(family).join(', '),
    flatTops: places.map((i) => {
      const { defocus, z, width, relativePeak } = family[i]!;
      return { defocus, z, width, relativePeak };
    }),
    gaps,
    from: family[0]!.from,
    to: family.at(-1)!.to,
  };
}
