import { Problem } from '../problem.ts';

/** Runs `compute`; a Problem that names no input is thrown again with this one, the input to change. */
export function namingInput<T>(input: string, compute: () => T): T {
  try {
    return compute();
  } catch (error) {
    if (!(error instanceof Problem) || error.parts.input !== undefined) throw error;
    throw new Problem(error.kind, error.message, { ...error.parts, input });
  }
}
