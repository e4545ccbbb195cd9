import type { Lecture } from '../lib/graph/studies.ts';

/** An invented lecture with everything that a step can hold. */
export const tableLecture: Lecture = {
  id: 'lecture1',
  title: 'Two beams on one plate',
  about: 'For the second hour of the course.',
  steps: [
    {
      id: 'step1',
      title: 'What the plate does',
      pieces: [
        { kind: 'text', text: 'The spot is {spot.width} wide, $r_0$.' },
        { kind: 'block', document: 'matching', block: 'profile', title: 'Größe', x: [-40, 40] },
      ],
      notes: 'Hold the plate up *before* the first chart.',
      minutes: 4.5,
    },
    {
      id: 'step2',
      title: 'A wider beam',
      pieces: [
        { kind: 'text', text: 'The beam is {laser.beamDiameter} wide.' },
        { kind: 'controls', ids: ['laser.beamDiameter'] },
        { kind: 'values', ids: ['spot.width'] },
      ],
      sets: { 'laser.beamDiameter': 6e-3, 'plate.stop': 'open' },
      ask: { question: 'What becomes of the **middle**?', options: ['It rises', 'It sinks'], from: 1 },
    },
    { id: 'step3', title: 'Thanks', pieces: [] },
  ],
};
