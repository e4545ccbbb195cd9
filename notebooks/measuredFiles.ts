import { readCausticFile, readFocusCausticFile } from '../lib/design/causticFile.ts';
import { ladderTable } from '../lib/design/ladderMarks.ts';
import { beamImage } from '../lib/design/laser.ts';
import { markPictureInputs } from '../lib/design/markPicture.ts';
import { causticTable } from '../lib/design/measuredCaustic.ts';
import { focusCaustic } from '../lib/design/measuredFocus.ts';
import { measuredPlaneSource, measuredProfile, measuredProfileZ } from '../lib/design/measuredSpot.ts';
import { firstMicrograph, otherMicrograph } from '../lib/design/micrographs.ts';
import type { PictureInputs } from '../lib/design/pictureInputs.ts';
import { type MeasuredProfile, profileOfPicture, readProfileFile } from '../lib/design/profileFile.ts';
import { beamSource, ratioSource } from '../lib/design/rawBeam.ts';
import { readRippleFile, rippleSeries } from '../lib/design/rippleSeries.ts';
import type { ReadFile } from '../lib/design/savedInputs.ts';
import { isSection, readSectionFile, sectionFile } from '../lib/design/sectionFile.ts';
import { readLadderFile, readSpotFile } from '../lib/design/spotFile.ts';
import { leftOut, spotTable } from '../lib/design/spots.ts';
import { readFrom } from '../lib/graph/originals.ts';
import type { Patch } from '../lib/graph/state.ts';
import { type CameraImage, decodeCameraImage } from '../lib/measured/cameraImage.ts';
import { beginsAsCaustic } from '../lib/measured/causticTable.ts';
import { looksLikeNumbers } from '../lib/measured/csvImage.ts';
import { readDelimitedTable } from '../lib/measured/delimitedTable.ts';
import { decodeMarkPicture, decodeMicrograph } from '../lib/measured/micrograph.ts';
import { isPng } from '../lib/measured/pngImage.ts';
import { beginsAsRipples } from '../lib/measured/rippleTable.ts';
import { sha256 } from '../lib/measured/sha256.ts';
import { kindOfSpots } from '../lib/measured/spotTable.ts';
import { isTiff } from '../lib/measured/tiffImage.ts';
import { Problem } from '../lib/problem.ts';
import { decodeText } from './fileText.ts';
import { placeInName } from './placeInName.ts';

/** How a file from the laboratory comes into the design. */
interface MeasuredFile {
  /** Kinds of file, as in the `accept` attribute. */
  readonly accept: string;
  /** It is a table or may be one, and can be pasted as well. */
  readonly table: boolean;
  /** Reads the file and chooses it as the source; throws a Problem that names it. */
  read(bytes: Uint8Array, name: string): Patch;
}

/** A picture of which a part counts: another one has what is sought elsewhere. */
function pictureFile(
  { picture, regionSource, barStartX, barStartY, barEndX, barEndY }: PictureInputs,
  accept: string,
  decode: (bytes: Uint8Array, name: string) => CameraImage,
  keepsBar: boolean,
): Readonly<Record<string, MeasuredFile>> {
  // Where the bar lay in the picture before says nothing of this one.
  const undrawn = Object.fromEntries(
    [barStartX, barStartY, barEndX, barEndY].map(({ id, initial }) => [id, initial]),
  );
  const read = (bytes: Uint8Array, name: string) => ({
    [picture.id]: decode(bytes, name),
    [regionSource.id]: 'whole',
    ...(keepsBar ? {} : undrawn),
  });
  return { [picture.id]: { accept, table: false, read } };
}

/** By the id of the input that takes the file. */
export const measuredFiles: Readonly<Record<string, MeasuredFile>> = {
  [beamImage.id]: {
    accept: '.png,.tif,.tiff,.csv,.txt',
    table: false,
    read: (bytes, name) => ({
      [beamImage.id]: decodeCameraImage(bytes, name),
      [beamSource.id]: 'measured',
    }),
  },
  [causticTable.id]: {
    accept: '.csv,.txt,.tsv,.dat',
    table: true,
    read: (bytes, name) => ({
      [causticTable.id]: readCausticFile(decodeText(bytes), name),
      [ratioSource.id]: 'measured',
    }),
  },
  [measuredProfile.id]: {
    accept: '.csv,.txt,.tsv,.dat,.png,.tif,.tiff',
    table: true,
    read: (bytes, name) => ({ [measuredProfile.id]: readProfile(bytes, name), ...planeInName(name) }),
  },
  [focusCaustic.id]: {
    accept: '.csv,.txt,.tsv,.dat',
    table: true,
    read: (bytes, name) => ({ [focusCaustic.id]: readFocusCausticFile(decodeText(bytes), name) }),
  },
  ...pictureFile(markPictureInputs, '.png,.tif,.tiff,.jpg,.jpeg,.csv,.txt', decodeMarkPicture, true),
  ...pictureFile(firstMicrograph, '.png,.tif,.tiff,.jpg,.jpeg', decodeMicrograph, false),
  ...pictureFile(otherMicrograph, '.png,.tif,.tiff,.jpg,.jpeg', decodeMicrograph, false),
  [rippleSeries.id]: {
    accept: '.csv,.txt,.tsv,.dat',
    table: true,
    read: (bytes, name) => ({ [rippleSeries.id]: readRippleFile(decodeText(bytes), name) }),
  },
  [spotTable.id]: {
    accept: '.csv,.txt,.tsv,.dat',
    table: true,
    // What was left out was left out of the table before.
    read: (bytes, name) => ({
      [spotTable.id]: readSpotFile(decodeText(bytes), name),
      [leftOut.id]: leftOut.initial,
    }),
  },
  [ladderTable.id]: {
    accept: '.csv,.txt,.tsv,.dat',
    table: true,
    read: (bytes, name) => ({ [ladderTable.id]: readLadderFile(decodeText(bytes), name) }),
  },
  [sectionFile.id]: {
    accept: '.csv,.txt,.tsv,.dat,.asc,.xyz',
    table: true,
    read: (bytes, name) => ({ [sectionFile.id]: readSectionFile(decodeText(bytes), name) }),
  },
};

/** The plane that the name of a profile says it was measured in; nothing where it says none. */
function planeInName(name: string): Patch {
  const z = placeInName(name);
  return z === undefined ? {} : { [measuredPlaneSource.id]: 'typed', [measuredProfileZ.id]: z };
}

/** Fewest columns of numbers without a header that can be a picture of a spot; fewer are a table that lacks one. */
const pictureColumns = 8;

/** A profile of the spot: a picture where the bytes say so or all is numbers, many in a row; else a table with a header. */
function readProfile(bytes: Uint8Array, name: string): MeasuredProfile {
  if (bytes.length === 0) throw new Problem('unreadable', `"${name}" is empty. Choose another file.`);
  if (isPng(bytes) || isTiff(bytes)) return profileOfPicture(decodeCameraImage(bytes, name));
  const text = decodeText(bytes);
  if (text.includes('\0') || text.trim() === '') return readProfileFile(text, name);
  const table = readDelimitedTable(text, `"${name}"`);
  const picture = table.rows[0]!.length >= pictureColumns && looksLikeNumbers(table);
  return picture ? profileOfPicture(decodeCameraImage(bytes, name)) : readProfileFile(text, name);
}

/**
 * Reads a file for the input of that id as a patch that chooses it as the source; the file itself is remembered, so that
 * a saved design can hold it. Throws a Problem that names the file.
 */
export function readFileAsPatch(id: string, bytes: Uint8Array, name: string): Patch {
  const patch = measuredFiles[id]!.read(bytes, name);
  readFrom(patch[id], { name, bytes, sha256: sha256(bytes) });
  return patch;
}

/** Reads a file of a saved design again, with the same checks as when it was given; chooses nothing. */
export const readSavedFileAgain: ReadFile = (id, bytes, name) => measuredFiles[id]!.read(bytes, name)[id];

/**
 * Reads a file for the input of that id, with `inputs` as they stand; the Problem of a file that cannot be read says that
 * the one given before stays.
 */
export function readMeasuredFile(
  id: string,
  bytes: Uint8Array,
  name: string,
  inputs: Readonly<Record<string, unknown>>,
): Patch {
  try {
    return readFileAsPatch(id, bytes, name);
  } catch (error) {
    const before = inputs[id] as { readonly name: string } | null;
    if (!(error instanceof Problem) || before === null) throw error;
    throw new Problem(
      error.kind,
      `${error.message} The file given before, "${before.name}", stays.`,
      error.parts,
    );
  }
}

/**
 * Id of the input for a file of unknown kind: a table with a header of words is a ladder where it names z, sizes and the
 * plate, one of spots where it names energies and sizes, a cross-section where it names places and heights, else a caustic; all else is an image, whose reader says best what else a file may be.
 */
export function inputForFile(bytes: Uint8Array): string {
  if (isPng(bytes) || isTiff(bytes)) return beamImage.id;
  const text = decodeText(bytes.subarray(0, 4096)).trimStart();
  const [first = ''] = text.split(/[\r\n]/);
  // No signs that only pictures hold.
  if (/[^\t -\uFFFC]/.test(first)) return beamImage.id;
  const kind = kindOfSpots(text);
  if (kind) return kind === 'ladder' ? ladderTable.id : spotTable.id;
  if (beginsAsRipples(text)) return rippleSeries.id;
  if (isSection(text)) return sectionFile.id;
  // Letters outside a number such as 1e-3.
  if (!/[a-df-z]/i.test(first)) return beamImage.id;
  const columns = /[\t;,]/.test(first) || beginsAsCaustic(readDelimitedTable(first, undefined, false));
  return columns ? causticTable.id : beamImage.id;
}
