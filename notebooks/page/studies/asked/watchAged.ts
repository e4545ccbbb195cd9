import type { Outcome } from '../../../../lib/graph/outcome.ts';
import type { Quantity } from '../../../../lib/graph/quantity.ts';
import type { Live } from '../../live.ts';

/** What takes no longer is not told of as older: most answers come within a blink, ms. */
const blink = 150;

/**
 * Watches a number that is judged: `told` hears it when it is up to date, and where that takes longer than a blink, that
 * what there is is older than the design. Returns how to stop.
 */
export function watchAged(
  live: Live,
  quantity: Quantity,
  told: (outcome: Outcome | undefined, older: boolean) => void,
): () => void {
  let outcome: Outcome | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const wait = () => {
    timer ??= setTimeout(() => told(outcome, true), blink);
  };
  const settle = () => {
    clearTimeout(timer);
    timer = undefined;
    told(outcome, false);
  };
  wait();
  const stop = live.watch(quantity, {
    pending: wait,
    changed: (now) => {
      outcome = now;
    },
    settled: settle,
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}
