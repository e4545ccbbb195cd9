import type { Lecture, Studies } from '../../lib/graph/studies.ts';
import { shippedLectures } from './shipped.ts';

/** All lectures that can be given: those that come with the program first, then the person's own. */
export function allLectures(studies: Studies | undefined): readonly Lecture[] {
  return [...shippedLectures, ...(studies?.lectures ?? [])];
}

/** Whether a lecture comes with the program: it is given over the design that the program begins with. */
export const isShipped = (id: string): boolean => shippedLectures.some((lecture) => lecture.id === id);
