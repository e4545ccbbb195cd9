import { formatNumber, formatReadable, parseQuantity, withUnit } from '../../lib/graph/units.ts';
import type { AxisSpec } from '../document.ts';
import type { Lesson, NumberTask, Task, TypicalError } from './lesson.ts';
import type { LessonCase } from './lessonCase.ts';
import { type Answer, isNear } from './nearness.ts';
import { plainError } from './plainError.ts';

/** What an answer is: right, one of the errors that people make, or something else with a word on where to look. */
export type Verdict =
  | { readonly kind: 'right' }
  | { readonly kind: 'error'; readonly error: TypicalError }
  | { readonly kind: 'other'; readonly hint: string };

/** A right answer, and how it is written. */
export interface Solution {
  readonly value: Answer;
  readonly text: string;
}

/**
 * Judges an answer: a text with its unit (or a number in SI) for a task answered by a number, the id of an option for a
 * choice, a place in the unit of the axis for a mark. Throws the Problem of a text that is no quantity of that kind.
 */
export function judge(lesson: Lesson, lessonCase: LessonCase, taskId: string, given: Answer): Verdict {
  const task = taskOf(lesson, taskId);
  const { right, errors, axis } = lessonCase.at(taskId);
  const answer = task.kind === 'number' && typeof given === 'string' ? readAnswer(task, given) : given;
  if (isNear(task, right, answer, axis)) return { kind: 'right' };
  const found = errors.find((one) => isNear(task, one.answer, answer, axis));
  if (found) return { kind: 'error', error: found.error };
  const plain = task.kind === 'choice' ? plainError(task, String(answer)) : undefined;
  if (plain) return { kind: 'error', error: plain };
  return { kind: 'other', hint: hintFor(task, right, answer, axis) };
}

/** The right answer of a task, for who gives up. */
export function solution(lesson: Lesson, lessonCase: LessonCase, taskId: string): Solution {
  const task = taskOf(lesson, taskId);
  const { right, axis } = lessonCase.at(taskId);
  return { value: right, text: writtenAnswer(task, right, axis) };
}

/** The task of that id. */
export function taskOf(lesson: Lesson, taskId: string): Task {
  const task = lesson.tasks.find(({ id }) => id === taskId);
  if (!task) throw new Error(`The lesson ${lesson.id} has no task '${taskId}'.`);
  return task;
}

/** A typed answer in SI; a number without unit counts in the unit that the field proposes. */
function readAnswer({ unit, display }: NumberTask, text: string): number {
  return parseQuantity(text, unit, { bare: display, examples: withUnit('1', display) });
}

/** Digits in which a right answer is told: those of quantities. */
const digitsTold = 4;

function writtenAnswer(task: Task, answer: Answer, axis: AxisSpec | undefined): string {
  if (task.kind === 'choice') return task.options[answer]!;
  if (task.kind === 'number') return formatReadable(answer as number, task.unit, task.display, digitsTold);
  return withUnit(formatNumber(answer as number, digitsTold), axis!.unit);
}

function hintFor(task: Task, right: Answer, given: Answer, axis: AxisSpec | undefined): string {
  if (typeof right === 'string' || typeof given === 'string') return 'That is not what happens here.';
  if (task.kind === 'mark') return placeHint(task.along, given > right);
  if (isNear(task, -right, given, axis)) return 'The size is right, but not the sign.';
  return powerHint(task, right, given) ?? sizeHint(right, given);
}

function placeHint(along: 'x' | 'y', beyond: boolean): string {
  if (along === 'x') return beyond ? 'That is too far to the right.' : 'That is too far to the left.';
  return beyond ? 'That is too high.' : 'That is too low.';
}

/** Largest power of ten by which prefixes are mixed up: millimetres cubed for micrometres cubed, and one more. */
const largestPower = 12;

/** Right but for the power of ten. */
function powerHint(task: Task, right: number, given: number): string | undefined {
  const power = Math.round(Math.log10(given / right));
  if (!Number.isFinite(power) || power === 0 || Math.abs(power) > largestPower) return undefined;
  if (!isNear(task, right, given / 10 ** power)) return undefined;
  const side = power > 0 ? 'large' : 'small';
  const times =
    { 1: 'ten', 2: 'a hundred', 3: 'a thousand', 6: 'a million' }[Math.abs(power)] ?? `10^${Math.abs(power)}`;
  const where =
    power % 3 === 0 ? 'Look at the prefix of the unit' : 'Look at the unit and at the decimal point';
  return `That is ${times} times too ${side}. ${where}.`;
}

/** From this factor on an answer is far off. */
const farOff = 3;

function sizeHint(right: number, given: number): string {
  const side = Math.abs(given) > Math.abs(right) ? 'large' : 'small';
  if (given === 0) return 'It is not zero.';
  if (given * right < 0) return `The sign is not right, and without it the number is too ${side}.`;
  const far = Math.abs(Math.log(given / right)) > Math.log(farOff) ? 'far ' : '';
  return right < 0 ? `The sign is right, but the number is ${far}too ${side}.` : `That is ${far}too ${side}.`;
}
