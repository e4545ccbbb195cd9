import { beamSize } from './beamSize.ts';
import type { Lesson } from './lesson.ts';

/** All lessons, in the order in which they build on each other. */
export const lessons: readonly Lesson[] = [beamSize];
