import { designGraph } from '../../lib/design/design.ts';
import { readDesignFile } from '../../lib/design/designFile.ts';
import { applyPatch, type DesignState, initialState, inputOf, type Patch } from '../../lib/graph/state.ts';
import { parseQuantity } from '../../lib/graph/units.ts';
import { decodeCameraImage } from '../../lib/measured/cameraImage.ts';
import { Problem } from '../../lib/problem.ts';
import type { CommandIo } from './commandIo.ts';
import { type Options, required } from './options.ts';

/** Options of every command that starts from a design. */
export const designOptions = ['set', 'beam', 'pixel'] as const;

/** The design named on the command line (the initial one without a file), with --set and --beam applied. */
export function openDesign(options: Options, io: CommandIo): DesignState {
  if (options.words.length > 1) {
    throw new Problem(
      'unreadable',
      `Give at most one design file, not ${options.words.length} (${options.words.join(', ')}).`,
    );
  }
  let state = initialState(designGraph);
  const [path] = options.words;
  if (path !== undefined)
    state = applyPatch(designGraph, state, readDesignFile(designGraph, readText(io, path), path).patch);
  if (options.one('beam') !== undefined || options.one('pixel') !== undefined) {
    state = applyPatch(designGraph, state, beamPatch(options, io));
  }
  return applyPatch(designGraph, state, Object.assign({}, ...options.all('set').map(readSetting)));
}

function beamPatch(options: Options, io: CommandIo): Patch {
  const path = required(options, 'beam', 'beam.png');
  const pitch = parseQuantity(required(options, 'pixel', '"5.5 um"'), 'm');
  return {
    'laser.beamImage': decodeCameraImage(readBytes(io, path), path),
    'laser.beamImagePitch': pitch,
    'laser.beamSource': 'measured',
  };
}

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
  if (input.kind === 'number') return { [id]: parseQuantity(value, input.unit) };
  if (input.kind === 'choice') return { [id]: value };
  throw new Problem('impossible', `'${id}' is read from a file; give it with --beam FILE --pixel LENGTH.`, {
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
  return new TextDecoder().decode(readBytes(io, path));
}
