import { describe, expect, it } from 'vitest';
import { failuresIn, readCounts } from './reports.ts';

describe('the report of a suite', () => {
  it('names the unit tests that failed with their file', () => {
    const report = {
      numPassedTests: 1,
      numFailedTests: 1,
      testResults: [
        {
          name: '/somewhere/tests/optics/light.test.ts',
          assertionResults: [
            { fullName: 'light is even', status: 'failed' },
            { fullName: 'light is there', status: 'passed' },
          ],
        },
      ],
    };
    expect(readCounts(report)).toEqual([1, 1]);
    expect(failuresIn(report)).toEqual(['tests/optics/light.test.ts: light is even']);
  });

  it('names the browser tests that failed, flaky ones too', () => {
    const report = {
      stats: { expected: 3, unexpected: 1, flaky: 1 },
      suites: [
        {
          title: 'a.spec.ts',
          specs: [{ title: 'opens', ok: true }],
          suites: [{ title: 'at 390', specs: [{ title: 'scrolls', ok: false }] }],
        },
      ],
    };
    expect(readCounts(report)).toEqual([3, 2]);
    expect(failuresIn(report)).toEqual(['a.spec.ts › at 390 › scrolls']);
  });
});
