import { describe, expect, it } from 'vitest';
import { readRippleFile } from '../../lib/design/rippleSeries.ts';
import { Problem } from '../../lib/problem.ts';
import { readMeasuredFile } from '../../notebooks/measuredFiles.ts';
import { expectClose } from '../close.ts';

const read = (text: string) => readRippleFile(text, 'given.csv');

describe('a table of ripple periods', () => {
  it.each([
    ['points and commas', 'N,period (nm)\n5,960\n20,930.5\n'],
    ['decimal commas and semicolons', 'N;period (nm)\n5;960\n20;930,5\n'],
    ['tabs, CRLF and a byte order mark', '\uFEFFpulses\tperiod [um]\r\n5\t0.96\r\n\r\n20\t0.9305\r\n'],
    ['another order and columns between', 'note,period / µm,number of pulses\nfirst,0.96,5\n,0.9305,20\n'],
    ['fluence beside the pulses', 'fluence (J/cm²),N,Λ (nm)\n0.2,5,960\n0.2,20,930.5\n'],
  ])('%s', (_name, text) => {
    const { against, setting, period } = read(text);
    expect(against).toBe('pulses');
    expect(setting).toEqual([5, 20]);
    [960e-9, 930.5e-9].forEach((value, i) => {
      expectClose(period[i]!, value, { relative: 1e-14 });
    });
  });

  it('against fluence, in SI', () => {
    const { against, setting } = read('F (J/cm²);period (nm)\n0,2;960\n0,25;900\n');
    expect(against).toBe('fluence');
    [2000, 2500].forEach((value, i) => {
      expectClose(setting[i]!, value, { relative: 1e-14 });
    });
  });

  it.each([
    ['', /"given\.csv".*is empty/, undefined],
    ['\0\0', /is no text/, undefined],
    ['N,period (nm)\n', /header and no row below/, 2],
    ['N,period (nm)\n5,960\n20,long\n', /Row 3, column period \(nm\) holds "long"/, 3],
    ['N,period (nm)\n5,960\n20\n', /Row 3, column period \(nm\) is empty/, 3],
    ['N,period (nm)\n5,-960\n', /Row 2, column period \(nm\) holds -960: it must be above 0/, 2],
    ['N,period (nm)\n0.5,960\n', /Row 2, column N holds 0\.5: it must be 1 or more/, 2],
    ['F (J/cm²),period (nm)\n0,960\n', /Row 2, column F \(J\/cm²\) holds 0: it must be above 0/, 2],
    ['N,period (nm)\n5,960,5\n', /Row 2 has 3 columns where the header has 2.*semicolons/, 2],
    ['N,period\n5,960\n', /Row 1, column period names no unit/, 1],
    ['N,period (J)\n5,960\n', /unit 'J', which is no unit of length/, 1],
    ['F,period (nm)\n0.2,960\n', /Row 1, column F names no unit\. Write it behind/, 1],
    ['F (J),period (nm)\n0.2,960\n', /names the unit 'J', which is none of fluence/, 1],
    ['z (mm),period (nm)\n0.2,960\n', /Row 1 holds "z \(mm\)", "period \(nm\)", no column for what/, 1],
    ['N;period (nm)\n5;960\n1.000;930\n', /holds "1\.000", which may be 1 or 1000: write 1000 without/, 3],
    ['N,depth (nm)\n5,960\n', /no column for the period/, 1],
    ['5,960\n20,930\n', /no column for the period/, 1],
  ])('refuses %j', (text, message, row) => {
    expect(() => read(text)).toThrow(message);
    expect(() => read(text)).toThrow(/given\.csv/);
    try {
      read(text);
    } catch (error) {
      expect(error).toBeInstanceOf(Problem);
      expect((error as Problem).kind).toBe('unreadable');
      expect((error as Problem).parts.row).toBe(row);
    }
  });

  it('goes to its input, and a damaged one leaves the one before', () => {
    const bytes = (text: string) => new TextEncoder().encode(text);
    const good = readMeasuredFile('ripples.series', bytes('N;period (nm)\n5;960'), 'good.csv', {
      'ripples.series': null,
    });
    expect(good).toMatchObject({ 'ripples.series': { name: 'good.csv', setting: [5] } });
    expect(() => readMeasuredFile('ripples.series', bytes('N;period\n5;960'), 'bad.csv', good)).toThrow(
      /given before, "good\.csv", stays/,
    );
  });
});
