import { beamSize } from '../../../notebooks/lessons/beamSize.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(beamSize);
