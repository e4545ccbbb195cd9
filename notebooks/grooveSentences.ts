import { groove, grooveCut, plainGrooveCut } from '../lib/design/groove.ts';
import { equalGroove, equalShallow } from '../lib/design/grooveEqual.ts';
import { groovePasses } from '../lib/design/grooveInputs.ts';
import { countedFrom, cuttingLaw } from '../lib/design/grooveLaw.ts';
import { firstKind, secondKind } from '../lib/design/groovePlanes.ts';
import { unshapedRuns } from '../lib/design/rippleWindow.ts';
import { peakFluence } from '../lib/design/spot.ts';
import { formatNumber } from '../lib/graph/units.ts';
import { phrase, says } from './prose.ts';
import { angleText, fluenceText, lengthText, percentText } from './shortTexts.ts';

/** Walls that differ by less than this, in rad, are called alike; so are ratios by less than this part. */
const alikeAngle = Math.PI / 180;
const alikeRatio = 0.03;

/** The groove in one sentence. */
export const grooveSaid = says(
  { cut: grooveCut, passes: groovePasses },
  ({ cut: { shape }, passes }) => {
    const count = Math.round(passes);
    const after = count === 1 ? 'After one pass' : `After ${count} passes`;
    const floor =
      shape.bottomWidth > 0.5 * shape.topWidth
        ? 'a floor over more than half its width'
        : shape.centreDepth < 0.97 * shape.depth
          ? 'a floor that rises in the middle'
          : shape.centreToMeanDepth > 1.85
            ? 'a pointed floor, as of a V'
            : 'a rounded floor';
    return phrase`${after} the groove is ${groove.depth} deep and ${groove.topWidth} wide at the top, with walls at ${groove.wallAngle} to the surface and ${floor}: the middle is ${groove.centreToMeanDepth} times as deep as the mean.`;
  },
  [groove.depth, groove.topWidth, groove.wallAngle, groove.centreToMeanDepth],
);

/** Whether walls or passes decide the depth. */
export const stoppedSaid = says(
  { cut: grooveCut },
  ({ cut: { deepest, stoppedPart, lastPass } }) => {
    const first = deepest[1]!;
    const last = lastPass.reduce((most, one) => Math.max(most, one), 0);
    if (last < 0.01 * first)
      return phrase`It has come to its end: the last pass cut less than a hundredth of what the first did, since its walls are too steep or its floor lies too far from its plane. More passes hardly deepen it.`;
    if (stoppedPart > 0.02)
      return phrase`Over ${percentText(stoppedPart, 2)} of its width the walls stand still: on their slope the fluence is below the threshold, though it would cut a level floor.`;
    if (deepest.length > 2 && last < 0.5 * first)
      return phrase`The walls are not at their end, but slow it down: the last pass cut ${groove.lastPassDepth}, the first ${lengthText(first)}.`;
    if (deepest.length > 2 && last > 1.05 * first)
      return phrase`It goes faster from pass to pass: the last cut ${groove.lastPassDepth}, the first ${lengthText(first)}.`;
    if (deepest.length > 2)
      return phrase`It still deepens at nearly the pace of the first pass: the last cut ${groove.lastPassDepth}, the first ${lengthText(first)}.`;
    return phrase`One pass only: its walls have not yet held anything up.`;
  },
  [groove.lastPassDepth],
);

/** What rings around the spot cut beside the groove. */
export const besideSaid = says(
  { cut: grooveCut },
  ({ cut: { shape } }) =>
    shape.besideDepth > 0.02 * shape.depth
      ? phrase`Rings around the spot cut up to ${groove.besideDepth} beside it. That is ${percentText(shape.besideDepth / shape.depth, 2)} of its depth, and counts neither to its width nor to its mean depth: less fluence would spare the sides.`
      : phrase`What rings around the spot cut beside it is below 2\u202f% of its depth.`,
  [groove.besideDepth],
);

/** Peak fluence over threshold from which the law is taken further than it is usually measured; our choice. */
const farAbove = 50;

/** A fluence for which a law of single pulses says little. */
export const farAboveSaid = says({ peak: peakFluence, law: cuttingLaw }, ({ peak, law: { incubation } }) => {
  const times = peak / incubation.first;
  if (times <= farAbove) return '';
  return phrase`The peak fluence is ${formatNumber(times, 3)} times the threshold of one pulse. The law of single pulses is seldom measured beyond some fifty thresholds (common practice, no source): so far above it melt, heat and the plasma in front of the surface decide, and what is drawn is its continuation, not a forecast.`;
});

/** How far from the surface a wall may go. */
export const countingSaid = says({ law: cuttingLaw, from: countedFrom }, ({ law: { incubation }, from }) =>
  incubation.exponent === 1
    ? phrase`The threshold stays at ${fluenceText(incubation.first)} however many pulses came before: with an incubation exponent of 1 they do not lower it.`
    : phrase`The threshold begins at ${fluenceText(incubation.first)} and ${incubation.exponent < 1 ? 'falls' : 'rises'} with every pulse that a place has counted, of this pass and all before, which is called incubation; those count that bring at least ${fluenceText(from)} (the threshold of endless pulses, or 1/e² of that of one, where this is more: our choice, no source).`,
);

/** What the plain beam is cut with. */
export const plainEnergySaid = says({ runs: unshapedRuns }, ({ runs }) =>
  runs === 'peak'
    ? phrase`Without the plate the pulse energy is lowered until the peak fluence in its focus is that with the plate where the workpiece lies.`
    : phrase`Without the plate the pulse energy stays, so that its peak fluence is several times higher.`,
);

/** Today's three grooves against each other. */
export const sideSaid = says(
  { plain: plainGrooveCut, today: grooveCut, firstKind, secondKind },
  ({ plain, today, firstKind, secondKind }) => {
    const kinds =
      firstKind === secondKind
        ? phrase`Both chosen planes hold the same kind of profile (${firstKind}).`
        : phrase`The first plane holds a ${firstKind} profile, the second a ${secondKind} one.`;
    const gain = today.shape.topWidth / plain.shape.topWidth;
    const unlike = 'so that angles and depths are no fair comparison yet; that follows below.';
    if (gain > 1.05)
      return phrase`${kinds} Today’s groove, where the workpiece stands now, is ${formatNumber(gain, 3)} times as wide as that of the plain beam with the same lens, ${unlike}`;
    if (gain < 0.95)
      return phrase`${kinds} The groove of the plain beam with the same lens is ${formatNumber(1 / gain, 3)} times as wide as today’s, ${unlike}`;
    return phrase`${kinds} Today’s groove, where the workpiece stands now, is about as wide as that of the plain beam with the same lens; at equal mean depth too they are compared below.`;
  },
);

/** "steeper", "alike" or "flatter" walls, and how the middle compares. */
function verdict(one: { wallAngle: number; centreToMeanDepth: number }, plain: typeof one) {
  const angle = one.wallAngle - plain.wallAngle;
  const ratio = one.centreToMeanDepth / plain.centreToMeanDepth;
  return {
    walls: angle > alikeAngle ? 'steeper' : angle < -alikeAngle ? 'flatter' : 'alike',
    middle: ratio < 1 - alikeRatio ? 'less' : ratio > 1 + alikeRatio ? 'more' : 'alike',
  } as const;
}

const wallWords = {
  steeper: 'its walls are steeper',
  flatter: 'its walls are flatter',
  alike: 'its walls are as steep within a degree',
} as const;
const middleWords = {
  less: 'its middle is less over-deep',
  more: 'its middle is more over-deep',
  alike: 'its middle is as over-deep',
} as const;

function against(
  name: string,
  shape: { wallAngle: number; centreToMeanDepth: number },
  plain: { wallAngle: number; centreToMeanDepth: number },
) {
  const { walls, middle } = verdict(shape, plain);
  return phrase`${name}: ${wallWords[walls]} (${angleText(shape.wallAngle)} against ${angleText(plain.wallAngle)}) and ${middleWords[middle]} (${formatNumber(shape.centreToMeanDepth, 3)} against ${formatNumber(plain.centreToMeanDepth, 3)} times the mean).`;
}

/** The first plane against the plain beam, at equal width and mean depth. */
export const equalSaid = says(
  { equal: equalGroove, kind: firstKind },
  ({ equal: { first, plain }, kind }) => {
    if (plain === null)
      return phrase`No size of focus gives the plain beam a groove of that width and mean depth, within fifty times of today’s.`;
    const { walls, middle } = verdict(first.shape, plain.shape);
    const common =
      walls === 'steeper' && middle === 'less'
        ? 'In the first plane both are better than with the plain beam.'
        : walls === 'steeper'
          ? 'In the first plane only the walls are better than with the plain beam.'
          : middle === 'less'
            ? 'In the first plane only the centre is better than with the plain beam.'
            : 'In the first plane neither is better than with the plain beam.';
    return phrase`Steeper walls and a centre that is not over-deep are expected of a flat-top (common practice, no source). ${common} ${against(`The first plane (${kind}) against the plain beam`, first.shape, plain.shape)}`;
  },
);

/** The second plane against the plain beam. */
export const equalSecondSaid = says(
  { equal: equalGroove, kind: secondKind },
  ({ equal: { second, plain }, kind }) => {
    if (plain === null || second === null)
      return phrase`For the second plane no such groove was found to compare with.`;
    return against(`The second plane (${kind}) against the plain beam`, second.shape, plain.shape);
  },
);

/** What the plain beam would need with today's lens. */
export const sameLensSaid = says({ equal: equalGroove }, ({ equal: { first, plainSameLens } }) =>
  plainSameLens === null
    ? phrase`With today’s lens the plain beam does not get that wide at that mean depth, not even at fifty times the peak fluence.`
    : phrase`With today’s lens the plain beam gets that wide at ${formatNumber(plainSameLens.peakFluence / first.peakFluence, 3)} times the peak fluence only.`,
);

/** The same after one pass, while walls are shallow. */
export const shallowSaid = says({ equal: equalShallow }, ({ equal: { first, second, plain } }) => {
  const ratios = [
    plain && phrase`${formatNumber(plain.shape.centreToMeanDepth, 3)} without the plate`,
    phrase`${formatNumber(first.shape.centreToMeanDepth, 3)} in the first plane`,
    second && phrase`${formatNumber(second.shape.centreToMeanDepth, 3)} in the second`,
  ].filter((one) => one !== null);
  const all = ratios.flatMap((one, i) => [
    ...(i === 0 ? [] : [i === ratios.length - 1 ? ' and ' : ', ']),
    ...[one].flat(),
  ]);
  return phrase`After one pass, before any wall counts, the middle over the mean depth is ${all}.`;
});

/** How deep grooves end alike. */
export const vSaid = says(
  { equal: equalGroove, shallow: equalShallow },
  ({ equal: { first, plain }, shallow }) => {
    if (plain === null || shallow.plain === null)
      return phrase`What a deeper groove does to it can only be said of grooves that were found.`;
    const now = plain.shape.centreToMeanDepth / first.shape.centreToMeanDepth;
    const before = shallow.plain.shape.centreToMeanDepth / shallow.first.shape.centreToMeanDepth;
    const most = Math.min(plain.shape.centreToMeanDepth, first.shape.centreToMeanDepth);
    if (now < before - alikeRatio && most > 1.95)
      return phrase`The deeper the groove, the more its walls decide and the less the profile: both have become pointed, with a middle about twice as deep as the mean or more.`;
    return now < before - alikeRatio
      ? phrase`After today’s passes the beams differ less than after one: the deeper a groove, the more its walls decide and the less the profile.`
      : now > before + alikeRatio
        ? phrase`After today’s passes the beams differ more than after one: the middle of the Gaussian has gained on the mean faster than that of the first plane.`
        : phrase`After today’s passes the beams differ about as much as after one.`;
  },
);
