import type { FrameHeight } from '../context.ts';
import type { StepView } from './stepView.ts';

/** A screen that is as large as this shows a step at the size of a page, px; a larger one everything larger. */
const screen = { width: 900, height: 562 };
/** Narrower windows show a step as a page that scrolls, px. */
const narrowest = 900;
const largest = 3;
/** Long texts are set smaller, to this part of their size, before the page scrolls. */
const smallestWords = 0.78;
/**
 * Frames of charts, px at the size of a page: what one begins with, its bounds, and room that may stay free; more of it while
 * the hand moves values, so that a summary of another length does not move the chart.
 */
const frame = { first: 280, least: 130, most: 470, free: 6, freeMoving: 48 };
/** Charts beside their words are drawn larger by this, so that their ticks are read from the last row; as in giving.css. */
const chartsZoom = 1.1;
/** What is not at rest after so many tries stays as it is. */
const mostTries = 12;

/** What stands on the screen, and how much of it is left for it. */
export interface Slide {
  readonly main: HTMLElement;
  readonly foot: HTMLElement;
  step(): StepView | undefined;
}

/** Keeps a step as large as the screen allows. */
export interface Fitting {
  readonly frames: FrameHeight;
  /** Begins with a slide. */
  keep(slide: Slide, stops: (() => void)[]): void;
  /** Fits anew: another step is shown, or more of it. */
  again(): void;
  /** Values change: what grows out of the screen is fitted, all else stays. */
  moving(): void;
}

/** First the words are fitted, then the frames of the charts. */
export function createFitting(window: Window): Fitting {
  const listeners = new Set<() => void>();
  let slide: Slide | undefined;
  let height: number | undefined;
  let tries = 0;
  let mayStay = frame.free;
  let request = 0;
  const observer = new ResizeObserver(() => later());
  const setHeight = (next: number | undefined) => {
    if (next === height) return;
    height = next;
    for (const listener of listeners) listener();
  };
  const later = () => {
    window.cancelAnimationFrame(request);
    request = window.requestAnimationFrame(fit);
  };
  const fit = () => {
    const shown = slide?.step();
    if (!slide || !shown || tries >= mostTries) return;
    tries += 1;
    const { main, foot } = slide;
    const isWide = window.innerWidth >= narrowest;
    const zoom = isWide ? zoomFor(window) : 1;
    main.style.setProperty('--giving-zoom', zoom.toFixed(3));
    main.toggleAttribute('data-wide', isWide);
    if (!isWide) {
      main.style.setProperty('--giving-words', '1');
      return setHeight(undefined);
    }
    const end = window.innerHeight - foot.getBoundingClientRect().height - 10 * zoom;
    const room = (part: HTMLElement) => end - (part.getBoundingClientRect().bottom + window.scrollY);
    if (shown.words) fitWords(main, shown.words, room);
    if (!shown.charts) return;
    const free = room(shown.charts) / (zoom * chartsZoom);
    const now = height ?? frame.first;
    if (height !== undefined && free >= 0 && free <= mayStay) return;
    const next = now + Math.floor((free - 1) / rowsOf(shown.charts));
    setHeight(Math.min(frame.most, Math.max(frame.least, next)));
  };
  const again = () => {
    [tries, mayStay] = [0, frame.free];
    slide?.main.style.setProperty('--giving-words', '1');
    observer.disconnect();
    const shown = slide?.step();
    for (const part of [shown?.words, shown?.charts]) if (part) observer.observe(part);
    later();
  };
  return {
    frames: {
      height: () => height,
      onChange(listener) {
        listeners.add(listener);
        return () => listeners.delete(listener);
      },
    },
    keep(next, stops) {
      slide = next;
      window.addEventListener('resize', again);
      stops.push(() => {
        window.removeEventListener('resize', again);
        observer.disconnect();
        window.cancelAnimationFrame(request);
      });
    },
    again,
    moving() {
      [tries, mayStay] = [0, frame.freeMoving];
    },
  };
}

function zoomFor({ innerWidth, innerHeight }: Window): number {
  return Math.min(largest, Math.max(1, Math.min(innerWidth / screen.width, innerHeight / screen.height)));
}

function fitWords(main: HTMLElement, words: HTMLElement, room: (part: HTMLElement) => number): void {
  for (let size = 1; size >= smallestWords; size -= 0.055) {
    main.style.setProperty('--giving-words', size.toFixed(3));
    if (room(words) >= 0) return;
  }
}

/** Charts above each other share the height; those beside each other have all of it. */
function rowsOf(charts: HTMLElement): number {
  const drawn = [...charts.querySelectorAll('.figure-drawing')];
  return Math.max(1, new Set(drawn.map((one) => Math.round(one.getBoundingClientRect().top))).size);
}
