import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { branchCounts } from './branchCounts.ts';
import { here } from './runCommand.ts';

/** Files whose sentences have a test of their own, branch by branch. */
const elsewhere: Readonly<Record<string, string>> = {
  'notebooks/lessons/toldNumbers.ts': 'tests/notebooks/lessons/toldNumbers.test.ts',
  'notebooks/setUpSheet/setUpSentences.ts': 'tests/notebooks/setUpSheet/setUpSentences.test.ts',
};

it('every sentence that is code is among those whose branches are tested', () => {
  const files = readdirSync(here('notebooks'), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => `notebooks/${file.replaceAll('\\', '/')}`)
    .filter((file) => !Object.hasOwn(elsewhere, file));
  const names = files.flatMap((file) =>
    [...readFileSync(here(file), 'utf8').matchAll(/^(?:export )?const (\w+) = says\(/gm)].map(
      ([, name]) => name!,
    ),
  );
  expect(names.length).toBeGreaterThan(150);
  expect(names.filter((name) => !Object.hasOwn(branchCounts, name))).toEqual([]);
  for (const [file, test] of Object.entries(elsewhere)) {
    const tested = readFileSync(here(test), 'utf8');
    const made = readFileSync(here(file), 'utf8').matchAll(/^export const (\w+) = says\(/gm);
    for (const [, name] of made) expect(tested, `${name} of ${file}`).toContain(name!);
  }
});
