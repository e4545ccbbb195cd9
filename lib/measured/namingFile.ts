import { Problem } from '../problem.ts';

/** Runs `read`; a Problem that does not name the file gets `introduction`, which does, before its sentence. */
export function namingFile<T>(name: string, introduction: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof Problem) || error.message.includes(`"${name}"`)) throw error;
    throw new Problem(error.kind, `${introduction}: ${error.message}`, error.parts);
  }
}
