import type { Lecture } from '../../lib/graph/studies.ts';
import { decidingSteps } from './halfWave/decides.ts';
import { planeSteps } from './halfWave/planes.ts';
import { useSteps } from './halfWave/uses.ts';
import { waveSteps } from './halfWave/waves.ts';
import { wishSteps } from './halfWave/wish.ts';

/** Forty minutes for students of an optics course: predictions first, then the curves. */
export const halfWaveLecture: Lecture = {
  id: 'half-a-wave',
  title: 'Why half a wave in the middle makes a flat spot',
  about:
    'Forty minutes for students of an optics course, from the wish for an even spot to the table it stands on. The room predicts before curves are drawn.',
  steps: [...wishSteps, ...waveSteps, ...planeSteps, ...decidingSteps, ...useSteps],
};
