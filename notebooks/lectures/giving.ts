import type { Graph } from '../../lib/graph/graph.ts';
import { type History, startHistory } from '../../lib/graph/history.ts';
import { applyPatch, type DesignState } from '../../lib/graph/state.ts';
import type { Lecture, LectureStep } from '../../lib/graph/studies.ts';
import { Problem } from '../../lib/problem.ts';

/** What has happened in a step. */
export interface StepRoom {
  /** What the step withholds has been shown. */
  readonly revealed: boolean;
  /** Place of the option that the room takes for right. */
  readonly chosen?: number;
  /** The step's design as it was left, with its steps back; none before it was first opened. */
  readonly designs?: History;
}

/** A lecture while it is given; replaced by every change. */
export interface Giving {
  readonly lecture: Lecture;
  /** Place of the step that is shown. */
  readonly place: number;
  /** By the id of their step. */
  readonly rooms: Readonly<Record<string, StepRoom>>;
  /** When its time began, ms since 1970. */
  readonly began: number;
  /** When it was left, ms since 1970: its time stands still since. */
  readonly left?: number;
  /** Nothing is shown: the room looks at the lecturer. */
  readonly blank: boolean;
}

const untouched: StepRoom = { revealed: false };

/** A lecture at one of its steps, the nearest where there is none at that place. */
export function beginGiving(lecture: Lecture, place: number, now: number): Giving {
  return { lecture, place: placeIn(lecture, place), rooms: {}, began: now, blank: false };
}

export const stepOf = ({ lecture, place }: Giving): LectureStep | undefined => lecture.steps[place];

export const roomOf = (giving: Giving): StepRoom => giving.rooms[stepOf(giving)?.id ?? ''] ?? untouched;

/** Whether a step has pieces that wait for the room. */
export function withholds({ ask, pieces }: LectureStep): boolean {
  return ask !== undefined && ask.from < pieces.length;
}

/** Whether the step shown still withholds the piece at that place. */
export function isWithheld(giving: Giving, piece: number): boolean {
  const from = stepOf(giving)?.ask?.from;
  return from !== undefined && piece >= from && !roomOf(giving).revealed;
}

/** What was withheld comes first, the next step afterwards; from a blank screen what was there. */
export function goOn(giving: Giving): Giving {
  const step = stepOf(giving);
  if (giving.blank) return { ...giving, blank: false };
  if (step && withholds(step) && !roomOf(giving).revealed) return change(giving, { revealed: true });
  return goTo(giving, giving.place + 1);
}

/** To the step before, as it was left. */
export function goBack(giving: Giving): Giving {
  return giving.blank ? { ...giving, blank: false } : goTo(giving, giving.place - 1);
}

/** To a step, or as near as there is one. */
export function goTo(giving: Giving, place: number): Giving {
  const to = placeIn(giving.lecture, place);
  return to === giving.place && !giving.blank ? giving : { ...giving, place: to, blank: false };
}

/** Withholds again what the step withheld at first. */
export function withholdAgain(giving: Giving): Giving {
  return roomOf(giving).revealed ? change(giving, { revealed: false }) : giving;
}

/** Marks what most of the room takes for right; the same again takes the mark away. */
export function choose(giving: Giving, option: number): Giving {
  const options = stepOf(giving)?.ask?.options ?? [];
  if (option < 0 || option >= options.length) return giving;
  return change(giving, { chosen: roomOf(giving).chosen === option ? undefined : option });
}

/** Keeps the design of the step shown as it is. */
export function keepDesigns(giving: Giving, designs: History): Giving {
  return roomOf(giving).designs === designs ? giving : change(giving, { designs });
}

export const toggleBlank = (giving: Giving): Giving => ({ ...giving, blank: !giving.blank });

/** Counts the time from now on. */
export const beginTime = (giving: Giving, now: number): Giving => ({ ...giving, began: now });

/** The lecture is left: its time stands still. */
export const leave = (giving: Giving, now: number): Giving => ({ ...giving, left: now });

/** It goes on, and its time with it, as if nothing had been between. */
export function takeUp({ left, ...giving }: Giving, now: number): Giving {
  return left === undefined ? giving : { ...giving, began: giving.began + Math.max(0, now - left) };
}

function change(giving: Giving, room: { readonly [K in keyof StepRoom]?: StepRoom[K] | undefined }): Giving {
  const id = stepOf(giving)?.id;
  if (id === undefined) return giving;
  const { chosen, ...rest } = { ...roomOf(giving), ...room };
  const next = { ...rest, ...(chosen !== undefined && { chosen }) } as StepRoom;
  return { ...giving, rooms: { ...giving.rooms, [id]: next } };
}

function placeIn({ steps }: Lecture, place: number): number {
  return Math.max(0, Math.min(steps.length - 1, Number.isFinite(place) ? Math.trunc(place) : 0));
}

/** The design that a step begins with, and what of it cannot be set. */
export interface Prepared {
  readonly design: DesignState;
  readonly problem?: string;
}

/** The lecture's design with what the step sets; where that is not allowed, without it. */
export function preparedDesign(graph: Graph, design: DesignState, step: LectureStep | undefined): Prepared {
  try {
    return { design: applyPatch(graph, design, step?.sets ?? {}) };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { design, problem: `This step sets what cannot be set. ${error.message}` };
  }
}

/** The designs of the step shown: as they were left, or as it is prepared. */
export function designsOf(graph: Graph, design: DesignState, giving: Giving): History {
  return roomOf(giving).designs ?? startHistory(preparedDesign(graph, design, stepOf(giving)).design);
}
