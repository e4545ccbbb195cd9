import type { Outcome } from '../../lib/graph/outcome.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import type { PageContext } from './context.ts';

interface GroupWatcher {
  pending(): void;
  /** All quantities have outcomes; called once a batch of changes. */
  changed(outcomeOf: (quantity: Quantity) => Outcome): void;
  settled(revision: number): void;
  /** `changed` threw: a fault of this program. What it shows is not of this design. */
  failed?(): void;
  /** Whether it draws a picture of a worker in view ({@link Watcher.leads}). */
  leads?(): boolean;
}

/** Hears whether what is shown is older than the design. */
export type Age = Pick<GroupWatcher, 'pending' | 'settled'>;

/** What marks a part of the page as older than the design, and names the revision it shows once it is not. */
export function markAge(part: HTMLElement): Age {
  return {
    pending: () => part.setAttribute('data-pending', ''),
    settled: (revision) => {
      part.removeAttribute('data-pending');
      part.setAttribute('data-revision', String(revision));
    },
  };
}

/**
 * Watches several quantities as one: `changed` runs once a change when those have answered that need no worker, and again
 * with each answer of a worker; `settled` when all are up to date.
 */
export function watchAll(
  context: PageContext,
  quantities: readonly Quantity[],
  stops: (() => void)[],
  watcher: GroupWatcher,
): void {
  const outcomes = new Map<string, Outcome>();
  const ids = new Set(quantities.map(({ id }) => id));
  const upToDate = new Set<string>();
  let dirty = true;
  const shown = () => {
    if (!dirty || outcomes.size < ids.size) return;
    dirty = false;
    try {
      watcher.changed((other) => outcomes.get(other.id)!);
    } catch (fault) {
      // One part that cannot be drawn must not keep the rest of the page from following the design.
      watcher.failed?.();
      reportError(fault);
    }
  };
  if (ids.size === 0) {
    shown();
    watcher.settled(context.live.state().revision);
  }
  for (const quantity of new Set(quantities)) {
    const { id } = quantity;
    stops.push(
      context.live.watch(quantity, {
        pending: () => {
          upToDate.delete(id);
          watcher.pending();
        },
        changed: (outcome) => {
          outcomes.set(id, outcome);
          dirty = true;
        },
        shown,
        ...(watcher.leads && { leads: watcher.leads }),
        settled: (revision) => {
          upToDate.add(id);
          if (upToDate.size < ids.size) return;
          shown();
          watcher.settled(revision);
        },
      }),
    );
  }
}
