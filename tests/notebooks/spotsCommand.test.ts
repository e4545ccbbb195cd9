import { describe, expect, it } from 'vitest';
import { run, succeed } from './runCommand.ts';

const files = { 'spots.csv': 'E (µJ);d (µm)\n10;20\n11;wide\n12;22\n' };
const get = ['--get', 'threshold.usedMarks'];

describe('a table of spots on the command line', () => {
  it('counts once its rows in error are left out', () => {
    expect(run(['evaluate', '--spots', 'spots.csv', ...get], files)).toMatchObject({
      code: 2,
      err: expect.stringMatching(/"spots\.csv": Row 3, column d \(µm\) holds "wide"/),
    });
    const out = succeed(['evaluate', '--spots', 'spots.csv', '--leave-out', '3=row', ...get], files);
    expect(out).toMatch(/2 marks/);
    const one = succeed(
      ['evaluate', '--spots', 'spots.csv', '--leave-out', '3', '--leave-out', '2', ...get],
      files,
    );
    expect(one).toMatch(/1 mark/);
  });

  it.each([
    ['3=mood', /cannot be 'mood'; choose one of: outlier/],
    ['third', /third/],
    ['0', /line of a row left out of 0 is not possible/i],
  ])('--leave-out %s is refused', (text, says) => {
    const { code, err } = run(['evaluate', '--spots', 'spots.csv', '--leave-out', text, ...get], files);
    expect(code).toBe(2);
    expect(err).toMatch(says);
  });
});
