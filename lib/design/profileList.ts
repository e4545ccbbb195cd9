import { list } from '../graph/define.ts';
import { originalOf, readFrom } from '../graph/originals.ts';
import type { ListItem } from '../graph/quantity.ts';
import type { Patch } from '../graph/state.ts';
import { workpieceZ } from './focus.ts';
import { measuredScaling } from './measuredOverlay.ts';
import {
  measuredPixelPitch,
  measuredPlaneSource,
  measuredProfile,
  measuredProfileZ,
} from './measuredSpot.ts';
import { longestName, oneLine } from './ownParts.ts';
import type { MeasuredProfile } from './profileFile.ts';

/** What a measured profile is given by: its file, and how and where it was measured. */
const parts = [measuredProfile, measuredPixelPitch, measuredPlaneSource, measuredProfileZ, measuredScaling];

export const otherProfiles = list({
  id: 'spot.otherProfiles',
  name: 'further measured profiles',
  symbol: '\\text{further}',
  about:
    'Profiles measured in other planes or at other times, each with its own plane, pixel pitch and scale. All are compared with the prediction; the inputs beside them belong to the one that is looked at closely.',
  of: parts,
  // As many as are told apart on a page; each is computed in a plane of its own.
  most: 11,
  shownAs: (items) => (items.length === 0 ? 'none' : `${items.length}, besides the one looked at closely`),
});

/** The inputs of a measured profile and the list of further ones, by id. */
export type ProfileInputs = Readonly<Record<string, unknown>>;

/**
 * All measured profiles by their place: the one looked at closely at 0, undefined where there is none, and the further
 * ones behind it.
 */
export function profilesIn(inputs: ProfileInputs): readonly [ListItem | undefined, ...ListItem[]] {
  return [closeOne(inputs), ...othersIn(inputs)];
}

const othersIn = (inputs: ProfileInputs) => inputs[otherProfiles.id] as readonly ListItem[];

function closeOne(inputs: ProfileInputs): ListItem | undefined {
  if (inputs[measuredProfile.id] === null) return undefined;
  return Object.fromEntries(parts.map(({ id }) => [id, inputs[id]]));
}

export function fileOf(item: ListItem): MeasuredProfile {
  return item[measuredProfile.id] as MeasuredProfile;
}

/** What was measured, as an object that stays the same when a profile is renamed or moves in the list. */
export function measurementOf(item: ListItem): object {
  const { image, fluence, counts } = fileOf(item);
  return image?.samples ?? (fluence.length > 0 ? fluence : counts);
}

/** Where a profile was measured, in metres, as the workpiece stands in `inputs`. */
export function planeOf(item: ListItem, inputs: ProfileInputs): number {
  const typed = item[measuredPlaneSource.id] === 'typed';
  return (typed ? item[measuredProfileZ.id] : inputs[workpieceZ.id]) as number;
}

/**
 * Adds a profile, which is looked at closely from then on; the former one moves to the head of the list. The new one takes pitch and
 * scale of the former, and lies in the plane `z` (metres), or that of the workpiece as it stands now.
 */
export function addProfile(inputs: ProfileInputs, file: MeasuredProfile, z?: number): Patch {
  const former = closeOne(inputs);
  const given = { [measuredProfile.id]: file };
  if (!former && z === undefined) return given;
  const plane = {
    [measuredPlaneSource.id]: 'typed',
    [measuredProfileZ.id]: z ?? inputs[workpieceZ.id],
  };
  return { ...given, ...plane, [otherProfiles.id]: [...(former ? [former] : []), ...othersIn(inputs)] };
}

/** Looks closely at the profile at `place`; the former one takes its place in the list. */
export function lookAtProfile(inputs: ProfileInputs, place: number): Patch {
  const [former, ...others] = profilesIn(inputs);
  const chosen = others[place - 1];
  if (!chosen) return {};
  const rest = former ? others.with(place - 1, former) : others.toSpliced(place - 1, 1);
  return { ...chosen, [otherProfiles.id]: rest };
}

/** Takes the profile at `place` out; where it was looked at closely, the next one is instead. */
export function takeOutProfile(inputs: ProfileInputs, place: number): Patch {
  const [, next, ...rest] = profilesIn(inputs);
  if (place > 0) return { [otherProfiles.id]: othersIn(inputs).toSpliced(place - 1, 1) };
  return next ? { ...next, [otherProfiles.id]: rest } : { [measuredProfile.id]: null };
}

/** Calls the profile at `place` by another name, of one line; throws a Problem where it is empty or too long. */
export function renameProfile(inputs: ProfileInputs, place: number, name: string): Patch {
  const item = profilesIn(inputs)[place];
  if (!item) return {};
  const file = renamed(fileOf(item), oneLine(name, 'name of the profile', longestName, true));
  if (place === 0) return { [measuredProfile.id]: file };
  return { [otherProfiles.id]: othersIn(inputs).with(place - 1, { ...item, [measuredProfile.id]: file }) };
}

/** The same profile, whose file is kept under the new name. */
function renamed(profile: MeasuredProfile, name: string): MeasuredProfile {
  const next = { ...profile, name, image: profile.image && { ...profile.image, name } };
  const original = originalOf(profile);
  return original ? readFrom(next, { ...original, name }) : next;
}
