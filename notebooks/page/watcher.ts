import type { Outcome } from '../../lib/graph/outcome.ts';

/** Watches one quantity. `changed` gets every new outcome; `pending` says that the one shown is older than the inputs. */
export interface Watcher {
  changed(outcome: Outcome): void;
  pending?(): void;
  /** All that changes with this change has changed but what a worker still computes. */
  shown?(): void;
  /** What this quantity holds is up to date with this revision. */
  settled?(revision: number): void;
  /** Whether it draws a picture of a worker in view: it is then told before the rest while the hand moves. */
  leads?(): boolean;
}
