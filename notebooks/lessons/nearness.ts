import type { AxisSpec } from '../document.ts';
import type { Task } from './lesson.ts';

/** An answer as it is compared: a number in SI, the id of an option, or a place along an axis in its unit. */
export type Answer = number | string;

/** Circles of tolerance are drawn this much wider before two answers count as told apart. */
const roomToSpare = 1.5;

/** Whether an answer given is that one, within what the task allows. `axis` is the one that is marked on. */
export function isNear(task: Task, answer: Answer, given: Answer, axis?: AxisSpec): boolean {
  if (typeof answer === 'string' || typeof given === 'string') return answer === given;
  return Math.abs(placeOf(given, axis) - placeOf(answer, axis)) <= reach(task, answer);
}

/** Whether no answer can be taken for both, with room to spare: their circles of tolerance do not touch. */
export function areApart(task: Task, one: Answer, other: Answer, axis?: AxisSpec): boolean {
  if (typeof one === 'string' || typeof other === 'string') return one !== other;
  const between = Math.abs(placeOf(one, axis) - placeOf(other, axis));
  return between > roomToSpare * (reach(task, one) + reach(task, other));
}

/** Whether an answer can be given at all: a finite number, not 0 where nearness is a part of it, or on the axis. */
export function canBeGiven(task: Task, answer: Answer, axis?: AxisSpec): boolean {
  if (task.kind === 'choice') return Object.hasOwn(task.options, answer);
  if (typeof answer !== 'number' || !Number.isFinite(answer)) return false;
  if (task.kind === 'number') return answer !== 0;
  const place = placeOf(answer, axis);
  return place >= 0 && place <= 1;
}

/** How far from it an answer still counts as it: a part of a number, a part of the axis for a mark. */
function reach(task: Task, answer: number): number {
  if (task.kind === 'choice') return 0;
  return task.kind === 'mark' ? task.within : task.within * Math.abs(answer);
}

/** Part of the axis at which a place lies, 0…1; the number itself where there is no axis. */
function placeOf(value: number, axis: AxisSpec | undefined): number {
  if (axis === undefined) return value;
  const [low, high] = axis.domain;
  if (axis.logarithmic) return Math.log(value / low) / Math.log(high / low);
  return (value - low) / (high - low);
}
