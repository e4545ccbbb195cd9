import { describe, expect, it } from 'vitest';
import { chordLength, type Hatch, lineAt, lineCount, writtenLine } from '../../lib/process/hatch.ts';
import { fieldTimes, lineTimes, restToRest, type ScanMotion } from '../../lib/process/scanTime.ts';
import { expectClose } from '../close.ts';

const hatch: Hatch = {
  width: 10e-3,
  height: 10e-3,
  lineSpacing: 10e-6,
  passes: 1,
  angle: 0,
  interlacing: 1,
  directions: 'both',
};
const motion: ScanMotion = {
  speed: 1,
  acceleration: 1e4,
  maxSpeed: 5,
  directions: 'both',
  turnRound: 'outside',
  delay: 0,
};
const exactly = { relative: 1e-12, source: 'worked by hand' };

describe('time of a field of 10 mm × 10 mm, worked by hand', () => {
  it('to and fro: 1000 lines of 10 ms and 0.2 ms for turning round are 10.2 s', () => {
    expect(lineCount(hatch, 0)).toBe(1000);
    const times = fieldTimes(hatch, motion);
    expectClose(times.writing, 10, exactly);
    expectClose(times.total, 10.2, exactly);
  });

  it('three passes with 50 µs of delay are 30.75 s', () => {
    expectClose(fieldTimes({ ...hatch, passes: 3 }, { ...motion, delay: 50e-6 }).total, 30.75, exactly);
  });

  it('all the same way: back over 10.1 mm at 5 m/s, 2.02 ms and 0.5 ms to start and stop, 12.72 s', () => {
    // 0.05 mm of overscan at each end; 5 m/s are reached in 1.25 mm.
    expectClose(fieldTimes(hatch, { ...motion, directions: 'one' }).total, 12.72, exactly);
  });

  it('turning at the edge with the laser on: 10 ms and 0.1 ms a line, all of it writing', () => {
    const times = fieldTimes(hatch, { ...motion, turnRound: 'inside' });
    expectClose(times.total, 10.1, exactly);
    expectClose(times.writing, 10.1, exactly);
  });

  it('turned by 90°, the passes take as long with width and height changed', () => {
    const flat = { ...hatch, width: 20e-3, height: 4e-3 };
    const along = fieldTimes(flat, motion).total;
    const across = fieldTimes({ ...flat, width: 4e-3, height: 20e-3 }, motion).total;
    expectClose(along, 400 * (20e-3 + 2e-4), exactly);
    const both = fieldTimes({ ...flat, passes: 2, angle: Math.PI / 2 }, motion).total;
    expectClose(both, along + across, exactly);
  });

  it('best speed √(aL/2): no other is faster (scaling of 1/v and v)', () => {
    const rate = (speed: number) => 1 / fieldTimes(hatch, { ...motion, speed }).total;
    const best = Math.sqrt((1e4 * 10e-3) / 2);
    for (const factor of [0.9, 0.99, 1.01, 1.1]) expect(rate(factor * best)).toBeLessThan(rate(best));
  });
});

describe('lines of a turned hatch', () => {
  const turned = { ...hatch, width: 7e-3, height: 3e-3, passes: 7, angle: 0.7 };

  it.each([0, 1, 2, 3, 4, 5, 6])('pass %i: lengths times spacing give the area', (pass) => {
    let area = 0;
    for (let turn = 0; turn < lineCount(turned, pass); turn++)
      area += lineAt(turned, pass, turn).length * turned.lineSpacing;
    // The ends of the lines follow the edge in steps: to half a spacing in 3 mm.
    expectClose(area, 21e-6, { relative: 2e-3, source: 'area of the rectangle' });
  });

  it('begin and end on the edge of the field', () => {
    for (let turn = 0; turn < lineCount(turned, 3); turn += 17) {
      const line = lineAt(turned, 3, turn);
      for (const [x, y] of [
        [line.fromX, line.fromY],
        [line.toX, line.toY],
      ] as const)
        expectClose(Math.max(Math.abs(x) / 3.5e-3, Math.abs(y) / 1.5e-3), 1, exactly);
      expectClose(Math.hypot(line.toX - line.fromX, line.toY - line.fromY), line.length, exactly);
    }
  });

  it('groups of lines give the time of all lines one by one to 1e-4', () => {
    let all = 0;
    for (let pass = 0; pass < 7; pass++)
      for (let turn = 0; turn < lineCount(turned, pass); turn++)
        all += lineTimes(lineAt(turned, pass, turn).length, motion).total;
    expectClose(fieldTimes(turned, motion).total, all, { relative: 1e-4, source: 'sum over lines' });
  });

  it('a line that misses the field has no length', () => {
    expect(chordLength(hatch, 0, 6e-3)).toBe(0);
    expect(chordLength(hatch, 0.5, 9e-3)).toBe(0);
  });
});

describe('order of writing', () => {
  it.each([
    [10, 1],
    [10, 3],
    [11, 4],
    [3, 8],
  ])('%i lines, every %i-th: each once', (count, interlacing) => {
    const order = Array.from({ length: count }, (_, turn) => writtenLine(count, interlacing, turn));
    expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
    if (count > interlacing) expect(order[1]! - order[0]!).toBe(interlacing);
  });

  it('every other line runs back, or none', () => {
    const lineX = (directions: 'both' | 'one') =>
      [0, 1].map((turn) => lineAt({ ...hatch, directions }, 0, turn)).map((line) => line.toX - line.fromX);
    expect(lineX('both').map(Math.sign)).toEqual([1, -1]);
    expect(lineX('one').map(Math.sign)).toEqual([1, 1]);
  });
});

describe('from rest to rest', () => {
  it('over a short way never reaches the speed: 2√(s/a)', () => {
    expectClose(restToRest(1e-4, 5, 1e4), 2e-4, exactly);
    expectClose(restToRest(2.5e-3, 5, 1e4), 1e-3, exactly);
    expectClose(restToRest(10e-3, 5, 1e4), 2.5e-3, exactly);
  });
});
