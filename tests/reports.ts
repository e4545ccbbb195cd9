/** A report of vitest or Playwright, as far as it is read here. */
export interface Report {
  readonly numPassedTests?: number;
  readonly numFailedTests?: number;
  /** Files of vitest. */
  readonly testResults?: readonly {
    readonly name: string;
    readonly assertionResults: readonly { readonly fullName: string; readonly status: string }[];
  }[];
  readonly stats?: { readonly expected: number; readonly unexpected: number; readonly flaky: number };
  /** Files of Playwright. */
  readonly suites?: readonly Suite[];
}

interface Suite {
  readonly title: string;
  readonly suites?: readonly Suite[];
  readonly specs?: readonly { readonly title: string; readonly ok: boolean }[];
}

/** Tests that passed, and tests that failed. */
export function readCounts(report: Report): readonly [passed: number, failed: number] {
  if (report.stats) return [report.stats.expected, report.stats.unexpected + report.stats.flaky];
  return [report.numPassedTests ?? 0, report.numFailedTests ?? 0];
}

/** The tests that failed, each with its file. */
export function failuresIn({ testResults = [], suites = [] }: Report): readonly string[] {
  const unit = testResults.flatMap(({ name, assertionResults }) =>
    assertionResults
      .filter(({ status }) => status === 'failed')
      .map(({ fullName }) => `${name.replace(/^.*\/tests\//, 'tests/')}: ${fullName}`),
  );
  return [...unit, ...suites.flatMap((suite) => failuresOf(suite, []))];
}

function failuresOf({ title, suites = [], specs = [] }: Suite, above: readonly string[]): readonly string[] {
  const path = [...above, title];
  return [
    ...specs.filter(({ ok }) => !ok).map((spec) => [...path, spec.title].join(' › ')),
    ...suites.flatMap((suite) => failuresOf(suite, path)),
  ];
}
