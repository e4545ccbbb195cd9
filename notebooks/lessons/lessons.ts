import { alignment } from './alignment.ts';
import { beamSize } from './beamSize.ts';
import { depthAndTilt } from './depthAndTilt.ts';
import type { Lesson } from './lesson.ts';
import { pulsesAndDose } from './pulsesAndDose.ts';
import { ripplePeriodLesson } from './ripplePeriod.ts';
import { thresholdPlot } from './thresholdPlot.ts';

/** All lessons, in the order in which they build on each other. */
export const lessons: readonly Lesson[] = [
  beamSize,
  thresholdPlot,
  ripplePeriodLesson,
  pulsesAndDose,
  depthAndTilt,
  alignment,
];
