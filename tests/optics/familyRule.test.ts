import { describe, expect, it } from 'vitest';
import { findFamily, type KindInterval, sampleSearch } from '../../lib/optics/family.ts';
import { judgeRule } from '../../lib/optics/familyRule.ts';
import type { ProfileKind } from '../../lib/optics/profileMetrics.ts';
import { expectClose } from '../close.ts';
import { type FileInterval, familyDesigns, lightOf } from './familyDesigns.ts';

const little = 1.25;

/** A stretch of the file as the program would find it, lengths in w0 and z in ζ. */
function asFound({
  kind,
  from,
  to,
  at,
  dip,
  ratio90to50,
  peak,
  fullWidthHalfMaximum,
}: FileInterval): KindInterval {
  return {
    kind: kind as ProfileKind,
    from,
    to,
    zFrom: from,
    zTo: to,
    defocus: at,
    z: at,
    dip,
    areaRatio: ratio90to50,
    relativePeak: peak,
    width: fullWidthHalfMaximum,
    ringDiameter: 0,
    ringWidth: 0,
    energyInHalf: 0.5,
    largestDip: dip,
    largestDipAt: at,
  };
}

/**
 * Read off family.json by hand, design by design. The rule: at least three flat-tops that differ a little in width and
 * height, rings of varying depth between. Ratios are quotients of the file's widths and peaks.
 */
const byHand = {
  // Four: ±0.44 and ±4.89. The near two are twins around a ring of 64 %. The far two are 5.1595/3.0196 wider and
  // 0.175924/0.051726 dimmer, and the profiles on the way to them are peaked.
  'open, matched, coherent': {
    outcome: 'reproduced in part',
    reading: 'pair among more',
    count: 4,
    run: 2,
    order: 'ring, flat-top, peaked, flat-top, ring, flat-top, peaked, flat-top, ring',
    ratios: [
      [1.7087, 3.4011],
      [1, 1],
      [1.7087, 3.4011],
    ],
    between: ['peaked', 'ring', 'peaked'],
    dips: [0, 0.64386, 0],
  },
  // Four: ±0.28, broad, and ±4.72. Between the near twins stands only a shallow ring of 5.1 %: one broad plateau, nearly.
  'stop 1.4, matched, coherent': {
    outcome: 'reproduced in part',
    reading: 'pair among more',
    count: 4,
    run: 2,
    order: 'ring, flat-top, peaked, flat-top, shallow ring, flat-top, peaked, flat-top, ring',
    ratios: [
      [1.7021, 3.1482],
      [1, 1],
      [1.7021, 3.1482],
    ],
    between: ['peaked', 'shallow ring', 'peaked'],
    dips: [0, 0.05073, 0],
  },
  // Three, as the rule counts: but the outer two are 1.7 wider and 3.1 dimmer, and what lies between is peaked, no ring.
  'stop 1.5, matched, M2 1.2': {
    outcome: 'not reproduced',
    reading: 'number only',
    count: 3,
    run: 1,
    order: 'ring, flat-top, peaked, flat-top, peaked, flat-top, ring',
    ratios: [
      [1.6998, 3.1053],
      [1.6998, 3.1053],
    ],
    between: ['peaked', 'peaked'],
    dips: [0, 0],
  },
  // Four; the near two, −0.29 and 0.70, differ by 4.5 % in width and 13 % in height around a ring of 78 %: what the rule
  // describes, but two of them. The far two are 1.7 wider and 3.4 dimmer, peaked profiles on the way.
  'open, 0.95, 0.9 pi': {
    outcome: 'reproduced in part',
    reading: 'pair among more',
    count: 4,
    run: 2,
    order: 'ring, flat-top, peaked, flat-top, ring, flat-top, peaked, flat-top, ring',
    ratios: [
      [1.721, 3.4239],
      [1.0446, 1.1292],
      [1.6634, 3.4105],
    ],
    between: ['peaked', 'ring', 'peaked'],
    dips: [0, 0.78483, 0],
  },
  // Six; the middle two, −0.15 and 0.65, of equal width and 4.7 % apart in height, around a ring of 13 %. Rings lie also
  // between the outer neighbours, but those differ by 1.7 in width and nearly 3 in height.
  'stop 1.6, 1.05, 0.9 pi': {
    outcome: 'reproduced in part',
    reading: 'pair among more',
    count: 6,
    run: 2,
    order:
      'peaked, flat-top, ring, flat-top, peaked, flat-top, ring, flat-top, peaked, flat-top, ring, flat-top, peaked',
    ratios: [
      [1.6876, 2.8269],
      [1.7795, 3.4311],
      [1.0002, 1.0472],
      [1.8025, 3.6763],
      [1.671, 2.6954],
    ],
    between: ['ring', 'peaked', 'ring', 'peaked', 'ring'],
    dips: [0.89531, 0, 0.13249, 0, 0.90242],
  },
  // Two twins around a ring with a dark centre, and no third.
  'stop 1.4, null ratio': {
    outcome: 'not reproduced',
    reading: 'pair alone',
    count: 2,
    run: 2,
    order: 'peaked, flat-top, ring, flat-top, peaked',
    ratios: [[1, 1]],
    between: ['ring'],
    dips: [1],
  },
} as const;

describe.each(familyDesigns)('the rule judged: $name', (design) => {
  const hand = byHand[design.name as keyof typeof byHand];

  it('on the file', () => {
    const verdict = judgeRule(design.intervals.map(asFound), little);
    const { outcome, reading, count, run, order } = hand;
    expect(verdict).toMatchObject({ outcome, reading, count, run, order });
    expect(verdict.gaps.map(({ kinds }) => kinds.join())).toEqual([...hand.between]);
    verdict.gaps.forEach(({ widthRatio, heightRatio, largestDip }, i) => {
      const near = { absolute: 2e-4, source: 'quotients of the digits of family.json' };
      expectClose(widthRatio, hand.ratios[i]![0], near);
      expectClose(heightRatio, hand.ratios[i]![1], near);
      expectClose(largestDip, hand.dips[i]!, near);
    });
  });

  it('on what the program finds', () => {
    const light = lightOf(design);
    const verdict = judgeRule(findFamily(light, sampleSearch(light, 7)), little);
    const { outcome, reading, count, run, order } = hand;
    expect(verdict).toMatchObject({ outcome, reading, count, run, order, from: -7, to: 7 });
    verdict.gaps.forEach(({ widthRatio, heightRatio, largestDip, ringBetween }, i) => {
      expect(ringBetween).toBe(hand.between[i] !== 'peaked');
      // The file's middle planes lie up to 0.01 in ζ off (0.025 for M² > 1), over which the height changes by 2 %.
      const near = { relative: 0.05, source: 'family.json' };
      expectClose(widthRatio, hand.ratios[i]![0], near);
      expectClose(heightRatio, hand.ratios[i]![1], near);
      // The file tells the dip of the middle plane alone; the largest of the stretch is no smaller.
      expect(largestDip).toBeGreaterThan(hand.dips[i]! - 1e-3);
    });
  });
});

describe('what would count', () => {
  const plain = asFound(familyDesigns[0]!.intervals[0]!);
  const stretch = (kind: ProfileKind, width = 1, relativePeak = 1, largestDip = 0): KindInterval => ({
    ...plain,
    kind,
    width,
    relativePeak,
    largestDip,
  });
  const ring = stretch('ring', 1, 1, 0.4);
  const shallow = stretch('shallow ring', 1, 1, 0.1);
  const judge = (...stretches: KindInterval[]) => judgeRule(stretches, little);

  it('three alike with rings between reproduce the rule', () => {
    const verdict = judge(
      stretch('flat-top'),
      shallow,
      ring,
      stretch('flat-top', 1.2, 0.81),
      shallow,
      stretch('flat-top', 1, 1),
    );
    expect(verdict).toMatchObject({ outcome: 'reproduced', reading: 'three alike', count: 3, run: 3 });
    expect(verdict.order).toBe('flat-top, ring, flat-top, shallow ring, flat-top');
    expect(verdict.gaps.map(({ largestDip }) => largestDip)).toEqual([0.4, 0.1]);
  });

  it.each([
    ['too wide', [stretch('flat-top'), ring, stretch('flat-top', 1.26)]],
    ['too dim', [stretch('flat-top'), ring, stretch('flat-top', 1, 0.79)]],
    ['peaked between', [stretch('flat-top'), ring, stretch('peaked'), ring, stretch('flat-top')]],
    ['one alone', [ring, stretch('flat-top')]],
    ['none', [stretch('peaked')]],
  ] as const)('%s: no reading holds', (_, stretches) => {
    expect(judge(...stretches)).toMatchObject({ outcome: 'not reproduced', reading: 'none' });
  });

  it('a little is up to a quarter', () => {
    const verdict = judge(stretch('flat-top'), ring, stretch('flat-top', 1.25, 0.8));
    expect(verdict).toMatchObject({ reading: 'pair alone', run: 2 });
    expect(judge(stretch('peaked'))).toMatchObject({ count: 0, run: 0, gaps: [] });
  });
});
