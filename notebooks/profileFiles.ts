import { measuredProfile } from '../lib/design/measuredSpot.ts';
import type { MeasuredProfile } from '../lib/design/profileFile.ts';
import { addProfile, profilesIn } from '../lib/design/profileList.ts';
import type { Patch } from '../lib/graph/state.ts';
import { Problem } from '../lib/problem.ts';
import { readFileAsPatch } from './measuredFiles.ts';
import { placeInName } from './placeInName.ts';

/** A file as a person gave it. */
export interface GivenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A measured profile, and where it was measured (metres) where that is known. */
export interface GivenProfile {
  readonly profile: MeasuredProfile;
  readonly z: number | undefined;
}

/** The profile in a file, which is remembered; throws a Problem that names the file. */
export function readProfileOf({ name, bytes }: GivenFile): MeasuredProfile {
  return readFileAsPatch(measuredProfile.id, bytes, name)[measuredProfile.id] as MeasuredProfile;
}

/** Adds profiles in one patch, the first of them in front: that one is looked at closely. */
export function addProfiles(
  given: readonly GivenProfile[],
  inputs: Readonly<Record<string, unknown>>,
): Patch {
  let patch: Patch = {};
  for (const { profile, z } of [...given].reverse())
    patch = { ...patch, ...addProfile({ ...inputs, ...patch }, profile, z) };
  return patch;
}

/**
 * Adds the profiles in several files, all or none: one that cannot be read throws a Problem that names it. A name that
 * holds a place, as in "spot z=0.05 mm.csv", says where its profile was measured.
 */
export function addProfileFiles(
  files: readonly GivenFile[],
  inputs: Readonly<Record<string, unknown>>,
): Patch {
  try {
    const given = files.map((file) => ({ profile: readProfileOf(file), z: placeInName(file.name) }));
    return addProfiles(given, inputs);
  } catch (error) {
    const before = profilesIn(inputs).filter((item) => item !== undefined).length;
    if (!(error instanceof Problem) || (before === 0 && files.length === 1)) throw error;
    const stays =
      before === 0 ? 'None of the files was taken.' : 'The profiles given before stay as they were.';
    throw new Problem(error.kind, `${error.message} ${stays}`, error.parts);
  }
}
