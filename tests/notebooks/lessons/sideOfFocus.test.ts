import { sideOfFocus } from '../../../notebooks/lessons/sideOfFocus.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(sideOfFocus);
