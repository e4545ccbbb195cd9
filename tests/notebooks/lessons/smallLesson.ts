import { plateBeamDiameter } from '../../../lib/design/expander.ts';
import { figure } from '../../../notebooks/document.ts';
import { choiceTask, type Lesson, markTask, numberTask } from '../../../notebooks/lessons/lesson.ts';
import { prose } from '../../../notebooks/prose.ts';

/** A straight line over the beam, so that a place along it is known. */
export const lineFigure = figure({
  id: 'line',
  from: { beam: plateBeamDiameter },
  view: ({ beam }) => ({
    title: 'A line',
    x: { label: 'distance', unit: 'mm', domain: [0, 20] },
    y: { label: 'height', unit: '', domain: [0, 1] },
    series: [{ label: 'line', role: 'main', x: Float64Array.of(0, 20), y: Float64Array.of(0, 1) }],
    marks: [{ kind: 'vertical', x: beam * 1e3, label: 'beam', role: 'today' }],
    summary: 'A line that rises.',
    hint: 'Nothing moves.',
  }),
});

const from = { beam: plateBeamDiameter };

/** Three tasks, one of each kind; the beam is twice the raw one. */
export const smallLesson: Lesson = {
  id: 'small',
  title: 'A small one',
  about: 'You can double a number.',
  minutes: 1,
  draw: (random) => ({ 'laser.beamDiameter': 4e-3 + 1e-4 * Math.floor(10 * random.uniform()) }),
  tasks: [
    numberTask({
      id: 'width',
      stage: 'observe',
      question: prose`How wide?`,
      unit: 'm',
      display: 'mm',
      within: 0.02,
      from,
      answer: ({ beam }) => beam,
      errors: [
        { id: 'radius', reason: prose`That is the radius.`, answer: ({ beam }) => beam / 2 },
        { id: 'not-widened', reason: prose`Not widened.`, answer: (_, ask) => 1.37 * ask({}).beam },
      ],
      explanation: prose`Twice.`,
    }),
    choiceTask({
      id: 'side',
      stage: 'predict',
      set: { 'expander.magnification': 3 },
      question: prose`Which?`,
      options: { wider: 'It gets wider', narrower: 'It gets narrower' },
      from,
      answer: ({ beam }) => (beam > 10e-3 ? 'wider' : 'narrower'),
      errors: [],
      reveals: [lineFigure],
      explanation: prose`Three times.`,
    }),
    markTask({
      id: 'place',
      stage: 'explain',
      question: prose`Where?`,
      figure: lineFigure,
      along: 'x',
      within: 0.02,
      from,
      answer: ({ beam }) => beam * 1e3,
      errors: [{ id: 'half', reason: prose`Half.`, answer: ({ beam }) => (beam / 2) * 1e3 }],
      explanation: prose`There.`,
    }),
  ],
};
