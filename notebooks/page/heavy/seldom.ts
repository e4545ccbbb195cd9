import type { Report } from '../../../lib/graph/quantity.ts';

/** Between two messages on how far a job is, ms: more often than that nobody reads them. */
export const leastBetween = 50;

/** Hands on what is reported, but not more often than every 50 ms, and nothing before the first 50 are over. */
export function seldom(report: Report, now: () => number = () => performance.now()): Report {
  let last = now();
  return (part) => {
    const at = now();
    if (at - last < leastBetween) return;
    last = at;
    report(part);
  };
}
