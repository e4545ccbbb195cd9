import { centreAmplitude, outerAmplitude } from '../lib/design/explain.ts';
import { stepPhase } from '../lib/design/plate.ts';
import { dipNarrowerBeam, dipWiderBeam } from '../lib/design/sensitivity.ts';
import { dip } from '../lib/design/spot.ts';
import { question } from './document.ts';
import { prose, says } from './prose.ts';

/** A guess before looking: what a wider beam does to the dip. */
export const dipQuestion = question({
  id: 'guess',
  question: prose`**Guess before you look.** The beam grows by 5 %, everything else stays, and so does the workpiece. What happens to the dip, the part by which the axis lies below the highest fluence?`,
  options: ['It gets deeper', 'It stays, to one percentage point', 'It gets shallower'],
  from: { dip, wider: dipWiderBeam },
  answer: ({ dip, wider }) => (Math.abs(wider - dip) <= 0.01 ? 1 : wider > dip ? 0 : 2),
  explanation: prose`Today the dip is ${dip}; with a beam 5 % wider it is ${dipWiderBeam} at the same z, with one 5 % narrower ${dipNarrowerBeam}. ${says(
    { centre: centreAmplitude, outer: outerAmplitude, phase: stepPhase, dip, wider: dipWiderBeam },
    ({ centre, outer, phase, dip, wider }) =>
      wider > dip && centre > outer && Math.cos(phase) < 0
        ? 'A wider beam sends more of its light around the step, which brings the two amplitudes nearer to equal.'
        : 'How the dip moves depends on which of the two amplitudes is larger on the axis here, and on the distance from the focus.',
  )}`,
});
