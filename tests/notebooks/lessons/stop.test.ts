import { stopLesson } from '../../../notebooks/lessons/stop.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(stopLesson);
