import type { Watcher } from './watcher.ts';

/** The rest of the page waits for the picture no longer than this, ms. */
export const longestHold = 60;

/**
 * While the hand moves, the picture it looks at comes first: the rest of the page keeps its numbers until the picture has
 * been painted, since laying out and painting both in a frame takes longer than the picture alone (bench: 25 ms of 60).
 */
export interface Holding {
  /** Who is told at once; undefined while nobody is held back. */
  readonly leaders: ReadonlySet<Watcher> | undefined;
  /** Holds back all but these. What is held already goes on until its own end, so that the rest comes to its turn. */
  begin(leaders: readonly Watcher[]): void;
  /** A leader has drawn: once that is painted, the hold ends. */
  drawn(): void;
  /** Ends the hold now. */
  end(): void;
}

/** `released` is called with those who led when a hold has ended; `painted` calls back once what has been drawn is painted. */
export function createHolding(
  released: (leaders: ReadonlySet<Watcher>) => void,
  painted: (then: () => void) => void = afterFrame,
): Holding {
  let leaders: Set<Watcher> | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let holds = 0;
  const end = () => {
    if (!leaders) return;
    clearTimeout(timer);
    const led = leaders;
    leaders = undefined;
    holds += 1;
    released(led);
  };
  return {
    get leaders() {
      return leaders;
    },
    begin(more) {
      if (!leaders) timer = setTimeout(end, longestHold);
      leaders = new Set([...(leaders ?? []), ...more]);
    },
    drawn() {
      if (!leaders) return;
      const own = holds;
      painted(() => {
        if (own === holds) end();
      });
    },
    end,
  };
}

/** When the frame after the next begins, the next has been laid out and painted. */
function afterFrame(then: () => void): void {
  requestAnimationFrame(() => requestAnimationFrame(then));
}
