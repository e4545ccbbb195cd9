import type { Lecture } from '../../lib/graph/studies.ts';
import { halfWaveLecture } from './halfWave.ts';

/** Lectures that come with the program, over the design that it begins with. */
export const shippedLectures: readonly Lecture[] = [halfWaveLecture];
