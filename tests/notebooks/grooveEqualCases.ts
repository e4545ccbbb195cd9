import type { Values } from './designOutcomes.ts';
import { degree, kinds, shape, yes } from './grooveCases.ts';
import type { Case } from './sentenceCases.ts';

const row = (angle: number, ratio: number, peakFluence = 5e4) => ({
  scale: 1,
  peakFluence,
  passes: 4,
  shape: { ...shape, wallAngle: angle * degree, centreToMeanDepth: ratio },
});
type Row = ReturnType<typeof row> | null;
const equal = (
  first: NonNullable<Row>,
  plain: Row,
  second: Row = row(70, 1.4),
  plainSameLens: Row = null,
): Values => ({
  'groove.equal': { first, second, plain, plainSameLens },
});
const shallow = (first: NonNullable<Row>, plain: Row, second: Row = row(20, 1.3)): Values => ({
  'groove.equalShallow': { first, second, plain, plainSameLens: null },
});
/** Cases of the sentences about grooves of equal width and mean depth. */
export const grooveEqualCases: readonly Case[] = [
  {
    says: 'equalSaid',
    pins: { ...kinds, ...equal(row(60, 1.7), null) },
    text: /^No size of focus gives the plain beam a groove/,
    truth: yes,
  },
  {
    says: 'equalSaid',
    pins: { ...kinds, ...equal(row(70, 1.5), row(60, 1.8)) },
    text: /In the first plane both are better than with the plain beam\. The first plane \(flat-top\) against the plain beam: its walls are steeper \(70° against 60°\) and its middle is less over-deep \(1\.5 against 1\.8 times the mean\)\.$/,
    truth: yes,
  },
  {
    says: 'equalSaid',
    pins: { ...kinds, ...equal(row(70, 1.8), row(60, 1.8)) },
    text: /In the first plane only the walls are better than with the plain beam\. .* steeper .* its middle is as over-deep/,
    truth: yes,
  },
  {
    says: 'equalSaid',
    pins: { ...kinds, ...equal(row(60, 1.5), row(60, 1.8)) },
    text: /In the first plane only the centre is better than with the plain beam\. .* its walls are as steep within a degree \(.* less over-deep/,
    truth: yes,
  },
  {
    says: 'equalSaid',
    pins: { ...kinds, ...equal(row(50, 1.9), row(60, 1.8)) },
    text: /In the first plane neither is better than with the plain beam\. .* its walls are flatter .* more over-deep/,
    truth: yes,
  },
  {
    says: 'equalSecondSaid',
    pins: { ...kinds, ...equal(row(60, 1.7), row(60, 1.8), row(62, 1.4)) },
    text: /^The second plane \(ring\) against the plain beam: its walls are steeper .* less over-deep/,
    truth: yes,
  },
  {
    says: 'equalSecondSaid',
    pins: { ...kinds, ...equal(row(60, 1.7), row(60, 1.8), null) },
    text: /^For the second plane no such groove was found/,
    truth: yes,
  },
  {
    says: 'sameLensSaid',
    pins: equal(row(60, 1.7), row(60, 1.8)),
    text: /not even at fifty times the peak fluence\.$/,
    truth: yes,
  },
  {
    says: 'sameLensSaid',
    pins: equal(row(60, 1.7), row(60, 1.8), null, row(60, 1.8, 2e6)),
    text: /gets that wide at 40 times the peak fluence only\.$/,
    truth: yes,
  },
  {
    says: 'shallowSaid',
    pins: shallow(row(20, 1.5), row(20, 1.7)),
    text: /the middle over the mean depth is 1\.7 without the plate, 1\.5 in the first plane and 1\.3 in the second\.$/,
    truth: yes,
  },
  {
    says: 'shallowSaid',
    pins: shallow(row(20, 1.5), null, null),
    text: /the middle over the mean depth is 1\.5 in the first plane\.$/,
    truth: yes,
  },
  {
    says: 'vSaid',
    pins: { ...equal(row(60, 1.8), row(60, 1.9)), ...shallow(row(20, 1.5), row(20, 1.7)) },
    text: /^After today’s passes the beams differ less than after one: the deeper a groove, /,
    truth: yes,
  },
  {
    says: 'vSaid',
    pins: { ...equal(row(60, 2), row(60, 2.1)), ...shallow(row(20, 1.5), row(20, 1.7)) },
    text: /^The deeper the groove, the more its walls decide .*: both have become pointed/,
    truth: yes,
  },
  {
    says: 'vSaid',
    pins: { ...equal(row(60, 1.6), row(60, 2)), ...shallow(row(20, 1.5), row(20, 1.7)) },
    text: /^After today’s passes the beams differ more than after one/,
    truth: yes,
  },
  {
    says: 'vSaid',
    pins: { ...equal(row(60, 1.5), row(60, 1.7)), ...shallow(row(20, 1.5), row(20, 1.7)) },
    text: /^After today’s passes the beams differ about as much as after one\.$/,
    truth: yes,
  },
  {
    says: 'vSaid',
    pins: { ...equal(row(60, 1.5), null), ...shallow(row(20, 1.5), row(20, 1.7)) },
    text: /can only be said of grooves that were found\.$/,
    truth: yes,
  },
];
