import { peakAndMean } from '../../../notebooks/lessons/peakAndMean.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(peakAndMean);
