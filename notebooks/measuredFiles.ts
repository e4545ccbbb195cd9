import { readCausticFile } from '../lib/design/causticFile.ts';
import { beamImage } from '../lib/design/laser.ts';
import { causticTable } from '../lib/design/measuredCaustic.ts';
import { beamSource, ratioSource } from '../lib/design/rawBeam.ts';
import type { Patch } from '../lib/graph/state.ts';
import { decodeCameraImage } from '../lib/measured/cameraImage.ts';
import { decodeText } from './fileText.ts';

/** How a file from the laboratory comes into the design. */
interface MeasuredFile {
  /** Kinds of file, as in the `accept` attribute. */
  readonly accept: string;
  /** Reads the file and chooses it as the source; throws a Problem that names it. */
  read(bytes: Uint8Array, name: string): Patch;
}

/** By the id of the input that takes the file. */
export const measuredFiles: Readonly<Record<string, MeasuredFile>> = {
  [beamImage.id]: {
    accept: '.png,.tif,.tiff,.csv,.txt',
    read: (bytes, name) => ({
      [beamImage.id]: decodeCameraImage(bytes, name),
      [beamSource.id]: 'measured',
    }),
  },
  [causticTable.id]: {
    accept: '.csv,.txt,.tsv,.dat',
    read: (bytes, name) => ({
      [causticTable.id]: readCausticFile(decodeText(bytes), name),
      [ratioSource.id]: 'measured',
    }),
  },
};

/** Id of the input for a file of unknown kind: a text that begins with words is a caustic, all else an image. */
export function inputForFile(bytes: Uint8Array): string {
  const head = decodeText(bytes.subarray(0, 4096));
  const [first = ''] = head.trimStart().split(/[\r\n]/);
  // Letters outside a number such as 1e-3, and nowhere a sign that only pictures hold: a PNG opens with “‰PNG”.
  const words = /[a-df-z]/i.test(first) && !/[^\t\n\r -\uFFFC]/.test(head);
  return words ? causticTable.id : beamImage.id;
}
