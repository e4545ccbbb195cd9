import type { Lecture } from '../../lib/graph/studies.ts';
import { Problem } from '../../lib/problem.ts';
import { allLectures, isShipped } from '../lectures/allLectures.ts';
import { lecturePaper } from '../lectures/lecturePaper.ts';
import { unnamed } from '../rationale/facts.ts';
import type { CommandIo } from './commandIo.ts';
import { designOptions, openDesign } from './openDesign.ts';
import { readOptions, required } from './options.ts';
import { commandOf, dateOf } from './papers.ts';
import { checkPaperName, writePaper } from './writePaper.ts';

/**
 * `lecture [DESIGN] ID`: writes the printed copy of a lecture that the design keeps, or of one that comes with the program;
 * with --notes the lecturer's own copy. Promises what to say.
 */
export async function lecture(args: readonly string[], io: CommandIo): Promise<string> {
  const options = readOptions(args, [...designOptions, 'to', 'date'], ['notes']);
  const to = required(options, 'to', 'lecture.html');
  checkPaperName(to);
  const date = dateOf(options.one('date'));
  // A design alone names no lecture.
  const last = options.words.at(-1);
  const id = last?.endsWith('.json') ? undefined : last;
  const words = id === undefined ? options.words : options.words.slice(0, -1);
  const design = openDesign({ ...options, words }, io);
  const found = lectureOf(id, allLectures(design.studies));
  const called = design.name?.trim() ? design.name : isShipped(found.id) ? found.title : unnamed;
  const made = { name: called, date, command: commandOf('lecture', args) };
  const notes = options.all('notes').length > 0;
  const paths = await writePaper(
    lecturePaper({ name: 'lecture', lecture: found, design, notes, made }),
    to,
    io,
  );
  return `Written: ${paths.join(', ')}\n`;
}

function lectureOf(id: string | undefined, lectures: readonly Lecture[]): Lecture {
  const found = lectures.find((one) => one.id === id);
  if (found) return found;
  const allowed = lectures.map((one) => one.id).join(', ');
  const there = allowed === '' ? 'This design keeps no lecture.' : `There are: ${allowed}.`;
  if (id === undefined)
    throw new Problem('unreadable', `Say which lecture to write, by its id behind the design. ${there}`, {
      allowed,
    });
  throw new Problem('absent', `There is no lecture '${id}' here. ${there}`, { value: id, allowed });
}
