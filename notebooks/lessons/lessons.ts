import { alignment } from './alignment.ts';
import { beamQuality } from './beamQuality.ts';
import { beamSize } from './beamSize.ts';
import { depthAndTilt } from './depthAndTilt.ts';
import type { Lesson } from './lesson.ts';
import { peakAndMean } from './peakAndMean.ts';
import { pulsesAndDose } from './pulsesAndDose.ts';
import { ripplePeriodLesson } from './ripplePeriod.ts';
import { sideOfFocus } from './sideOfFocus.ts';
import { stepPhaseLesson } from './stepPhase.ts';
import { stopLesson } from './stop.ts';
import { thresholdPlot } from './thresholdPlot.ts';
import { widthWords } from './widthWords.ts';

/** All lessons, in the order in which they build on each other. */
export const lessons: readonly Lesson[] = [
  beamSize,
  stepPhaseLesson,
  stopLesson,
  sideOfFocus,
  beamQuality,
  peakAndMean,
  thresholdPlot,
  ripplePeriodLesson,
  pulsesAndDose,
  depthAndTilt,
  alignment,
  widthWords,
];
