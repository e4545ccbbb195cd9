import { beamQuality } from './beamQuality.ts';
import { beamSize } from './beamSize.ts';
import type { Lesson } from './lesson.ts';
import { peakAndMean } from './peakAndMean.ts';
import { sideOfFocus } from './sideOfFocus.ts';
import { stepPhaseLesson } from './stepPhase.ts';
import { stopLesson } from './stop.ts';

/** All lessons, in the order in which they build on each other. */
export const lessons: readonly Lesson[] = [
  beamSize,
  stepPhaseLesson,
  stopLesson,
  sideOfFocus,
  beamQuality,
  peakAndMean,
];
