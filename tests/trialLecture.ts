import type { Lecture } from '../lib/graph/studies.ts';

/** An invented lecture to be given in tests: every kind of piece, questions before charts of all kinds, inputs set. */
export const trialLecture: Lecture = {
  id: 'lecture7',
  title: 'Seven steps to a flat spot',
  about: 'For those who have seen a lens before.',
  steps: [
    {
      id: 'opening',
      title: 'What we want from a spot',
      pieces: [
        {
          kind: 'text',
          text: 'A laser spot is round and soft: bright in the middle, and fading outwards.\n\n- Some work wants it **flat**.\n- Some work wants a **ring**.\n\nToday the spot is {spot.width} wide.',
        },
      ],
      notes: 'Welcome them. Today’s spot is {spot.width} wide, and nobody knows yet *why*.',
      minutes: 3,
    },
    {
      id: 'profile',
      title: 'Half a wave in the middle',
      pieces: [
        { kind: 'text', text: 'The plate holds back the middle of the beam by **half a wave**.' },
        { kind: 'block', document: 'matching', block: 'profile' },
        { kind: 'text', text: 'The middle sinks by {spot.dip}.' },
      ],
      ask: {
        question: 'What becomes of the **middle** of the spot?',
        options: ['It becomes brighter', 'It becomes darker', 'Nothing happens'],
        from: 1,
      },
      notes: 'Wait until *every* hand is up.',
      minutes: 4,
    },
    {
      id: 'wider',
      title: 'A wider beam on the same plate',
      pieces: [
        { kind: 'text', text: 'The beam is {laser.beamDiameter} wide at 1/e², twice the radius.' },
        { kind: 'controls', ids: ['laser.beamDiameter', 'lens.focalLength'] },
        { kind: 'block', document: 'matching', block: 'profile' },
      ],
      sets: { 'laser.beamDiameter': 6e-3 },
      minutes: 5,
    },
    {
      id: 'over',
      title: 'Where is it widest?',
      pieces: [
        {
          kind: 'chart',
          over: { id: 'lens.focalLength', unit: 'm', from: 0.05, to: 0.2, count: 7, by: 'steps' },
          ids: ['spot.width'],
        },
      ],
      ask: { question: 'How does the width grow with the focal length?', options: [], from: 0 },
      minutes: 3,
    },
    {
      id: 'focus',
      title: 'Through the focus',
      pieces: [
        { kind: 'block', document: 'through-focus', block: 'map' },
        { kind: 'text', text: 'One picture for every plane, side by side.' },
      ],
      ask: { question: 'On which side is it flat?', options: ['Before it', 'Behind it'], from: 0 },
      notes: 'Show where the lens stands.',
      minutes: 6,
    },
    {
      id: 'numbers',
      title: 'The numbers',
      pieces: [
        { kind: 'values', ids: ['spot.width', 'spot.dip', 'spot.peakFluence'] },
        { kind: 'equation', id: 'match.stepRatio' },
      ],
      sets: { 'laser.beamDiameter': 4e-3 },
      minutes: 2,
    },
    {
      id: 'end',
      title: 'What to take home',
      pieces: [{ kind: 'text', text: '1. Half a wave.\n2. The right beam.\n3. The right plane.' }],
    },
  ],
};
