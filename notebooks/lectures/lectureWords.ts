import type { Graph } from '../../lib/graph/graph.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import type { Lecture, LectureStep } from '../../lib/graph/studies.ts';

const counted = (count: number, one: string, several: string): string =>
  `${count} ${count === 1 ? one : several}`;

/** Minutes as they are said: "4", "2.5". */
const plainMinutes = (minutes: number): string => String(Number(minutes.toFixed(1)));

/** How many steps, and how long: "10 steps, 40 minutes". */
export function lectureSize({ steps }: Pick<Lecture, 'steps'>): string {
  if (steps.length === 0) return 'No step yet';
  const timed = steps.filter(({ minutes }) => minutes !== undefined);
  const sum = timed.reduce((total, { minutes = 0 }) => total + minutes, 0);
  const count = counted(steps.length, 'step', 'steps');
  if (timed.length === 0) return `${count}, without times`;
  const minutes = sum === 1 ? '1 minute' : `${plainMinutes(sum)} minutes`;
  return timed.length === steps.length
    ? `${count}, ${minutes}`
    : `${count}, ${minutes} for ${timed.length} of them`;
}

/** What a step holds besides its title, in a few words. */
export function stepSize(graph: Graph, { pieces, sets = {}, ask, notes, minutes }: LectureStep): string {
  const names = Object.entries(sets).map(([id, value]) => {
    const quantity = graph.quantities.get(id);
    if (!quantity) return id;
    const shown = shownValue(quantity, { value });
    return `${quantity.name} ${quantity.kind === 'number' ? shown : `‘${shown}’`}`;
  });
  const set = names.length > 2 ? counted(names.length, 'input', 'inputs') : names.join(' and ');
  return [
    pieces.length === 0 ? 'nothing on it yet' : counted(pieces.length, 'piece', 'pieces'),
    ...(names.length === 0 ? [] : [`sets ${set}`]),
    ...(ask ? ['asks the room'] : []),
    ...(notes === undefined ? [] : ['with notes']),
    ...(minutes === undefined ? [] : [`${plainMinutes(minutes)} min`]),
  ].join(' · ');
}
