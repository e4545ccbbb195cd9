import type { Part } from '../../lectures/dividing.ts';
import type { Live } from '../live.ts';

/** A part of a page that is chosen to become a step. */
export interface ChosenPart extends Part {
  /** Where it comes from, and which part of it: one key for each. */
  readonly key: string;
}

/** What the person is at among lectures, while they look elsewhere too. */
export interface LectureMemory {
  /** Ids of the lecture that is arranged, and of the step that is open in it. */
  arranging: string | undefined;
  step: string | undefined;
  /** What is typed and not taken yet, by the name of its field. */
  readonly drafts: Map<string, string>;
  /** Parts chosen to become steps, in the order in which they were, and where they are chosen from. */
  parts: readonly ChosenPart[];
  source: string | undefined;
}

const memories = new WeakMap<Live, LectureMemory>();
const storageKey = 'stepwell.making';
/** Typing is kept when it rests, ms. */
const restsFor = 300;

/** The memory of a page; a page that is loaded again, or whose tab comes back after a crash, takes it up. */
export function lectureMemory(live: Live, window: Window): LectureMemory {
  const known = memories.get(live);
  if (known) return known;
  const memory = readMemory(window);
  memories.set(live, memory);
  let resting: ReturnType<typeof setTimeout> | undefined;
  const keep = () => writeMemory(window, memory);
  for (const name of ['input', 'change', 'click'])
    window.addEventListener(name, () => {
      clearTimeout(resting);
      resting = setTimeout(keep, restsFor);
    });
  window.addEventListener('pagehide', keep);
  return memory;
}

function readMemory(window: Window): LectureMemory {
  const empty = { arranging: undefined, step: undefined, parts: [], source: undefined };
  try {
    const { drafts, ...kept } = JSON.parse(window.sessionStorage.getItem(storageKey) ?? '{}');
    return { ...empty, ...kept, drafts: new Map<string, string>(drafts) };
  } catch {
    // Blocked: nothing is taken up.
    return { ...empty, drafts: new Map<string, string>() };
  }
}

function writeMemory(window: Window, { drafts, ...memory }: LectureMemory): void {
  try {
    window.sessionStorage.setItem(storageKey, JSON.stringify({ ...memory, drafts: [...drafts] }));
  } catch {
    // Blocked or full: it lasts as long as the page is open.
  }
}
