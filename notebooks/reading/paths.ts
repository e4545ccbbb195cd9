import { lessons } from '../lessons/lessons.ts';

/** A stop on a way through the pages. */
export interface Stop {
  /** Address without its #: of a document, or of what is open in it. */
  readonly to: string;
  /** Why this reader goes there, and why now. */
  readonly why: string;
  /** About how long it takes, minutes; without its lessons. */
  readonly minutes: number;
  /** Ids of the lessons to take there, in their order. */
  readonly lessons?: readonly string[];
}

/** A way through everything, for one kind of reader. */
export interface ReadingPath {
  readonly id: string;
  /** Who walks it, in the words of that person. */
  readonly title: string;
  /** What such a reader types to find it. */
  readonly called: readonly string[];
  readonly about: string;
  readonly stops: readonly Stop[];
}

/** How long these lessons take together, minutes. */
function lessonMinutes(taken: readonly { readonly minutes: number }[]): number {
  return taken.reduce((sum, { minutes }) => sum + minutes, 0);
}

/** The lessons to take at a stop. */
export const lessonsAt = ({ lessons: ids = [] }: Stop) =>
  ids.map((one) => lessons.find(({ id }) => id === one)!);

/** How long a way takes with all its lessons, minutes. */
export const pathMinutes = ({ stops }: ReadingPath): number =>
  stops.reduce((sum, stop) => sum + stop.minutes + lessonMinutes(lessonsAt(stop)), 0);

const newcomer: ReadingPath = {
  id: 'newcomer',
  title: 'I am new in the lab',
  called: [
    ...['new in the lab', 'where do I start', 'where to start', 'where do I begin', 'getting started'],
    ...['first steps', 'beginner', 'newcomer', 'introduction', 'tutorial', 'basics', 'learn', 'help'],
  ],
  about:
    'From what the plate does to a first field of your own, with questions on the way that show whether you have understood.',
  stops: [
    {
      to: 'matching',
      why: 'What the plate does, and why beam and step must suit each other. Move the inputs and watch the spot. Take the lesson on widths before the others.',
      minutes: 20,
      lessons: ['width-words', 'beam-size', 'step-phase', 'stop'],
    },
    {
      to: 'words',
      why: 'Keep it open beside the rest. Radius or diameter, peak or mean: this is where most mistakes begin.',
      minutes: 10,
      lessons: ['peak-and-mean'],
    },
    {
      to: 'through-focus',
      why: 'Where flat-tops and rings are along the beam, how deep each plane is, and what tilt does.',
      minutes: 20,
      lessons: ['side-of-focus', 'beam-quality', 'depth-and-tilt'],
    },
    {
      to: 'lectures/half-a-wave',
      why: 'The lecture tells the same once more from the beginning, one idea at a time. Go through it alone at your own pace.',
      minutes: 40,
    },
    {
      to: 'set-up-sheet',
      why: 'What to set and to check at the table, in which order. Take it with you, with the cautions.',
      minutes: 10,
      lessons: ['alignment'],
    },
    {
      to: 'threshold',
      why: 'How the marks on a test piece tell you your own threshold.',
      minutes: 25,
      lessons: ['threshold-plot'],
    },
    {
      to: 'ripples',
      why: 'What grows just above the threshold, and how to measure it in a micrograph.',
      minutes: 20,
      lessons: ['ripple-period'],
    },
    {
      to: 'throughput',
      why: 'From a spot to a field: pulses, lines, time and heat.',
      minutes: 20,
      lessons: ['pulses-and-dose'],
    },
    { to: 'grooves', why: 'From a line to a depth: walls, floors and cuts.', minutes: 20 },
    {
      to: 'what-if',
      why: 'Change one thing and see what follows; keep what you tried beside today’s design.',
      minutes: 15,
    },
    { to: 'own-pages', why: 'Put the charts that you look at daily on a page of your own.', minutes: 10 },
    {
      to: 'lessons',
      why: 'All lessons with what you have done of each. Take those again, with other numbers, that went wrong.',
      minutes: 10,
    },
    { to: 'scale-up', why: 'What would change for square metres. It can wait.', minutes: 15 },
    { to: 'write-up', why: 'When your design stands: the reasons, ready to hand in.', minutes: 15 },
  ],
};

const lecturer: ReadingPath = {
  id: 'lecturer',
  title: 'I teach beam shaping',
  called: ['teaching', 'teacher', 'lecturer', 'course', 'students'],
  about: 'First what you can show, then what you can ask, then the rest to draw from.',
  stops: [
    {
      to: 'matching',
      why: 'The heart of an hour: why half a wave in the middle makes a flat spot. A question there asks for a guess first.',
      minutes: 15,
    },
    {
      to: 'through-focus',
      why: 'Drag the workpiece along the map: flat-top, ring and peak follow one another. It shows best on a wall.',
      minutes: 15,
    },
    {
      to: 'lectures',
      why: 'A complete lecture of forty minutes is there to give, or to copy and change. Your own are made from pieces of any page.',
      minutes: 40,
    },
    {
      to: 'lessons',
      why: 'What your students take alone afterwards; each wrong answer is told what went wrong. The time is that of all of them.',
      minutes: lessonMinutes(lessons),
    },
    { to: 'words', why: 'The customs to agree on before the first formula.', minutes: 10 },
    { to: 'own-pages', why: 'A handout with live numbers, from your words and any chart.', minutes: 15 },
    { to: 'threshold', why: 'Peak, mean and effective area, told apart on one pulse.', minutes: 20 },
    { to: 'ripples', why: 'Turn the polarisation and the ridges turn with it.', minutes: 15 },
    { to: 'throughput', why: 'Why closer lines are not always more even.', minutes: 15 },
    { to: 'grooves', why: 'Why the middle of a Gaussian goes too deep.', minutes: 15 },
    {
      to: 'what-if',
      why: 'For a seminar: vary any input against any result, or ask for the inputs that reach a wish.',
      minutes: 15,
    },
    {
      to: 'scale-up',
      why: 'What stops an idea on its way to square metres: a good last question.',
      minutes: 10,
    },
    { to: 'set-up-sheet', why: 'For the practical part, one page for the table.', minutes: 5 },
    { to: 'write-up', why: 'What students can hand in, and how it is put together.', minutes: 10 },
  ],
};

const researcher: ReadingPath = {
  id: 'researcher',
  title: 'I write up a design',
  called: ['researcher', 'writing up', 'paper', 'thesis', 'rationale'],
  about: 'From your measurements to reasons that stand: what was chosen, against what, and how sure it is.',
  stops: [
    {
      to: 'matching',
      why: 'Give it your beam image or caustic first; all else follows from them, with their uncertainty.',
      minutes: 20,
    },
    {
      to: 'through-focus',
      why: 'Choose the plane by what you ask of it, and lay your measured profile over the predicted one.',
      minutes: 20,
    },
    {
      to: 'threshold',
      why: 'Your threshold from your own marks, fitted with the real profile instead of a Gaussian.',
      minutes: 30,
    },
    {
      to: 'ripples',
      why: 'Period, direction and regularity, measured beside what is expected.',
      minutes: 20,
    },
    {
      to: 'throughput',
      why: 'Time, evenness and heat of a field, the plate against the plain beam.',
      minutes: 25,
    },
    {
      to: 'grooves',
      why: 'Depth, walls and floors, and depth per pulse from a measured section.',
      minutes: 20,
    },
    { to: 'scale-up', why: 'Which limit comes first on a larger machine.', minutes: 15 },
    {
      to: 'what-if',
      why: 'Alternatives, requirements and numbers of your own: the arguments of the rationale.',
      minutes: 30,
    },
    { to: 'write-up', why: 'Write what only you know; the rest is put together around it.', minutes: 30 },
    { to: 'set-up-sheet', why: 'One page with the settings, for whoever repeats it.', minutes: 5 },
    { to: 'words', why: 'Which custom each number follows, to say so in print.', minutes: 10 },
    { to: 'own-pages', why: 'Charts of your own making, for an appendix or a talk.', minutes: 15 },
    {
      to: 'lectures',
      why: 'If you present it: the same design as steps, with your notes beside them.',
      minutes: 15,
    },
    {
      to: 'lessons',
      why: 'To check yourself on the points that reviewers ask about. The time is that of all of them.',
      minutes: lessonMinutes(lessons),
    },
  ],
};

/** A way through all documents for each of the three readers. */
export const readingPaths: readonly ReadingPath[] = [newcomer, lecturer, researcher];

/** The document that an address leads to. */
export const documentOf = (to: string): string => to.split('/')[0]!;

/** The paths with the stops that there are. */
export function pathsThrough(documents: readonly { readonly id: string }[]): readonly ReadingPath[] {
  const there = new Set(documents.map(({ id }) => id));
  return readingPaths.map((path) => ({
    ...path,
    stops: path.stops.filter(({ to }) => there.has(documentOf(to))),
  }));
}

/** "about 25 minutes", "about 3½ hours". */
export function timeSaid(minutes: number): string {
  if (minutes < 90) return `about ${minutes} minutes`;
  const halves = Math.round(minutes / 30);
  return `about ${halves % 2 === 0 ? halves / 2 : `${(halves - 1) / 2}½`} hours`;
}
