import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { prepareBrowser } from './browser/prepareBrowser.ts';
import { failuresIn, type Report, readCounts } from './reports.ts';

/**
 * Runs types, lint, unit tests and browser tests; closes with "N passed, N failed". `--long` runs those tests at full
 * counts that have more of them than `npm test` takes: the files that read tests/cases.ts.
 */
const long = process.argv.includes('--long');
const env = { ...process.env, STEPWELL_LONG: long ? '1' : '0', FORCE_COLOR: '0' };
let passed = 0;
let failed = 0;
/** Names of what failed, said again at the end. */
const names: string[] = [];

function run(command: string, args: readonly string[], extra: NodeJS.ProcessEnv = {}): number {
  const result = spawnSync('npx', ['--no-install', command, ...args], {
    stdio: 'inherit',
    env: { ...env, ...extra },
  });
  return result.status ?? 1;
}

/** A check that counts as one test. */
function check(name: string, command: string, args: readonly string[]): void {
  const ok = run(command, args) === 0;
  console.log(`${ok ? 'ok' : 'NOT OK'}: ${name}`);
  if (ok) passed += 1;
  else fail(name);
}

function fail(name: string): void {
  failed += 1;
  names.push(name);
}

/** A test runner with a JSON report; a run that breaks off without one counts as a failure. */
function suite(
  name: string,
  command: string,
  args: readonly string[],
  report: string,
  extra: NodeJS.ProcessEnv = {},
): void {
  rmSync(report, { force: true });
  const status = run(command, args, extra);
  try {
    const written: Report = JSON.parse(readFileSync(report, 'utf8'));
    const [good, bad] = readCounts(written);
    passed += good;
    failed += bad;
    names.push(...failuresIn(written));
    console.log(`${name}: ${good} passed, ${bad} failed`);
    if (status !== 0 && bad === 0) fail(`${name} ended with an error of its own`);
  } catch {
    fail(`${name} ended without a report`);
  }
}

if (!long) {
  check('types', 'tsc', ['--noEmit', '-p', '.']);
  check('types of the library without DOM and Node', 'tsc', ['--noEmit', '-p', 'lib']);
  check('lint and format', 'biome', ['check', '.']);
}
/** Files of tests that count more cases in the long run, by the end of their names; all of them in the quick one. */
function filesOf(ending: '.test.ts' | '.spec.ts'): string[] {
  if (!long) return [];
  return readdirSync('tests', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith(ending))
    .map((name) => join('tests', name))
    .filter((path) => /from '[./]+cases\.ts'/.test(readFileSync(path, 'utf8')));
}

const unitReport = join(tmpdir(), `stepwell-unit-${process.pid}.json`);
suite(
  'unit tests',
  'vitest',
  [
    'run',
    '--config',
    'tests/vitest.config.ts',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${unitReport}`,
    ...filesOf('.test.ts'),
  ],
  unitReport,
);
const browser = prepareBrowser();
if (browser === undefined) fail('browser tests: there is no browser');
else {
  const pageReport = join(tmpdir(), `stepwell-page-${process.pid}.json`);
  check('build', 'vite', ['build', '--logLevel', 'warn']);
  const single = 'notebooks/takeAlong/vite.config.ts';
  check('build of the single file', 'vite', ['build', '--config', single, '--logLevel', 'warn']);
  suite(
    'browser tests',
    'playwright',
    ['test', '--config', 'tests/browser/playwright.config.ts', ...filesOf('.spec.ts')],
    pageReport,
    {
      STEPWELL_BROWSER: browser,
      PLAYWRIGHT_JSON_OUTPUT_NAME: pageReport,
    },
  );
}
for (const name of names) console.log(`failed: ${name}`);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
