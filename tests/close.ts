import { expect } from 'vitest';

/** How near is near enough, and why: `relative` or `absolute` from the method's error, `source` of the expected value. */
export interface Closeness {
  readonly relative?: number;
  readonly absolute?: number;
  /** Where the expected value comes from: a citation, a reference file or the other method. */
  readonly source?: string;
}

/**
 * The one tolerance helper. Passes when |actual − expected| ≤ absolute + relative·|expected|;
 * the message carries both values, the deviation and the source.
 */
export function expectClose(actual: number, expected: number, closeness: Closeness): void {
  const { relative = 0, absolute = 0, source = '' } = closeness;
  const allowed = absolute + relative * Math.abs(expected);
  const deviation = Math.abs(actual - expected);
  if (!(deviation <= allowed)) {
    expect.fail(
      `${actual} is not close to ${expected}: off by ${deviation.toExponential(3)}, allowed ${allowed.toExponential(3)}${source ? ` (${source})` : ''}`,
    );
  }
  expect(deviation).toBeLessThanOrEqual(allowed);
}
