import { beamQuality } from '../../../notebooks/lessons/beamQuality.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(beamQuality);
