import { Problem } from '../../lib/problem.ts';
import type { CommandIo } from './commandIo.ts';

/** Writes a file, or throws a Problem that names it. */
export function writeFile(io: CommandIo, path: string, bytes: Uint8Array): void {
  try {
    io.writeFile(path, bytes);
  } catch {
    throw new Problem('unreadable', `The file '${path}' cannot be written; check its name and folder.`);
  }
}
