import { designGraph } from '../../lib/design/design.ts';
import { ladderTable } from '../../lib/design/ladderMarks.ts';
import { beamImagePitch } from '../../lib/design/laser.ts';
import { leaveOut, leftOutReason, leftOutRow } from '../../lib/design/leftOut.ts';
import { markPicture } from '../../lib/design/markPicture.ts';
import { measuredProfile, measuredProfileZ } from '../../lib/design/measuredSpot.ts';
import { firstMicrograph, otherMicrograph } from '../../lib/design/micrographs.ts';
import { otherProfiles } from '../../lib/design/profileList.ts';
import { rippleSeries } from '../../lib/design/rippleSeries.ts';
import { sectionFile } from '../../lib/design/sectionFile.ts';
import { leftOut, spotTable } from '../../lib/design/spots.ts';
import type { Graph } from '../../lib/graph/graph.ts';
import type { ListItem } from '../../lib/graph/quantity.ts';
import {
  applyPatch,
  checkInput,
  type DesignState,
  initialState,
  inputOf,
  type Patch,
} from '../../lib/graph/state.ts';
import { readTyped } from '../../lib/graph/typedInput.ts';
import { parseQuantity } from '../../lib/graph/units.ts';
import { Problem } from '../../lib/problem.ts';
import { ownGraph } from '../../lib/studies/ownGraph.ts';
import { decodeText } from '../fileText.ts';
import { readDesign } from '../keeping/readDesign.ts';
import { readFileAsPatch } from '../measuredFiles.ts';
import { addProfiles, readProfileOf } from '../profileFiles.ts';
import type { CommandIo } from './commandIo.ts';
import { type Options, required } from './options.ts';

/** Options of every command that starts from a design. */
export const designOptions = [
  'set',
  'beam',
  'pixel',
  'caustic',
  'measured-profile',
  'measured-z',
  'measured-focus',
  'mark-picture',
  'micrograph',
  'other-micrograph',
  'spots',
  'ladder',
  'periods',
  'section',
  'leave-out',
] as const;

/** Options that give one file for one input. */
const files = {
  caustic: 'laser.causticTable',
  'measured-focus': 'focus.measuredCaustic',
  'mark-picture': markPicture.id,
  micrograph: firstMicrograph.picture.id,
  'other-micrograph': otherMicrograph.picture.id,
  spots: spotTable.id,
  ladder: ladderTable.id,
  periods: rippleSeries.id,
  section: sectionFile.id,
} as const;

/** The design named on the command line (the initial one without a file), with measured files and then --set applied. */
export function openDesign(options: Options, io: CommandIo): DesignState {
  if (options.words.length > 1) {
    throw new Problem(
      'unreadable',
      `Give at most one design file, not ${options.words.length} (${options.words.join(', ')}).`,
    );
  }
  let state = initialState(designGraph);
  const [path] = options.words;
  if (path !== undefined) state = readDesignState(state, io, path);
  if (options.one('beam') !== undefined || options.one('pixel') !== undefined) {
    state = applyPatch(designGraph, state, beamPatch(options, io));
  }
  for (const [option, input] of Object.entries(files)) {
    const file = options.one(option);
    if (file !== undefined) state = applyPatch(designGraph, state, readMeasured(io, input, file));
  }
  state = applyPatch(designGraph, state, Object.assign({}, ...options.all('set').map(readSetting)));
  state = applyPatch(designGraph, state, leftOutPatch(options, state));
  return applyPatch(designGraph, state, profilesPatch(options, io, state));
}

/** Measured profiles in place of those of the design, each in its own plane where --measured-z says so. */
function profilesPatch(options: Options, io: CommandIo, { inputs }: DesignState): Patch {
  const [paths, places] = [options.all('measured-profile'), options.all('measured-z')];
  if (places.length > 0 && places.length !== paths.length) {
    throw new Problem(
      'unreadable',
      `The number of --measured-z is ${places.length}, and that of --measured-profile is ${paths.length}; give a plane for each profile, in the same order, or none.`,
      { value: String(places.length), allowed: String(paths.length) },
    );
  }
  if (paths.length === 0) return {};
  const given = paths.map((path, i) => ({
    profile: readProfileOf({ name: nameOf(path), bytes: readBytes(io, path) }),
    z: places[i] === undefined ? undefined : readTyped(measuredProfileZ, places[i]),
  }));
  const none = { [measuredProfile.id]: null, [otherProfiles.id]: [] };
  return { ...none, ...addProfiles(given, { ...inputs, ...none }) };
}

/** Rows of the table of spots to leave out, "5" or "5=outlier", besides those of the design. */
function leftOutPatch(options: Options, { inputs }: DesignState): Patch {
  let items = inputs[leftOut.id] as readonly ListItem[];
  for (const text of options.all('leave-out')) {
    const [row = '', reason = 'other'] = text.split('=');
    items = leaveOut(readTyped(leftOutRow, row), checkInput(leftOutReason, reason) as string, items);
  }
  return { [leftOut.id]: items };
}

/** The design of a file with its name; what this program does not know of it is named on the error stream. */
function readDesignState(start: DesignState, io: CommandIo, path: string): DesignState {
  const { inputs, name, about, kept, studies } = readDesign(readBytes(io, path), path);
  const unknown = Object.keys(kept.inputs);
  if (unknown.length > 0)
    io.err(`'${path}' also gives what this program does not know and leaves out: ${unknown.join(', ')}.\n`);
  return { ...applyPatch(designGraph, start, inputs), name, about, ...(studies && { studies }) };
}

/** The graph of a design: its person's own quantities stand in it, those with a mistake without a value. */
export function graphOf({ studies }: DesignState): Graph {
  return ownGraph(designGraph, studies?.ownLines ?? []).graph;
}

function beamPatch(options: Options, io: CommandIo): Patch {
  return imagePatch(io, required(options, 'beam', 'beam.png'), required(options, 'pixel', '"5.5 um"'));
}

/** A camera image with the pitch of its pixels, as the source of the beam. */
export function imagePatch(io: CommandIo, path: string, pitch: string): Patch {
  return {
    [beamImagePitch.id]: readTyped(beamImagePitch, pitch),
    ...readMeasured(io, 'laser.beamImage', path),
  };
}

/** A file for that input, as the source of what it measures. */
/** The name of a file without its folders. */
function nameOf(path: string): string {
  return path.replace(/^.*[/\\]/, '');
}

function readMeasured(io: CommandIo, input: string, path: string): Patch {
  const bytes = readBytes(io, path);
  try {
    // In what is written the file goes by its name, as on the page: folders are nobody else's business.
    return readFileAsPatch(input, bytes, nameOf(path));
  } catch (error) {
    // A message names it as it was given.
    if (nameOf(path) !== path) readFileAsPatch(input, bytes, path);
    throw error;
  }
}

/** The options that give an input that is a file. */
const fileOptions: Readonly<Record<string, string>> = {
  'laser.beamImage': '--beam FILE --pixel LENGTH',
  [measuredProfile.id]: '--measured-profile FILE',
  [leftOut.id]: '--leave-out ROW=REASON, several times',
  [otherProfiles.id]: '--measured-profile FILE --measured-z LENGTH, several times',
  ...Object.fromEntries(Object.entries(files).map(([option, input]) => [input, `--${option} FILE`])),
};

/** `ID=VALUE` as a patch: any unit for numbers, a bare number is SI; the option's key for choices. */
function readSetting(text: string): Patch {
  const equals = text.indexOf('=');
  if (equals < 1)
    throw new Problem(
      'unreadable',
      `'${text}' is not of the form ID=VALUE, such as laser.beamDiameter="5 mm".`,
    );
  const id = text.slice(0, equals).trim();
  const value = text.slice(equals + 1).trim();
  const quantity = designGraph.quantities.get(id);
  if (quantity?.kind === 'derived' && quantity.assigns)
    return { [id]: parseQuantity(value, String(quantity.unit)) };
  const input = inputOf(designGraph, id);
  if (input.kind === 'number') return { [id]: readTyped(input, value) };
  if (input.kind === 'choice') return { [id]: value };
  throw new Problem('impossible', `'${id}' is read from a file; give it with ${fileOptions[id]}.`, {
    input: id,
  });
}

/** Bytes of a file, or a Problem that names it. */
export function readBytes(io: CommandIo, path: string): Uint8Array {
  try {
    return io.readFile(path);
  } catch {
    throw new Problem('unreadable', `The file '${path}' cannot be read; check its name and folder.`);
  }
}

/** Text of a file, or a Problem that names it. */
export function readText(io: CommandIo, path: string): string {
  return decodeText(readBytes(io, path));
}
