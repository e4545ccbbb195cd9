import { acceptedEnds } from '../../lib/design/acceptedPlanes.ts';
import { centringOffset, centringPlane, centringRise } from '../../lib/design/centring.ts';
import { depthEnds } from '../../lib/design/depthOfFocus.ts';
import { family } from '../../lib/design/family.ts';
import { light, workpieceZ } from '../../lib/design/focus.ts';
import { usedPulseEnergy } from '../../lib/design/losses.ts';
import { markDiameter } from '../../lib/design/marks.ts';
import { stop } from '../../lib/design/plate.ts';
import { usedBeamPropagationRatio } from '../../lib/design/rawBeam.ts';
import { fluenceChangeBeam, widthChangeBeam } from '../../lib/design/sensitivity.ts';
import { peakFluence } from '../../lib/design/spot.ts';
import { thresholdAtN } from '../../lib/design/threshold.ts';
import { unshapedFocusWidth } from '../../lib/design/unshaped.ts';
import type { ValueOf } from '../../lib/graph/quantity.ts';
import { formatQuantity } from '../../lib/graph/units.ts';
import { planeOfDefocus } from '../../lib/optics/light.ts';
import type { ProfileKind } from '../../lib/optics/profileMetrics.ts';
import { phrase, says } from '../prose.ts';
import { energyText } from '../shortTexts.ts';

type Stretch = ValueOf<typeof family>[number];

/** Planes nearer to the focal plane than this count as in it, m. */
const inFocus = 1e-7;

/** What a camera shows of each kind of profile. */
export const looks: Readonly<Record<ProfileKind, string>> = {
  'flat-top': 'an even disc',
  'shallow ring': 'a disc a little darker in its middle',
  ring: 'a bright ring about a dark middle',
  peaked: 'a spot brightest in its middle',
};

/** Which way z is positive, and where the workpiece stands. */
export const directionSaid = says({ z: workpieceZ }, ({ z }) => {
  const rule =
    'z is counted along the beam from the focal plane of the lens and grows away from the lens: moving the workpiece away from the lens makes z larger.';
  if (Math.abs(z) < inFocus)
    return phrase`${rule} The surface stands at z = ${workpieceZ}, in the focal plane.`;
  const where =
    z > 0 ? 'behind the focal plane, farther from the lens' : 'before the focal plane, nearer to the lens';
  return phrase`${rule} The surface stands at z = ${workpieceZ}, ${where}.`;
});

/** The smallest spot without the plate, from which z is counted. */
export const focusOutSaid = says(
  { light, stop, ratio: usedBeamPropagationRatio, width: unshapedFocusWidth },
  ({ light, stop }) => {
    const focus = planeOfDefocus(light, 0);
    const round = phrase`a round peak with a diameter of ${unshapedFocusWidth} at half its height (M² = ${usedBeamPropagationRatio}, ${stop === 'round' ? 'stop left in' : 'no stop'})`;
    if (Math.abs(focus) < inFocus) return phrase`The smallest spot is z = 0: ${round}.`;
    return phrase`The smallest spot is ${round}. The beam at the plate is not collimated, so this spot stands at z = ${formatQuantity(focus, 'm', 'mm', 4)}: count z from there.`;
  },
  [],
  'The smallest spot tells where z is counted from; how wide it is cannot be worked out for this design.',
);

/** Less than this between the two sides is not seen on a camera: its pixels differ by about as much. */
const seenRise = 0.01;

/** Where the plate is centred, and what tells that it is. */
export const centringSaid = says(
  { rise: centringRise, z: centringPlane, offset: centringOffset },
  ({ rise }) =>
    rise < seenRise
      ? phrase`The spot hardly tells: with the beam ${centringOffset} beside its middle no plane near the focus has one side higher by more than ${centringRise}. Bring the step to the middle of the beam by a picture of both just behind the plate.`
      : phrase`At z = ${centringPlane} (not in the focal plane, where half a wave hides it) move the plate until the spot is alike on all sides: ${centringOffset} beside its middle makes one side ${centringRise} higher.`,
  [],
  'A little out of the focal plane, where half a wave hides it, move the plate until the spot is alike on all sides; what an offset does there cannot be worked out for this design.',
);

/** What the camera shows in the focal plane with the plate in. */
export const focusSeenSaid = says({ stretches: family }, ({ stretches }) => {
  const here = stretches.find(({ zFrom, zTo }) => zFrom <= 0 && 0 <= zTo);
  return here === undefined
    ? 'what it shows in the focal plane lies outside the range searched.'
    : `in the focal plane it shows ${looks[here.kind]} (${here.kind}).`;
});

/** What comes on either side of the plane of the workpiece. */
export const sidesSaid = says({ stretches: family, z: workpieceZ }, ({ stretches, z }) => {
  const here = stretches.findIndex(({ zFrom, zTo }) => zFrom <= z && z <= zTo);
  if (here < 0) return 'This plane lies outside the range searched.';
  const [before, behind] = [stretches[here - 1], stretches[here + 1]];
  if (!before && !behind) return 'It stays of this kind throughout the range searched.';
  if (!before)
    return `Away from the lens follows ${article(behind!)}; towards it the kind stays within the range searched.`;
  if (!behind)
    return `Towards the lens follows ${article(before)}; away from it the kind stays within the range searched.`;
  return before.kind === behind.kind
    ? `To both sides follows ${article(before)}: see both; which is which only the reading of z tells.`
    : `Towards the lens follows ${article(before)}, away from it ${article(behind)}: the order tells that z counts the right way.`;
});

const words: Readonly<Record<ProfileKind, string>> = {
  'flat-top': 'a flat-top',
  'shallow ring': 'a shallow ring',
  ring: 'a ring',
  peaked: 'a peaked spot',
};
const article = ({ kind }: Stretch) => words[kind];

/** What a beam five per cent off changes, as a measure of how well step and beam must fit. */
export const fitToleranceSaid = says(
  { fluence: fluenceChangeBeam, width: widthChangeBeam },
  () =>
    phrase`The beam at the plate is seldom right to better than a few per cent, hence the two columns: 5 % there changes the peak fluence by up to ${fluenceChangeBeam} and the width by up to ${widthChangeBeam}.`,
);

/** Where single marks begin, and how wide they are in the end. */
export const firstMarkSaid = says(
  { energy: usedPulseEnergy, peak: peakFluence, threshold: thresholdAtN, mark: markDiameter },
  ({ energy, peak, threshold }) => {
    if (peak <= threshold)
      return phrase`At ${usedPulseEnergy} the peak of ${peakFluence} does not exceed the threshold of ${thresholdAtN}: no mark is expected.`;
    const first = energyText((energy * threshold) / peak);
    return phrase`Marks are expected from ${first} on; at ${usedPulseEnergy} a mark is ${markDiameter} wide.`;
  },
);

/** How exactly z must be met, and what is seen where the fluence is still even but the kind is another. */
export const depthMetSaid = says(
  { accepted: acceptedEnds, ends: depthEnds, stretches: family, z: workpieceZ },
  ({ accepted, ends, stretches, z }) => {
    const good = phrase`The plane is good from ${acceptedEnds}`;
    const at = stretches.findIndex(({ zFrom, zTo }) => zFrom <= z && z <= zTo);
    const before = ends.from < accepted.from ? stretches[at - 1] : undefined;
    const behind = ends.to > accepted.to ? stretches[at + 1] : undefined;
    if (!before && !behind) return phrase`${good}.`;
    const stays = phrase`${good}, where it stays ${article(stretches[at]!)}`;
    const even = phrase`the fluence is even from ${depthEnds}, but`;
    if (before && behind && before.kind !== behind.kind)
      return phrase`${stays}; ${even} nearer to the lens the camera then shows ${article(before)}, farther from it ${article(behind)}.`;
    const side =
      before && behind ? 'beyond on both sides' : before ? 'nearer to the lens' : 'farther from the lens';
    return phrase`${stays}; ${even} ${side} the camera shows ${article((before ?? behind)!)}.`;
  },
  [],
  'In this plane the fluence is not even enough for a depth of focus.',
);
