import { usedBeamPropagationRatio } from '../../lib/design/rawBeam.ts';
import { dip } from '../../lib/design/spot.ts';
import { prose } from '../prose.ts';
import { choiceTask } from './lesson.ts';
import { otherThan } from './otherThan.ts';
import { spotAndPerfectFigure } from './spotAcross.ts';

const changes = {
  deeper: 'The dip is deeper than with a perfect beam',
  same: 'There is no difference in the dip',
  shallower: 'The dip is shallower than with a perfect beam',
} as const;

/** Dips nearer than this look alike. */
const alike = 0.02;

function change(from: number, to: number): keyof typeof changes {
  if (Math.abs(to - from) < alike) return 'same';
  return to > from ? 'deeper' : 'shallower';
}

/** The same design with a perfect beam. */
export const perfect = { set: { 'laser.beamPropagationRatio': 1 } };

export const hollow = choiceTask({
  id: 'dip',
  stage: 'predict',
  question: prose`Now the plate with its step of half a wave comes in, and the spot is looked at in the focus. Two beams are tried, equally wide: a perfect one, and this one with M² of ${usedBeamPropagationRatio}. How does the dip in the middle of this beam’s spot compare, if there is any?`,
  options: changes,
  otherwise: {
    deeper: prose`Light of a higher M² cancels less well, and a blur never digs a dip: it fills one, where there is one.`,
    shallower: prose`So it would be if the spot of the perfect beam had a dip. With this step and this beam it has none, so there is nothing to be filled.`,
  },
  from: { dip },
  answer: ({ dip }, ask) => change(ask(perfect).dip, dip),
  errors: [
    {
      id: 'exchanged',
      reason: prose`That is how the perfect beam compares with this one. A dark middle needs light that cancels exactly, and light of a higher M² cancels less well.`,
      answer: ({ dip }, ask) => otherThan(change(ask(perfect).dip, dip), change(dip, ask(perfect).dip)),
    },
    {
      id: 'only-wider',
      reason: prose`So it would be if M² made the whole spot wider and left its shape. But it blurs the spot: light from the bright ring spills into the dip.`,
      answer: ({ dip }, ask) => {
        const flawless = ask(perfect).dip;
        return otherThan(change(flawless, dip), change(flawless, flawless));
      },
    },
  ],
  reveals: [spotAndPerfectFigure],
  explanation: prose`In this model M² acts as a blur over the spot: it fills a dip, and where there is none nothing is to be filled. Here the dip of this beam is ${dip}. A real beam may have its M² from errors in its wavefront, and those need not help.`,
});
