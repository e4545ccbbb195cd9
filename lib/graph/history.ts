import type { DesignState } from './state.ts';

/** Undo and redo over whole states. */
export interface History {
  readonly past: readonly DesignState[];
  readonly present: DesignState;
  readonly future: readonly DesignState[];
  /** True while the last change may still be replaced by the next one: a drag in progress. */
  readonly open: boolean;
}

export function startHistory(present: DesignState): History {
  return { past: [], present, future: [], open: false };
}

/**
 * Takes a new state. While a drag goes on (`final` false) the states replace one another, so that the whole drag is one
 * step back.
 */
export function record(history: History, next: DesignState, final: boolean): History {
  if (next === history.present) return { ...history, open: history.open && !final };
  const past = history.open ? history.past : [...history.past, history.present];
  return { past, present: next, future: [], open: !final };
}

/** One step back; the same history where there is none. The revision goes on counting. */
export function undo(history: History): History {
  const target = history.past.at(-1);
  if (!target) return history;
  return {
    past: history.past.slice(0, -1),
    present: { ...target, revision: history.present.revision + 1 },
    future: [history.present, ...history.future],
    open: false,
  };
}

/** One step forward again; the same history where there is none. */
export function redo(history: History): History {
  const [target, ...future] = history.future;
  if (!target) return history;
  return {
    past: [...history.past, history.present],
    present: { ...target, revision: history.present.revision + 1 },
    future,
    open: false,
  };
}
