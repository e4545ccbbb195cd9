/** One line of the table: times in ms, or a remark in their place. */
export interface Row {
  readonly what: string;
  readonly times?: readonly number[];
  readonly remark?: string;
}

/** Value below which the part `p` of the values lies, by rank. */
export function percentile(values: readonly number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(p * sorted.length) - 1)]!;
}

/** Times of `count` runs in ms, after `warm` that do not count. `prepare` runs before each, outside the time. */
export function timeRuns(
  run: (i: number) => void,
  count: number,
  warm: number,
  prepare: (i: number) => void = () => {},
): number[] {
  const times: number[] = [];
  for (let i = -warm; i < count; i++) {
    prepare(i);
    const start = performance.now();
    run(i);
    if (i >= 0) times.push(performance.now() - start);
  }
  return times;
}

const width = 76;

export function printTitle(): void {
  console.log(`${'what'.padEnd(width)} ${'p50 / ms'.padStart(9)} ${'p95 / ms'.padStart(9)}`);
}

export function printRow({ what, times, remark = '' }: Row): void {
  const cell = (p: number) => (times ? percentile(times, p).toFixed(2).padStart(9) : ''.padStart(9));
  console.log(`${what.padEnd(width)} ${cell(0.5)} ${cell(0.95)}${remark && `  ${remark}`}`);
}
