import { designGraph } from '../../lib/design/design.ts';
import { type DesignFile, readDesignFile } from '../../lib/design/designFile.ts';
import { Problem } from '../../lib/problem.ts';
import { decodeText } from '../fileText.ts';
import { readSavedFileAgain } from '../measuredFiles.ts';

/** Above every design with pictures, and well below the longest text that browsers hold (512 MB). */
const mostBytes = 200e6;

/** A design from the bytes of a file; a bad file throws a Problem that names file, place and value, and changes nothing. */
export function readDesign(bytes: Uint8Array, fileName: string): DesignFile {
  checkLength(bytes.length, fileName);
  return readDesignFile(designGraph, decodeText(bytes), fileName, readSavedFileAgain);
}

/** Throws the Problem of a file that is too long to be read. */
export function checkLength(length: number, fileName: string): void {
  if (length <= mostBytes) return;
  const megabytes = Math.round(length / 1e6);
  throw new Problem(
    'unreadable',
    `'${fileName}' is ${megabytes} MB long, and a design file has at most ${mostBytes / 1e6} MB. Choose a file that was saved as a design.`,
    { value: `${megabytes} MB`, allowed: `at most ${mostBytes / 1e6} MB` },
  );
}
