import type { Lecture } from '../../lib/graph/studies.ts';

/** Lectures that come with the program, over the design that it begins with. */
export const shippedLectures: readonly Lecture[] = [];
