import type { Lecture } from '../../lib/graph/studies.ts';

/** What is meant for the steps, minutes. */
export interface MeantTime {
  /** Until the step begins, and until it ends. */
  readonly from: number;
  readonly until: number;
  readonly whole: number;
  /** Some steps say nothing about their time. */
  readonly isPartial: boolean;
}

const minute = 60_000;

/** The time meant for the steps of a lecture about the one at a place; none where no step says any. */
export function meantTime({ steps }: Lecture, place: number): MeantTime | undefined {
  const minutes = steps.map((step) => step.minutes ?? 0);
  const sum = (end: number) => minutes.slice(0, end).reduce((total, one) => total + one, 0);
  const whole = sum(steps.length);
  if (whole <= 0) return undefined;
  const isPartial = steps.some((step) => step.minutes === undefined);
  return { from: sum(place), until: sum(place + 1), whole, isPartial };
}

/** "4:05", or "1:04:05" from an hour on; what is below zero counts as zero. */
export function timeText(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  const two = (count: number) => String(count).padStart(2, '0');
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60];
  return `${hours > 0 ? `${hours}:${two(minutes)}` : minutes}:${two(seconds % 60)}`;
}

/** Minutes as they are said: "3 min", "2.5 min". */
export const minutesText = (minutes: number): string => `${Number(minutes.toFixed(1))} min`;

/** Whether the lecture is where it should be after so many ms: ahead of its step, behind its end, or in time. */
export function paceSaid(lecture: Lecture, place: number, spent: number): string {
  const meant = meantTime(lecture, place);
  if (!meant) return 'No step says how long it is meant to take.';
  const [early, late] = [meant.from * minute - spent, spent - meant.until * minute];
  const where =
    early >= minute / 2
      ? `${timeText(early)} ahead of time`
      : late >= minute / 2
        ? `${timeText(late)} behind time`
        : 'in time';
  return meant.isPartial ? `${where}, as far as steps say their time` : where;
}

/** Until when this step is meant to last, and the whole lecture. */
export function meantSaid(lecture: Lecture, place: number): string {
  const meant = meantTime(lecture, place);
  return meant
    ? `This step is meant to end at ${minutesText(meant.until)} of ${minutesText(meant.whole)}.`
    : '';
}
