import { derived } from '../graph/define.ts';
import type { ListItem } from '../graph/quantity.ts';
import type { FoldedProfile } from '../measured/foldedProfile.ts';
import { highestSample, sampledDip } from '../measured/sampledProfile.ts';
import type { Light } from '../optics/light.ts';
import { Problem } from '../problem.ts';
import {
  deviationOf,
  foldedWidth,
  foldProfile,
  type OverlaidProfile,
  overlay,
  type ProfileScaling,
  predictFor,
  scaleOf,
} from './comparedProfile.ts';
import { light, unshapedPeak, workpieceZ } from './focus.ts';
import { inPlane, measuredScaling } from './measuredOverlay.ts';
import {
  measuredPixelPitch,
  measuredPlaneSource,
  measuredProfile,
  measuredProfileZ,
  noProfile,
} from './measuredSpot.ts';
import { fileOf, otherProfiles, planeOf, profilesIn } from './profileList.ts';

/** A measured profile against the prediction in the plane where it was measured; metres, J/m², dips as parts. */
export interface ComparedProfile extends OverlaidProfile {
  /** Its place in the list: 0 is the one looked at closely. */
  readonly place: number;
  readonly name: string;
  readonly z: number;
  readonly width: number;
  readonly predictedWidth: number;
  readonly dip: number;
  readonly predictedDip: number;
  readonly peak: number;
  readonly predictedPeak: number;
  /** Root-mean-square difference over the area above half the peak, relative to the predicted peak. */
  readonly deviation: number;
  /** What tells against the measurement. */
  readonly notes: readonly string[];
}

/** A measured profile that cannot be compared, and why. */
export interface RefusedProfile {
  readonly place: number;
  readonly name: string;
  readonly why: string;
}

/** All measured profiles; both lists in the order of their places. */
export interface ProfileComparisons {
  readonly compared: readonly ComparedProfile[];
  readonly refused: readonly RefusedProfile[];
}

type Folded = { readonly shape: FoldedProfile } | { readonly why: string };

/** Every profile about its middle, or why it has none; undefined for a place without a profile. */
export const foldedProfiles = derived({
  id: 'spot.foldedProfiles',
  name: 'measured profiles about their middles',
  symbol: 'S_j(\\rho)',
  unit: 'none',
  about: 'All measured profiles, each as a mean around its middle in the unit of its file.',
  from: { file: measuredProfile, pitch: measuredPixelPitch, others: otherProfiles },
  compute: ({ file, pitch, others }): readonly (Folded | undefined)[] => [
    file === null ? undefined : fold({ [measuredProfile.id]: file, [measuredPixelPitch.id]: pitch }),
    ...others.map(fold),
  ],
  shownAs: (folded) => `${folded.filter((one) => one !== undefined).length} profiles`,
  formula: '\\overline{S_j(\\rho,\\alpha)}^{\\,\\alpha}',
  source: 'definition',
});

function fold(item: ListItem): Folded {
  return attempt(() => ({ shape: foldProfile(fileOf(item), item[measuredPixelPitch.id] as number) }));
}

/** What `compute` gives, or the message of its Problem. */
function attempt<T>(compute: () => T): T | { readonly why: string } {
  try {
    return compute();
  } catch (error) {
    if (error instanceof Problem) return { why: error.message };
    throw error;
  }
}

export const profileComparisons = derived({
  id: 'spot.profileComparisons',
  name: 'measured profiles against the prediction',
  symbol: 'S_j \\text{ against } I(z_j)',
  unit: {
    compared: {
      place: '1',
      name: 'none',
      z: 'm',
      width: 'm',
      predictedWidth: 'm',
      dip: '1',
      predictedDip: '1',
      peak: 'J/m^2',
      predictedPeak: 'J/m^2',
      deviation: '1',
      notes: 'none',
      x: 'm',
      measured: 'J/m^2',
      low: 'J/m^2',
      high: 'J/m^2',
      predicted: 'J/m^2',
    },
    refused: 'none',
  },
  about:
    'Every measured profile beside the one predicted in the plane where it was measured: widths, dips, peak fluences, their root-mean-square difference over the area above half the peak, and both across the spot.',
  from: {
    folded: foldedProfiles,
    file: measuredProfile,
    plane: measuredPlaneSource,
    typedZ: measuredProfileZ,
    scaling: measuredScaling,
    others: otherProfiles,
    workpiece: workpieceZ,
    light,
    F0: unshapedPeak,
  },
  compute: ({ folded, file, plane, typedZ, scaling, others, workpiece, light, F0 }): ProfileComparisons => {
    const inputs = {
      [measuredProfile.id]: file,
      [measuredPlaneSource.id]: plane,
      [measuredProfileZ.id]: typedZ,
      [measuredScaling.id]: scaling,
      [otherProfiles.id]: others,
      [workpieceZ.id]: workpiece,
    };
    const items = profilesIn(inputs).map((item, place) => ({ item, place, folded: folded[place] }));
    const found = items.flatMap(({ item, place, folded }) => {
      if (!item || !folded) return [];
      const at = { place, name: fileOf(item).name };
      if ('why' in folded) return [{ ...at, why: folded.why }];
      const compared = attempt(() => compare(folded.shape, item, planeOf(item, inputs), light, F0));
      return [{ ...at, ...compared }];
    });
    if (found.length === 0) throw noProfile();
    return {
      compared: found.filter((one) => !('why' in one)) as ComparedProfile[],
      refused: found.filter((one): one is RefusedProfile => 'why' in one),
    };
  },
  shownAs: ({ compared, refused }) => `${compared.length} of ${compared.length + refused.length} compared`,
  formula: 'S_j(|x|)\\cdot\\text{scale}_j,\\; (f/B)^2\\,|U(\\varrho,\\zeta_j)|^2 \\ast \\text{blur}(M^2)',
  source: 'collins1970',
  // Five to ten milliseconds a profile: the map must not wait for a dozen of them.
  heavy: 'search',
});

function compare(
  shape: FoldedProfile,
  item: ListItem,
  z: number,
  light: Light,
  F0: number,
): Omit<ComparedProfile, 'place' | 'name'> {
  const width = foldedWidth(shape);
  const prediction = inPlane(item[measuredPlaneSource.id] as 'workpiece' | 'typed', () =>
    predictFor(light, z, shape),
  );
  const absolute = fileOf(item).fluence.length > 0;
  const scaling = item[measuredScaling.id] as ProfileScaling;
  const columns = overlay(shape, prediction, F0, scaleOf(scaling, shape, prediction, F0, absolute));
  const predictedPeak = F0 * prediction.peak;
  return {
    z,
    width,
    predictedWidth: prediction.width,
    dip: sampledDip(shape),
    predictedDip: prediction.dip,
    peak: highestSample({ value: columns.measured }),
    predictedPeak,
    deviation: deviationOf(columns, predictedPeak),
    notes: shape.notes,
    ...columns,
  };
}
