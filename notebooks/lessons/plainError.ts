import type { ChoiceTask, Task, TypicalError } from './lesson.ts';

/** What the id of such an error begins with; ids of typical errors have no dot. */
const prefix = 'otherwise.';

/** The error of an option that no typical error leads to, with its reason; undefined where the task gives none. */
export function plainError({ otherwise = {} }: ChoiceTask, option: string): TypicalError | undefined {
  if (!Object.hasOwn(otherwise, option)) return undefined;
  return { id: prefix + option, reason: otherwise[option]!, answer: () => option };
}

/** The error of a task by its id. */
export function errorOf(task: Task, id: string): TypicalError | undefined {
  if (task.kind === 'choice' && id.startsWith(prefix)) return plainError(task, id.slice(prefix.length));
  return (task.errors as readonly TypicalError[]).find((error) => error.id === id);
}
