import { stepPhaseLesson } from '../../../notebooks/lessons/stepPhase.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(stepPhaseLesson);
