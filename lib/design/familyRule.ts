import { constant, derived } from '../graph/define.ts';
import { judgeRule } from '../optics/familyRule.ts';
import { family } from './family.ts';

export const littleDifference = constant({
  id: 'rule.littleDifference',
  name: 'what counts as a little',
  symbol: 'q',
  unit: '1',
  about:
    'Flat-tops differ a little while the larger is at most this much wider or higher than its neighbour. A choice of this project; common practice names no number.',
  value: 1.25,
  source: 'definition',
});

export const verdict = derived({
  id: 'rule.verdict',
  name: 'verdict on the three flat-tops',
  symbol: '\\text{verdict}',
  unit: {
    outcome: 'none',
    reading: 'none',
    count: '1',
    run: '1',
    order: 'none',
    flatTops: { defocus: '1', z: 'm', width: 'm', relativePeak: '1' },
    gaps: {
      kinds: 'none',
      ringBetween: 'none',
      largestDip: '1',
      largestDipAt: '1',
      widthRatio: '1',
      heightRatio: '1',
      alike: 'none',
    },
    from: '1',
    to: '1',
  },
  about:
    'Common practice, without a source, speaks of at least three flat-tops along the focus that differ a little in width and height, with rings of varying depth between. Judged on the kinds found within the range searched, flat-tops compared by their middle planes: reproduced where three neighbours are so, in part where three or more are there and only two neighbours are so.',
  from: { family, little: littleDifference },
  compute: ({ family, little }) => judgeRule(family, little),
  shownAs: ({ outcome, count }) => `${outcome}: ${count} flat-top${count === 1 ? '' : 's'}`,
  formula: '\\text{rule}(\\text{family}, q)',
  source: 'common practice',
});
